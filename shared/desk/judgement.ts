// Reading labels and judging reels, in one piece that comes in after the first screen. A verdict and what the log is told of it are made
// here; pure.

import type { Draft } from '../floor/draft.ts';
import type { DraftEntry, PayloadOf } from '../floor/kinds.ts';
import { kindComing } from '../floor/packs.ts';
import { plantDay } from '../floor/plant-day.ts';
import { type FloorState, slotKey } from '../floor/state.ts';
import type { VerifyAct } from '../floor/vocabulary.ts';
import type { Scan } from '../labels/scan.ts';
import { type EarlyQuestion, heldAlready, refusedAlready } from '../verdict/early.ts';
import { type Reason, verdictOf } from '../verdict/reasons.ts';
import { type VerifyAnswer, verifyReel } from '../verdict/verify.ts';
import { verifyForCart } from '../verdict/verify-cart.ts';
import { datedDrafts, floorLifeOf, lifeJudgedDrafts, openedDrafts } from './floor-life.ts';
import { type Desk, type DeskQuestion, type DeskView, deskAct, type ReelInHand } from './model.ts';
import { namedIn } from './named-in.ts';
import { continuesLabel } from './pieces.ts';
import { isOpenBeside } from './scan-line.ts';
import { measuredDrafts, valueQuestion } from './value-question.ts';

export { personByBadge } from '../floor/badge.ts';
export { lineOfScan } from './scan-line.ts';
export { offerToStep } from './step-offer.ts';
export {
  answerCameBefore,
  answerMeaning,
  answerRunsHere,
  answerWhich,
  checkStanding,
  takeEnough,
  takeScan,
} from './take-scan.ts';
export { answerValue } from './value-question.ts';

/** A desk with all that a verdict wants. */
export interface ReadyDesk extends Desk {
  readonly slot: string;
  readonly reel: ReelInHand;
}

/** A verdict, and the entries that make it last; the first of them is the verdict's own. */
export interface Judged {
  readonly act: VerifyAct;
  readonly answer: VerifyAnswer;
  /** What is asked before the verdict counts; null where nothing is. */
  readonly question: DeskQuestion | null;
  readonly drafts: readonly DraftEntry[];
}

/** Judges the reel in hand. The line must have a setup chosen, else throws `TypeError`. */
export function judgeReel(seen: DeskView, ready: ReadyDesk, nowMs: number): Judged {
  const { slot, reel, feeder } = ready;
  const { floor, line } = seen;
  const setup = floor.chosen.get(line);
  if (setup === undefined) throw new TypeError(`Cannot judge as line ${line} must have a setup chosen`);
  const act = deskAct(ready, seen);
  const asked = { act, line, setup, slot, reel };
  const answer = verifyReel(floor, {
    ...asked,
    feeder,
    today: plantDay(floor, line, nowMs),
    floorLife: floorLifeOf(floor, asked, nowMs),
  });
  const drafts: DraftEntry[] = [
    verdictDraft(seen, { act, setup, slot, feeder, reel }, answer),
    ...followingDrafts(floor, asked, answer, nowMs),
  ];
  return { act, answer, question: valueQuestion(floor, asked, reel, answer), drafts };
}

/** What a verdict brings with it, whatever it is for, behind its own entry: the bag opened, the floor life judged, the reel's last day, what was measured. */
function followingDrafts(
  floor: FloorState,
  asked: {
    readonly act: VerifyAct;
    readonly line: string;
    readonly setup: string;
    readonly slot: string;
    readonly reel: ReelInHand;
  },
  answer: VerifyAnswer,
  nowMs: number,
): readonly DraftEntry[] {
  const { act, reel } = asked;
  return [
    ...openedDrafts(floor, { act, verdict: answer.verdict, reel, part: answer.part }, nowMs),
    ...lifeJudgedDrafts(floor, asked, nowMs),
    ...datedDrafts(floor, reel),
    ...measuredDrafts(asked, reel, answer),
  ];
}

/** A verdict at a cart, and what is written in one append: the verdict's own entry first. */
export interface CartJudged {
  readonly answer: VerifyAnswer;
  /** What is asked before the verdict counts; null where nothing is. */
  readonly question: DeskQuestion | null;
  readonly drafts: readonly Draft[];
}

/**
 * Judges the reel in hand for a place on a cart, for a setup that comes next. `floor`: as it is, not as it will be when the cart docks. The
 * slot is named where the reel is refused or held; an accepted reel stands on the cart, not on the line, and the entry that says so
 * names the verdict.
 */
