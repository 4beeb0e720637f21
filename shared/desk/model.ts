// The desk: what has been scanned for the task in hand, and what is still wanted. Pure: a scan and the floor in, the next desk
// out. One desk serves load, splice and sweep, since the operator scans the same things: the act follows from what is on the
// slot. Refused: one form a screen, as a scan would then depend on which screen happens to be open.

import { slotsWanting } from '../floor/fits.ts';
import { kindOnSlot, moreBy } from '../floor/packs.ts';
import { goesOnTray } from '../floor/place.ts';
import { slotPhase } from '../floor/progress.ts';
import type { Recognised } from '../floor/recognise.ts';
import { type FloorState, slotKey } from '../floor/state.ts';
import type { MeasuredPart, ValueCheck } from '../floor/value-check.ts';
import type { CountBasis, Source, VerifyAct } from '../floor/vocabulary.ts';
import { wantedOn } from '../floor/wanted.ts';
import type { LabelQuestion } from '../labels/reading.ts';
import type { Scan } from '../labels/scan.ts';
import type { Reason } from '../verdict/reasons.ts';

/** A label in hand. */
export interface ReelInHand {
  readonly codes: readonly string[];
  readonly via: Source;
  readonly reel: string | null;
  readonly part: string | null;
  readonly supplierPart: string | null;
  /** Parts on it as far as the log or a person knows; else what the label says. */
  readonly quantity: number | null;
  /** What the label itself says, null where it says nothing. */
  readonly labelQuantity: number | null;
  readonly basis: CountBasis | null;
  readonly lot: string | null;
  readonly dateCode: string | null;
  readonly expires: string | null;
  readonly msl: string | null;
  /** True where a person said that it is a second reel, though its label reads like that of the reel that runs there. */
  readonly isSecond?: boolean;
  /** True where a person said that it comes new, though a reel without an id of its part and lot was on the line before. */
  readonly isFresh?: boolean;
  /** One part off it under the meter; null where a person said that it cannot be measured, absent where nobody was asked. */
  readonly measured?: MeasuredPart | null;
  /** True where that was measured before, and is in the log. */
  readonly isMeasuredBefore?: boolean;
  /** What the label says that a person must decide. */
  readonly questions: readonly LabelQuestion[];
}

/** What a text on a label may mean; a text that looks like a place's name may be that too. */
export interface MeaningQuestion {
  readonly text: string;
  readonly candidates: readonly {
    readonly field: LabelQuestion['candidates'][number]['field'] | 'place';
    readonly value: string;
  }[];
}

/** What the desk asks before it goes on; at most one question at a time. */
export type DeskQuestion =
  | {
      readonly ask: 'which';
      readonly text: string;
      readonly options: readonly Recognised[];
      /** The other codes of the same scan that wait for the answer. */
      readonly rest: Scan;
    }
  /** Nobody listed it, but a feeder is what the task still wants: a lead can decide on it once a person says that it is one. */
  | { readonly ask: 'unlisted-feeder'; readonly text: string; readonly options: readonly Recognised[] }
  | { readonly ask: 'meaning'; readonly question: MeaningQuestion }
  /** The label in hand reads like that of the reel that runs on the slot: is it that reel, or a second one? */
  | { readonly ask: 'runs-here'; readonly slot: string; readonly reel: ReelInHand }
  /** The line wants the value of this part measured before it feeds. */
  | { readonly ask: 'value'; readonly check: ValueCheck; readonly reel: ReelInHand }
  /** The label has no id, and a reel without one of its part and lot came off the line with parts on it: is it that one? */
  | {
      readonly ask: 'came-before';
      readonly reel: ReelInHand;
      /** Parts that the earlier one had left, null where nobody knows. */
      readonly left: number | null;
      readonly lot: string | null;
    };

