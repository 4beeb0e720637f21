// Passkeys, registered and removed, and what their counts tell. One that was registered without a right to do so is known, and proves
// nothing until a lead confirms it; a removal without a right removes nothing.

import { entryId } from '../log/entry.ts';
import type { EntryOf, FloorEntry } from './kinds.ts';
import { positionOf, registeredPasskey, type SignedBy } from './passkey.ts';
import { actorOf, isWithoutRight, type RightsState } from './rights.ts';

/** Applies one entry; the right that it took was looked at before. */
export function foldPasskeys(
  { passkeys, unproven }: Pick<RightsState, 'passkeys' | 'unproven'>,
  entry: EntryOf<'passkey.added' | 'passkey.removed'>,
): void {
  const isProven = !isWithoutRight(unproven.get(entryId(entry)));
  const at = positionOf(entry);
  const there = passkeys.get(entry.payload.credential);
  if (entry.kind === 'passkey.added') {
    // A name that is taken stays with whom it is; but nobody can take it from its owner by an entry without a right.
    if (there && (there.isProven || !isProven)) return;
    const made = { at, isProven, removed: null, count: 0, fell: null };
    passkeys.set(entry.payload.credential, { ...entry.payload, ...made });
    return;
  }
  if (isProven && there?.person === entry.payload.person && !there.removed)
    passkeys.set(there.credential, { ...there, removed: at });
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
