// Which earlier word does a verdict answer? A label scanned twice, or its quantity typed after the first scan, is one reel and one
// question: the newest verdict on the same reel for the same slot stands for all of them, whichever tablet's entries came first.
// Refused: asking the tablet to name the entry that it answers, since two tablets may hold the same reel without knowing of each other.

import type { PayloadOf } from './kinds.ts';
import { sharesSlots } from './lanes.ts';
import { labelShareOf, startLedger, tapeSd } from './remaining.ts';
import { type FloorState, type Ledger, type SlotState, slotKey, type Tape } from './state.ts';
import { wantedOn } from './wanted.ts';

type Verified = PayloadOf<'reel.verified'>;
type Label = Pick<Verified, 'reel' | 'part' | 'supplierPart' | 'lot' | 'dateCode'>;

/** True where two labels are of one reel as far as they say: by the reel's own id, without one by part, lot and date code. */
export function isSameLabel(one: Label, other: Label): boolean {
  if (one.reel !== null || other.reel !== null) return one.reel === other.reel;
  const isPart = one.part !== null && one.part === other.part;
  const isSupplierPart = one.supplierPart !== null && one.supplierPart === other.supplierPart;
  return (isPart || isSupplierPart) && one.lot === other.lot && one.dateCode === other.dateCode;
}

/** Closes the holds that a verdict answers: those of the same reel for the same slot, whichever lane asked, or of the same cart. */
export function closeAnswered(state: FloorState, facts: Verified): void {
  for (const [key, { facts: held }] of state.holds) {
    const isPlace =
      sharesSlots(held.line, facts.line) && held.slot === facts.slot && held.cart === facts.cart;
    const isSweep = (held.act === 'sweep') === (facts.act === 'sweep');
    if (isPlace && isSweep && isSameLabel(held, facts)) state.holds.delete(key);
  }
}

/** What a lead cleared a reel for: a label that names no site part stands for what the slot wants, since that is what was decided. */
export function clearedFacts(state: FloorState, facts: Verified): Verified {
  if (facts.part !== null || facts.slot === null) return facts;
  return { ...facts, part: wantedOn(state, facts.setup, facts.slot)?.part ?? null };
}

/** The tablet that wrote an entry, out of the entry's id. */
const tabletOf = (entry: string): string => entry.slice(0, entry.indexOf('/'));

/**
 * The slot as it is where an accepted reel stands there already, put there by an earlier entry about the very same reel: with the
 * quantity that only the later one knows. Null where the reel is another one. Without an id it is the same only where a lead cleared it
 * on one tablet while the tablet that had scanned it went on.
 */
export function sameReelThere(
  state: FloorState,
  facts: Verified,
  mark: { readonly entry: string; readonly atMs: number },
): SlotState | null {
  const there = facts.slot === null ? undefined : state.slots.get(slotKey(facts.line, facts.slot));
  const last = there?.tapes.at(-1);
  if (!there || !last || (facts.act === 'load' && there.tapes.length > 1)) return null;
  const isSame =
    facts.reel !== null
      ? last.reel === facts.reel
      : last.cleared !== undefined &&
        tabletOf(last.cleared) === tabletOf(mark.entry) &&
        isSameLabel({ ...last, reel: null }, facts);
  if (!isSame) return null;
  const stays = { ...there, ...mark, before: { ...there, before: null } };
  // A count that was taken since is the better word.
  if (facts.quantity === null || there.entry !== last.entry) return stays;
  const known: Tape = { ...last, count: facts.quantity, basis: facts.basis ?? last.basis, sd: 0 };
  const tapes = [...there.tapes.slice(0, -1), known];
  return { ...stays, tapes, ledger: recountedLast(state, there, known, facts.cut ?? 0) };
}

/** The ledger with another count for the tape that was put on last. */
function recountedLast(state: FloorState, there: SlotState, known: Tape, cut: number): Ledger {
  const { ledger, tapes, before } = there;
  const share = labelShareOf(state, there.line);
  const last = tapes.at(-1);
  if (tapes.length === 1 || last === undefined)
    return { ...startLedger([known], ledger.chain, share), dropped: ledger.dropped };
  const tailVariance = tapeSd(known, share) ** 2;
  const prior = before?.ledger.parts ?? null;
  return {
    ...ledger,
    parts: prior === null || known.count === null ? null : prior - cut + known.count,
    variance: ledger.variance - tapeSd(last, share) ** 2 + tailVariance,
    joint: ledger.joint && { ...ledger.joint, tail: known.count, tailVariance },
  };
}