/** Something worth telling that is no verdict. */
export type DeskTold =
  | { readonly tell: 'unknown-slot'; readonly slot: string }
  | { readonly tell: 'unknown-code'; readonly text: string; readonly codes: readonly string[] }
  | { readonly tell: 'sign-in' }
  /** What was in hand when the browser closed, from this moment. */
  | { readonly tell: 'came-back'; readonly atMs: number }
  /** The reel in hand is one for a lead, whatever is still wanted. */
  | { readonly tell: 'lead-wanted'; readonly reason: Reason }
  | { readonly tell: 'take-out'; readonly slot: string }
  /** `codes`: the whole codes that were read; none where the scanner was cut off in the middle of one. */
  | { readonly tell: 'half-label'; readonly text: string; readonly codes: readonly string[] }
  /** The label was read whole, and no part number is on it that anybody here could take. */
  | { readonly tell: 'no-part'; readonly text: string; readonly codes: readonly string[] }
  /** Some symbols of one message were not read; nothing of it was taken. */
  | { readonly tell: 'symbols-missing'; readonly have: number; readonly of: number }
  /** A scanner typed for another keyboard than the tablet's; nothing of it was taken. */
  | { readonly tell: 'wrong-keyboard'; readonly layout: string; readonly text: string }
  | {
      readonly tell: 'old-reel-differs';
      readonly slot: string;
      readonly found: string | null;
      readonly loaded: string | null;
      /** Its label, where a person says that it is what stands there. */
      readonly reel: ReelInHand;
    }
  | { readonly tell: 'cart'; readonly cart: string }
  | { readonly tell: 'place'; readonly place: string }
  | { readonly tell: 'badge'; readonly person: string }
  | { readonly tell: 'panel'; readonly serial: string; readonly run: string };

/** What has been scanned for the task in hand. */
export interface Desk {
  /** Chosen by a person; load or splice follow from what is on the slot. A check sweeps the one slot in hand and goes back to work. */
  readonly mode: 'work' | 'sweep' | 'check';
  readonly slot: string | null;
  /** True where the slot's own code was scanned or the reel on it was: the operator stands in front of it. */
  readonly atSlot: boolean;
  /** The running reel where it was scanned before its slot: it says which splice this is, until the slot's own code does. */
  readonly old: ReelInHand | null;
  /** True once the running reel's own label was scanned at its slot: the next scan of it asks. */
  readonly oldSeen: boolean;
  readonly feeder: string | null;
  readonly reel: ReelInHand | null;
  /** A label that comes code by code, as far as it has come: no reel in hand yet. */
  readonly partial: ReelInHand | null;
  readonly via: Source | null;
  readonly question: DeskQuestion | null;
  readonly told: DeskTold | null;
}

/** A desk with nothing on it. */
export const emptyDesk: Desk = {
  mode: 'work',
  slot: null,
  atSlot: false,
  old: null,
  oldSeen: false,
  feeder: null,
  reel: null,
  partial: null,
  via: null,
  question: null,
  told: null,
};

/** What the desk looks at besides the scan. */
export interface DeskView {
  readonly floor: FloorState;
  readonly line: string;
  /** The other lines that the tablet serves; absent where it serves one. */
  readonly beside?: readonly string[];
}

/** What would be done with the slot in hand. */
export function deskAct(desk: Desk, view: DeskView): VerifyAct {
  if (desk.mode !== 'work') return 'sweep';
  if (desk.slot === null) return 'load';
  const there = view.floor.slots.get(slotKey(view.line, desk.slot));
  if (there === undefined || isLeftOver(desk.slot, view)) return 'load';
  return isOtherFeeder(desk, there.feeder, view) ? 'exchange' : moreBy(kindOnSlot(there));
}

/**
 * True where another feeder is in hand than the one on the slot: it goes on in its place, with what is on it. Where nobody scanned the feeder
 * there, one that was made ready away from the line is another.
 */
function isOtherFeeder({ feeder }: Desk, there: string | null, { floor }: DeskView): boolean {
  return feeder !== null && feeder !== there && (there !== null || floor.ready.has(feeder));
}

/** True where what is on the slot belongs to an earlier setup: a new reel there is a load, and must wait for the unload. */
function isLeftOver(slot: string, view: DeskView): boolean {
  return slotPhase(view.floor, view.line, slot) === 'other';
}

/** A thing that the task still needs. */
export type Well = 'slot' | 'feeder' | 'old-reel' | 'reel';

