// Whose is the passkey that signed an entry? As the log registered it. What a passkey signs, and how that is read, stands in passkey-sign.ts;
// whether a signature holds is looked at before entries are folded, by whoever folds.

import * as z from 'zod/mini';
import type { Role } from '../kit/roles.ts';
import { type Entry, entryId } from '../log/entry.ts';
import { compareEntries } from '../log/order.ts';
import { type PasskeyKey, type PasskeyUse, passkeyUseSchema } from './kinds-passkeys.ts';

/** Where an entry stands in the log's order. */
type Position = Pick<Entry, 'hlc' | 'tablet' | 'epoch' | 'seq'>;

/** A passkey as the log says. */
export interface HeldPasskey {
  readonly credential: string;
  readonly person: string;
  /** As who it proves the person; follows the person's role. */
  readonly role: Exclude<Role, 'operator'>;
  readonly name: string;
  readonly host: string;
  readonly key: PasskeyKey;
  readonly by: string;
  readonly entry: string;
  readonly at: Position;
  /** False while nothing proves who registered it: it proves nothing then. */
  readonly isProven: boolean;
  readonly removed: { readonly entry: string; readonly at: Position; readonly isProven: boolean } | null;
  /** The highest count that its authenticator told; 0 where it counts nothing. */
  readonly count: number;
  /** The entry whose count was not higher than the one before: the passkey may have been copied. Null while all rose. */
  readonly fell: string | null;
}

/** What the signature in an entry says, where it was made for that entry and holds. */
export interface SignedBy {
  readonly credential: string;
  readonly key: PasskeyKey;
  /** The host of the page that asked for it. */
  readonly host: string;
  /** How often the authenticator says it has signed; 0 where it does not count. */
  readonly count: number;
}

/** What of a passkey stands in an entry; null where nothing does, or nothing that can be read. */
export function passkeyUse({ payload }: { readonly payload: object }): PasskeyUse | null {
  if (!('passkey' in payload) || payload.passkey === undefined) return null;
  const read = z.safeParse(passkeyUseSchema, payload.passkey);
  return read.success ? read.data : null;
}

/**
 * The passkey by which an entry is signed, where it was this person's then, and of this key and host; else null. `signed`: what its signature
 * says, null where that does not hold.
 */
export function registeredPasskey(
  passkeys: ReadonlyMap<string, HeldPasskey>,
  entry: Position,
  by: { readonly person: string | null; readonly signed: SignedBy | null },
): HeldPasskey | null {
  const { person, signed } = by;
  const held = signed && passkeys.get(signed.credential);
  if (!held || held.person !== person || held.host !== signed.host) return null;
  if (!isSameKey(held.key, signed.key) || compareEntries(entry, held.at) < 0) return null;
  const { removed } = held;
  return removed?.isProven && compareEntries(entry, removed.at) > 0 ? null : held;
}

function isSameKey(one: PasskeyKey, other: PasskeyKey): boolean {
  if (one.kty === 'EC') return other.kty === 'EC' && one.x === other.x && one.y === other.y;
  return other.kty === 'RSA' && one.n === other.n;
}

/** The passkeys that a person can sign with on a page of this host. */
export function passkeysOf(
  passkeys: ReadonlyMap<string, HeldPasskey>,
  person: string,
  host: string | null = null,
): readonly HeldPasskey[] {
  return [...passkeys.values()].filter(
    (each) => each.person === person && each.removed === null && (host === null || each.host === host),
  );
}

/** A person got another role, or was taken out (null): the passkeys follow, and end where the person can decide nothing any more. */
export function followPerson(
  passkeys: Map<string, HeldPasskey>,
  { person, role }: { readonly person: string; readonly role: Role | null },
  entry: Position,
): void {
  const { hlc, tablet, epoch, seq } = entry;
  const removed = { entry: entryId(entry), at: { hlc, tablet, epoch, seq }, isProven: true };
  for (const [credential, held] of passkeys) {
    if (held.person !== person || held.removed?.isProven) continue;
    if (role !== null && role !== 'operator') passkeys.set(credential, { ...held, role });
    else passkeys.set(credential, { ...held, removed });
  }
}