export function judgeForCart(
  floor: FloorState,
  at: { readonly line: string; readonly setup: string; readonly cart: string },
  ready: Pick<ReadyDesk, 'slot' | 'feeder' | 'reel'>,
  nowMs: number,
): CartJudged {
  const { line, setup, cart } = at;
  const { slot, feeder, reel } = ready;
  const asked = { act: 'load' as const, line, setup, slot, reel };
  const today = plantDay(floor, line, nowMs);
  const floorLife = floorLifeOf(floor, asked, nowMs);
  const answer = verifyForCart(floor, { ...asked, feeder, today, floorLife }, cart);
  const isAccepted = answer.verdict === 'accepted';
  const judged = { act: asked.act, setup, slot: isAccepted ? null : slot, feeder, reel };
  const verdict = verdictFacts(line, judged, answer);
  const drafts: Draft[] = [
    { kind: 'reel.verified', payload: answer.verdict === 'held' ? { ...verdict, cart } : verdict },
    ...followingDrafts(floor, asked, answer, nowMs),
  ];
  if (isAccepted) drafts.push(([of = '']) => filledDraft(at, { slot, feeder, reel, answer, of }));
  return { answer, question: valueQuestion(floor, asked, reel, answer), drafts };
}

/**
 * Judges the reel in hand for a feeder away from the line, for a slot that it is to go to. Accepted, it is ready on the feeder and stands on no
 * slot; at the slot one scan of the feeder asks again, as things are then.
 */
export function judgeForFeeder(
  floor: FloorState,
  at: { readonly line: string; readonly setup: string },
  ready: Pick<ReadyDesk, 'slot' | 'reel'> & { readonly feeder: string },
  nowMs: number,
): CartJudged {
  const { line, setup } = at;
  const { slot, feeder, reel } = ready;
  const asked = { act: 'load' as const, line, setup, slot, reel };
  const today = plantDay(floor, line, nowMs);
  const judged = verifyReel(floor, { ...asked, feeder, today, floorLife: floorLifeOf(floor, asked, nowMs) });
  // That something feeds there is why a second feeder is made ready.
  const reasons = judged.reasons.filter(({ code }) => code !== 'slot-loaded' && code !== 'kept-for-lane');
  const answer = { ...judged, reasons, verdict: verdictOf(reasons) };
  const isAccepted = answer.verdict === 'accepted';
  const told = { act: asked.act, setup, slot: isAccepted ? null : slot, feeder, reel };
  const drafts: Draft[] = [
    { kind: 'reel.verified', payload: { ...verdictFacts(line, told, answer), readying: true } },
    ...followingDrafts(floor, asked, answer, nowMs),
  ];
  const { supplierPart, lot, dateCode, quantity } = reel;
  const part = answer.part ?? reel.part ?? '';
  const facts = { feeder, line, setup, slot, reel: reel.reel, part, supplierPart, lot, dateCode, quantity };
  if (isAccepted) drafts.push(([of = '']) => ({ kind: 'feeder.readied', payload: { ...facts, of } }));
  return { answer, question: valueQuestion(floor, asked, reel, answer), drafts };
}

/** What stands ready on a cart by the verdict `of`. */
function filledDraft(
  at: { readonly line: string; readonly setup: string; readonly cart: string },
  by: Pick<ReadyDesk, 'slot' | 'feeder' | 'reel'> & { readonly answer: VerifyAnswer; readonly of: string },
): DraftEntry {
  const { slot, feeder, reel, answer, of } = by;
  return {
    kind: 'cart.filled',
    payload: {
      cart: at.cart,
      line: at.line,
      setup: at.setup,
      slot,
      feeder,
      reel: reel.reel,
      part: answer.part ?? reel.part ?? '',
      supplierPart: reel.supplierPart,
      lot: reel.lot,
      dateCode: reel.dateCode,
      quantity: reel.quantity,
      of,
    },
  };
}

/** The verdict's own entry, at the line. */
function verdictDraft({ floor, line }: DeskView, judged: VerdictOn, answer: VerifyAnswer): DraftEntry {
  const run = floor.current.get(line) ?? null;
  const panels = run === null ? 0 : (floor.runs.get(run)?.done ?? 0);
  const facts = { ...verdictFacts(line, judged, answer), run, panels, ...kindFacts(floor, line, judged) };
  return { kind: 'reel.verified', payload: facts };
}

