// Passkeys, registered and removed, and what their counts tell. One that was registered without a right to do so is known, and proves
// nothing until a lead confirms it; one that was removed without a right still proves.

import { entryId } from '../log/entry.ts';
import type { EntryOf, FloorEntry } from './kinds.ts';
import { registeredPasskey, type SignedBy } from './passkey.ts';
import { actorOf, isWithoutRight, type RightsState } from './rights.ts';

/** Applies one entry; the right that it took was looked at before. */
export function foldPasskeys(
  { passkeys, unproven }: Pick<RightsState, 'passkeys' | 'unproven'>,
  entry: EntryOf<'passkey.added' | 'passkey.removed'>,
): void {
  const id = entryId(entry);
  const isProven = !isWithoutRight(unproven.get(id));
  const { hlc, tablet, epoch, seq, kind, payload } = entry;
  const at = { hlc, tablet, epoch, seq };
  const there = passkeys.get(payload.credential);
  if (kind === 'passkey.added') {
    // A name that is taken stays with whom it is; but nobody can take it from its owner by an entry without a right.
    if (there && (there.isProven || !isProven)) return;
    const { credential, person, role, name, host, key, by } = payload;
    const made = { credential, person, role, name, host, key, by, entry: id, at };
    passkeys.set(credential, { ...made, isProven, removed: null, count: 0, fell: null });
    return;
  }
  if (!there || there.person !== payload.person || there.removed?.isProven) return;
  if (there.removed === null || isProven)
    passkeys.set(there.credential, { ...there, removed: { entry: id, at, isProven } });
}

/** Takes note of the count that a passkey told with an entry. Counts that do not rise are told; they prove nothing. */
export function notePasskeyUse(
  { passkeys }: Pick<RightsState, 'passkeys'>,
  entry: FloorEntry,
  signed: SignedBy | null,
): void {
  const held = registeredPasskey(passkeys, entry, { person: actorOf(entry), signed });
  if (!held || !signed) return;
  const { count } = signed;
  const fell = (count > 0 || held.count > 0) && count <= held.count ? entryId(entry) : held.fell;
  if (count === held.count && fell === held.fell) return;
  passkeys.set(held.credential, { ...held, count: Math.max(count, held.count), fell });
}
