// What is wrong already, while other things are still wanted? A reel that cannot go on its slot is refused at the scan that shows it, not
// after feeder and quantity: each further scan is a walk for nothing, and a hand that is already reaching in. Method: the whole
// verdict is asked for, and of its reasons those count that nothing still to come can take away.

import { blockReasons, slotsWanting, wantsAnywhere } from '../floor/fits.ts';
import { type FloorState, slotKey } from '../floor/state.ts';
import { differingCharacters } from '../labels/part-difference.ts';
import { compareText } from '../log/order.ts';
import { type Reason, type ReasonCode, reasonVerdicts } from './reasons.ts';
import { type VerifyAnswer, type VerifyQuestion, verifyReel } from './verify.ts';

/** A question of which parts are still open. */
export interface EarlyQuestion extends Omit<VerifyQuestion, 'slot' | 'reel'> {
  readonly slot: string | null;
  /** Null where no label is in hand. */
  readonly reel: VerifyQuestion['reel'] | null;
  /** True where more codes of the label may follow. */
  readonly isPartial: boolean;
}

const ofFeeder: ReadonlySet<ReasonCode> = new Set<ReasonCode>([
  'feeder-elsewhere',
  'feeder-lanes',
  'feeder-on-cart',
  'feeder-width',
  'feeder-pitch',
  'feeder-type',
  'feeder-drive',
  'feeder-height',
]);
/** The running reel's own label is the old reel of a splice, wherever it comes in the row. */
const ofOldReel: ReadonlySet<ReasonCode> = new Set<ReasonCode>(['reel-here']);

const noReel: VerifyQuestion['reel'] = {
  reel: null,
  part: null,
  supplierPart: null,
  quantity: null,
  lot: null,
};

/** The refusal that stands already, with its reasons; null where nothing known so far refuses. */
export function refusedAlready(state: FloorState, question: EarlyQuestion): VerifyAnswer | null {
  const { slot, reel, isPartial, feeder, ...rest } = question;
  if (question.act === 'sweep') return null;
  if (slot === null)
    return reel === null ? null : refusedAnywhere(state, question.line, question.setup, reel);
  if (reel === null) {
    if (feeder === null) return null;
    const answer = verifyReel(state, { ...rest, feeder, slot, reel: noReel });
    return only(answer, (code) => ofFeeder.has(code));
  }
  // Code by code, the label of a reel that runs here names it as the old one.
  if (isPartial && isMountedPart(state, question.line, slot, reel)) return null;
  const answer = verifyReel(state, { ...rest, feeder, slot, reel });
  return only(answer, (code) => !isPartial || !ofOldReel.has(code));
}

/** What nothing still wanted can take away from a lead's decision: it hangs on the reel and its slot alone. */
const ofReel: ReadonlySet<ReasonCode> = new Set<ReasonCode>([
  'expired',
  'floor-life-short',
  'bake-short',
  'part-contradicts',
  'alternate-not-approved',
  'supplier-part-not-approved',
  'maker-not-listed',
  'bake-hours-over',
  'reel-unnamed',
  'reel-gone',
  'date-code-old',
  'date-code-unknown',
]);

/** The first reason for which a lead must decide on the reel in hand, known before all is there; null where there is none. */
export function heldAlready(state: FloorState, question: EarlyQuestion): Reason | null {
  const { slot, reel, isPartial, ...rest } = question;
  if (question.act === 'sweep' || slot === null || reel === null || isPartial) return null;
  return verifyReel(state, { ...rest, slot, reel }).reasons.find(({ code }) => ofReel.has(code)) ?? null;
}

function only(answer: VerifyAnswer, counts: (code: ReasonCode) => boolean): VerifyAnswer | null {
  const reasons = answer.reasons.filter(({ code }) => reasonVerdicts[code] === 'refused' && counts(code));
  return reasons.length === 0 ? null : { ...answer, verdict: 'refused', reasons };
}

function isMountedPart(state: FloorState, line: string, slot: string, reel: VerifyQuestion['reel']): boolean {
  const tapes = state.slots.get(slotKey(line, slot))?.tapes ?? [];
  return tapes.some(
    (tape) =>
      (reel.part !== null && tape.part === reel.part) ||
      (reel.supplierPart !== null && tape.supplierPart === reel.supplierPart),
  );
}

/** A reel for which no slot of the setup has a use, or that must not be used at all: known before any slot is. */
function refusedAnywhere(
  state: FloorState,
  line: string,
  setup: string,
  reel: VerifyQuestion['reel'],
): VerifyAnswer | null {
  // What stands on a slot is asked about there: it may come off.
  if (reel.reel !== null && state.reels.get(reel.reel)?.at) return null;
  const wanted = wantsAnywhere(state, line, setup, reel);
  const reasons: Reason[] = [...blockReasons(state, reel, wanted?.part)];
  if (wanted !== null && !wanted.isWanted) reasons.push(notInSetup(state, setup, wanted.part));
  return reasons.length === 0 ? null : { verdict: 'refused', reasons, part: wanted?.part ?? reel.part };
}

/** The part that the setup wants and that reads most like the one found: what the hand may have meant to take. */
function notInSetup(state: FloorState, setup: string, found: string): Reason {
  const slots = state.setups.get(setup)?.slots ?? [];
  const parts = [...new Set(slots.map(({ part }) => part))].sort(compareText);
  const near = parts
    .map((part) => ({ part, off: differences(part, found) }))
    .filter(({ off }) => off <= 2)
    .sort((a, b) => a.off - b.off)[0];
  const slot = near === undefined ? null : (slotsWanting(state, setup, near.part)[0] ?? null);
  return { code: 'not-in-setup', found, wanted: near?.part ?? null, slot };
}

/** Characters in which two part numbers of one length differ; Infinity where the lengths differ. */
function differences(one: string, other: string): number {
  if (one.length !== other.length) return Number.POSITIVE_INFINITY;
  return differingCharacters(one, other).reduce(
    (sum, piece) => sum + (piece.same ? 0 : piece.wanted.length),
    0,
  );
}

/** Slots of other lines whose chosen setup wants a part, line by line in their order of definition. */
export function wantedElsewhere(
  state: FloorState,
  line: string,
  part: string,
): readonly { readonly line: string; readonly slot: string }[] {
  return [...state.chosen].flatMap(([other, setup]) =>
    other === line ? [] : slotsWanting(state, setup, part).map((slot) => ({ line: other, slot })),
  );
}