/** What the task in hand needs, in the order in which the wells stand. */
export function deskWells(
  desk: Desk,
  view: DeskView,
): readonly { readonly well: Well; readonly filled: boolean }[] {
  const act = deskAct(desk, view);
  if (act === 'splice' && desk.slot !== null) {
    return [
      { well: 'slot', filled: true },
      { well: 'old-reel', filled: desk.atSlot },
      { well: 'reel', filled: desk.reel !== null },
    ];
  }
  if ((act === 'exchange' || act === 'refill') && desk.slot !== null) {
    // The empty tray or tube has no label to scan any more: the slot alone says where.
    return [
      { well: 'slot', filled: true },
      ...(desk.feeder === null ? [] : [{ well: 'feeder' as const, filled: true }]),
      { well: 'reel', filled: desk.reel !== null },
    ];
  }
  const wells: { well: Well; filled: boolean }[] = [{ well: 'slot', filled: desk.slot !== null }];
  if (act === 'load' && view.floor.rules.get(view.line)?.feedersKnown && !isForTray(desk, view)) {
    wells.push({ well: 'feeder', filled: desk.feeder !== null });
  }
  wells.push({ well: 'reel', filled: desk.reel !== null });
  return wells;
}

/** True where a tray goes onto the slot in hand: there is no feeder to scan. */
function isForTray({ slot }: Desk, { floor, line }: DeskView): boolean {
  if (slot === null) return false;
  return goesOnTray(floor.lines.get(line), slot, wantedOn(floor, floor.chosen.get(line) ?? '', slot));
}

/** True where everything is there and nothing is asked: time for the verdict. */
export function isDeskReady(desk: Desk, view: DeskView): boolean {
  return desk.question === null && deskWells(desk, view).every((well) => well.filled);
}

/** Puts a thing that the plant knows on the desk. */
export function takeKnown(desk: Desk, known: Recognised): Desk {
  switch (known.is) {
    case 'slot':
      return takeSlot(desk, known.slot);
    case 'feeder':
      return { ...desk, feeder: known.feeder };
    case 'person':
      return { ...desk, told: { tell: 'badge', person: known.person } };
    case 'panel':
      return { ...desk, told: { tell: 'panel', serial: known.serial, run: known.run } };
    case 'cart':
      return { ...desk, told: { tell: 'cart', cart: known.cart } };
    case 'place':
      return { ...desk, told: { tell: 'place', place: known.place } };
    case 'reel':
      return desk;
  }
}

function takeSlot(desk: Desk, slot: string): Desk {
  const at = { ...desk, slot, atSlot: true, old: null };
  if (desk.slot === null || desk.slot === slot) return at;
  // The reel that named another slot is in front of this one: the verdict must refuse it, not forget it.
  return { ...at, oldSeen: false, feeder: null, reel: desk.old ?? desk.reel };
}

/** What a question was about is dropped, the rest of the task stays. */
export function leaveQuestion(desk: Desk): Desk {
  const isOfReel = desk.question?.ask === 'meaning' || desk.question?.ask === 'value';
  return { ...desk, question: null, reel: isOfReel ? null : desk.reel };
}

/** What the label of a reel is asked for where it comes code by code. */
export type LabelPiece = 'quantity' | 'lot';

/** What the label of a named part has not said yet, in the order in which it is asked for. */
export function missingPieces(reel: ReelInHand): readonly LabelPiece[] {
  const missing: LabelPiece[] = [];
  if (reel.quantity === null) missing.push('quantity');
  if (reel.lot === null) missing.push('lot');
  return missing;
}

/** Slots that the reel in hand may go to; those still missing first. */
export function suggestedSlots(desk: Desk, view: DeskView): readonly string[] {
  const setup = view.floor.chosen.get(view.line);
  const inHand = desk.reel ?? desk.partial;
  if (!inHand || setup === undefined) return [];
  const { part, supplierPart } = inHand;
  const parts = part !== null ? [part] : (view.floor.approvals.get(supplierPart ?? '') ?? []);
  const slots = parts.flatMap((each) => slotsWanting(view.floor, setup, each));
  const isMissing = (slot: string) => !view.floor.slots.has(slotKey(view.line, slot));
  return [...slots.filter(isMissing), ...slots.filter((slot) => !isMissing(slot))];
}
