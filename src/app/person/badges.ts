// Gives people badges: what a badge says is marked with the plant's key before it is written down, so that nothing in the log makes a badge.

import { badgeKeyOf } from '../../../shared/floor/badge.ts';
import type { DraftEntry, PayloadOf } from '../../../shared/floor/kinds.ts';
import type { FloorState, Person } from '../../../shared/floor/state.ts';
import { toBase64Url } from '../../../shared/kit/base64.ts';
import { keyedHash } from '../../../shared/log/keyed-hash.ts';
import { newId } from '../device/ids.ts';

/** What a badge says that is printed here: drawn by chance (100 bits), so that nobody finds it by trying. */
export function newBadge(): string {
  return `BADGE-${newId().toUpperCase()}`;
}

type Added = PayloadOf<'person.added'>;

/** What is written where people get these badges: the plant's key first where it has none. */
export function badgeDrafts(
  floor: Pick<FloorState, 'badgeKeys'>,
  given: readonly { readonly payload: Added; readonly badge: string }[],
): readonly DraftEntry[] {
  const draw = () => ({ key: newId(), secret: toBase64Url(crypto.getRandomValues(new Uint8Array(32))) });
  const { key, secret, isNew } = badgeKeyOf(floor, draw);
  const told = given.map(({ payload, badge }): DraftEntry => {
    const badgeMark = { key, mark: keyedHash(secret, badge) };
    return { kind: 'person.added', payload: { ...payload, badgeMark } };
  });
  return isNew ? [{ kind: 'badges.keyed', payload: { key, secret } }, ...told] : told;
}

/** The entry that leaves a person as known, for another badge. */
export function sameAgain({ person, name, role }: Person): Added {
  return { person, name, role };
}
