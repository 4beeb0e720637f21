// What was put on a slot since its last true count, and what the last splice showed: enough to compute what is left at any time.
// Method: sums are kept, not an estimate, so that a loss learnt later also betters what is said of earlier tapes; a splice tells
// that the old tape's end then lay between hub and intake. Private to the door `remaining.ts`. Resetting the count at each splice was refused: errors would add up.

import { tapeLengthsOf } from '../feeder-types.ts';
import type { FloorState, Joint, Ledger, SlotState, Tape } from '../state.ts';
import { wantedOn } from '../wanted.ts';
import { noDoubt, type PlacedDoubt } from './skips.ts';

/** One deviation of a label's quantity as a share of it, where no rule of the line says otherwise. Common practice: a few tenths of a percent. */
export const LABEL_SHARE = 0.0025;

/** The share that a line goes by; null: a reel that is on no line. */
export function labelShareOf(state: Pick<FloorState, 'rules'>, line: string | null): number {
  return (line === null ? undefined : state.rules.get(line)?.labelShare) ?? LABEL_SHARE;
}

/** True where nobody counted the tape: its figure was printed or typed, and nothing says how good it is. */
export function isPrinted(tape: Pick<Tape, 'sd' | 'basis'>): boolean {
  return tape.sd === 0 && (tape.basis === 'label' || tape.basis === 'typed');
}

/** One deviation of what a tape had when it was joined, parts. A count of its own spread keeps that; a printed one gets the line's share. */
export function tapeSd(tape: Pick<Tape, 'count' | 'sd' | 'basis'>, labelShare: number): number {
  return isPrinted(tape) ? Math.max(1, labelShare * (tape.count ?? 0)) : tape.sd;
}

/** A ledger that begins with these tapes. `chain` names it: the entry of the load or of the count; `labelShare`: `labelShareOf()`. */
export function startLedger(tapes: readonly Tape[], chain: string, labelShare: number): Ledger {
  let parts: number | null = 0;
  let variance = 0;
  for (const tape of tapes) {
    parts = parts === null || tape.count === null ? null : parts + tape.count;
    variance += tapeSd(tape, labelShare) ** 2;
  }
  return { chain, parts, variance, dropped: 0, splices: 0, doubt: noDoubt, joint: null };
}

/**
 * Parts left between which a splice can have been made: the tape's end lay off the hub and not yet in the feeder. Behind the last part hangs
 * the trailer; where nobody measured it the bounds are the widest that hold for any. Null where hub, intake or pitch is not known, and where something else than tape from a hub is on it: a cut piece ends anywhere.
 */
export function windowOf(
  state: FloorState,
  slot: Pick<SlotState, 'line' | 'slot' | 'feeder' | 'tapes'>,
  setup: string,
): { readonly opens: number; readonly closes: number } | null {
  if (slot.tapes.some(({ comesIn }) => comesIn !== undefined)) return null;
  const {
    hubToPickMm: hub,
    intakeToPickMm: intake,
    trailerMm,
  } = tapeLengthsOf(state, slot.line, slot.feeder);
  const pitchMm = wantedOn(state, setup, slot.slot)?.pitchMm ?? null;
  if (hub === null || intake === null || pitchMm === null) return null;
  const parts = (mm: number) => Math.max(0, Math.floor(mm / pitchMm + 1e-9));
  const trailer = trailerMm?.mm ?? 0;
  return { opens: parts(hub.mm - trailer), closes: trailerMm === null ? 0 : parts(intake.mm - trailer) };
}

/**
 * The ledger after a tape was joined when `placed` placements had been taken in all. `cut`: parts of the old tape cut away; null where
 * nobody entered it, so that what a splice usually costs is taken off.
 * Wherever the old tape was cut, its end then lay between hub and intake: that bounds what was left on it.
 */
export function joinLedger(
  ledger: Ledger,
  tape: Tape,
  at: {
    readonly placed: number;
    readonly cut: number | null;
    readonly doubt: PlacedDoubt;
    readonly window: { readonly opens: number; readonly closes: number } | null;
    readonly labelShare: number;
  },
): Ledger {
  const { placed, doubt, window } = at;
  const cut = at.cut ?? 0;
  const uncosted = at.cut === null ? 1 : 0;
  const tailVariance = tapeSd(tape, at.labelShare) ** 2;
  const before = ledger.parts === null ? null : ledger.parts - cut;
  const joint: Joint | null =
    window === null
      ? null
      : { placed, doubt, low: window.closes, high: window.opens, tail: tape.count, tailVariance, uncosted };
  return {
    ...ledger,
    parts: before === null || tape.count === null ? null : before + tape.count,
    variance: ledger.variance + tailVariance,
    splices: ledger.splices + uncosted,
    doubt,
    joint,
  };
}
