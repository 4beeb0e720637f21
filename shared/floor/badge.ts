// Whose badge is this text? The log does not hold what a badge says: whoever reads it there could make the badge. It holds a mark, the text's
// hash under a key of the plant's own (HMAC, RFC 2104, with SHA-256), which every tablet has by the log and no export shows.
// A badge of before there were marks stands in the log as it is, and counts as ever.

import { keyedHash } from '../log/keyed-hash.ts';

/** A badge as it is known: its text, '' where the log has its mark alone. */
export interface KnownBadge {
  readonly badge: string;
  readonly badgeMark?: {
    /** The name of the key. */
    readonly key: string;
    /** The key, 32 bytes, base64url; null while the entry that tells it has not come. */
    readonly secret: string | null;
    /** 32 bytes, base64url. */
    readonly mark: string;
  };
}

/** True for somebody who has a badge. */
export function hasBadge({ badge, badgeMark }: KnownBadge): boolean {
  return badge !== '' || badgeMark !== undefined;
}

/** All whose badge says this: one, where nobody gave the same twice. Cost: a hash for each key of the plant. */
export function thoseWithBadge<P extends KnownBadge>(people: Iterable<P>, text: string): readonly P[] {
  const marks = new Map<string, string>();
  const marked = (secret: string) => {
    const mark = marks.get(secret) ?? keyedHash(secret, text);
    marks.set(secret, mark);
    return mark;
  };
  return [...people].filter(({ badge, badgeMark }) => {
    if (text === '') return false;
    if (badge !== '') return badge === text;
    const secret = badgeMark?.secret ?? null;
    return secret !== null && marked(secret) === badgeMark?.mark;
  });
}

/** The person whose badge carries this text, null where nobody's does. */
export function personByBadge<P extends KnownBadge>(people: ReadonlyMap<string, P>, text: string): P | null {
  return thoseWithBadge(people.values(), text)[0] ?? null;
}

/** A plant's key to mark badges with: its name, and the key; `isNew`: it has to be told in the log first. */
export interface BadgeKey {
  readonly key: string;
  readonly secret: string;
  readonly isNew: boolean;
}

/** The first key that the log told; else the one that was drawn. */
export function badgeKeyOf(
  { badgeKeys }: { readonly badgeKeys: ReadonlyMap<string, string> },
  draw: () => { readonly key: string; readonly secret: string },
): BadgeKey {
  const [known] = badgeKeys;
  return known ? { key: known[0], secret: known[1], isNew: false } : { ...draw(), isNew: true };
}