/** What goes onto the slot, where it is no tape, and at an exchange what stood there. */
function kindFacts(
  floor: FloorState,
  line: string,
  { act, setup, slot, feeder, reel }: VerdictOn,
): Pick<PayloadOf<'reel.verified'>, 'comesIn' | 'replaces'> {
  if (slot === null || act === 'sweep') return {};
  const kind = kindComing(floor, { act, line, setup, slot, feeder, reel: reel.reel });
  const there = floor.slots.get(slotKey(line, slot));
  return {
    ...(kind === 'tape' ? {} : { comesIn: kind }),
    ...(act === 'exchange' ? { replaces: there?.tapes.at(-1)?.entry ?? null } : {}),
  };
}

/** What a verdict is about. */
interface VerdictOn {
  readonly act: VerifyAct;
  readonly setup: string;
  readonly slot: string | null;
  readonly feeder: string | null;
  readonly reel: ReelInHand;
}

/** A verdict as the log is told of it, away from any run. */
function verdictFacts(line: string, judged: VerdictOn, answer: VerifyAnswer): PayloadOf<'reel.verified'> {
  const { act, setup, slot, feeder, reel } = judged;
  return {
    act,
    line,
    setup,
    run: null,
    slot,
    feeder,
    reel: reel.reel,
    part: answer.part ?? reel.part,
    supplierPart: reel.supplierPart,
    quantity: reel.quantity,
    lot: reel.lot,
    dateCode: reel.dateCode,
    codes: [...reel.codes],
    verdict: answer.verdict,
    reasons: answer.reasons.map((reason) => ({ ...reason })),
    panels: 0,
    via: reel.via,
    basis: reel.basis,
  };
}

/** No label in hand: what a refusal says of a reel where slot and feeder alone decide it. */
const noReel: ReelInHand = {
  codes: [],
  via: 'typed',
  reel: null,
  part: null,
  supplierPart: null,
  quantity: null,
  labelQuantity: null,
  basis: null,
  lot: null,
  dateCode: null,
  expires: null,
  msl: null,
  questions: [],
};

/** True where a scan only goes on with the label of a reel that was judged already: nothing that the plant knows, and no new part. */
export function isTrailing(seen: DeskView, judged: ReelInHand, scan: Scan): boolean {
  const texts = scan.codes.map(({ text }) => text);
  const isKnown = texts.some((text) => namedIn(seen, text).length > 0);
  return !isKnown && continuesLabel(judged.codes, texts);
}

/** What is asked of a desk on which something is still wanted; null where nothing can be said yet. */
function earlyQuestion(seen: DeskView, desk: Desk, nowMs: number): EarlyQuestion | null {
  const { floor, line } = seen;
  const setup = floor.chosen.get(line);
  const reel = desk.reel ?? desk.partial;
  if (setup === undefined || desk.question !== null || (reel === null && desk.feeder === null)) return null;
  const { slot, feeder } = desk;
  const act = deskAct(desk, seen);
  if (act === 'splice' && !desk.atSlot) return null;
  return {
    act,
    line,
    setup,
    slot,
    feeder,
    reel,
    isPartial: desk.partial !== null,
    today: plantDay(floor, line, nowMs),
    floorLife:
      slot === null || reel === null ? null : floorLifeOf(floor, { act, line, setup, slot, reel }, nowMs),
  };
}

/** Why a lead must decide on the reel in hand, as soon as it is known; null where there is no reason, or not yet. */
export function leadWanted(seen: DeskView, desk: Desk, nowMs: number): Reason | null {
  const question = earlyQuestion(seen, desk, nowMs);
  const reason = question && heldAlready(seen.floor, question);
  if (reason === null) return null;
  return isOpenBeside(seen, desk, (view) => leadWanted(view, desk, nowMs)) ? null : reason;
}

/**
 * The refusal that stands already while other things are still wanted, as one entry; null where nothing scanned so far refuses, or
 * something is still asked.
 */
export function judgeEarly(
  seen: DeskView,
  desk: Desk,
  nowMs: number,
): (Judged & { readonly reel: ReelInHand }) | null {
  const question = earlyQuestion(seen, desk, nowMs);
  const answer = question && refusedAlready(seen.floor, question);
  if (question === null || answer === null) return null;
  // What the line in hand cannot use may be for the other line of this tablet: its slot decides.
  if (isOpenBeside(seen, desk, (view) => judgeEarly(view, desk, nowMs))) return null;
  const { act, setup, slot, feeder } = question;
  const reel = desk.reel ?? desk.partial ?? { ...noReel, via: desk.via ?? 'typed' };
  const judged =
    slot === null ? [] : lifeJudgedDrafts(seen.floor, { act, line: seen.line, setup, slot, reel }, nowMs);
  const drafts = [verdictDraft(seen, { act, setup, slot, feeder, reel }, answer), ...judged];
  return { act, answer, reel, question: null, drafts };
}
