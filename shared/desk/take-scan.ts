// Puts scans on the desk: what the plant knows goes first, the rest is one label. Apart from the desk's shape, since reading
// labels is much code that no screen needs to be drawn. Pure: a scan and the floor in, the next desk out.

import { isFullAddress } from '../floor/address.ts';
import { siteRules } from '../floor/fold-labels.ts';
import { isReelKnown, reelOf } from '../floor/gone-reels.ts';
import type { Recognised } from '../floor/recognise.ts';
import { hasOwnId } from '../floor/reel-id.ts';
import { type FloorState, type ReadyFeeder, slotKey } from '../floor/state.ts';
import type { Source } from '../floor/vocabulary.ts';
import { parseLabel } from '../labels/label.ts';
import { readPackageId } from '../labels/package-id.ts';
import { joinPortions } from '../labels/portions.ts';
import { parseQuantity } from '../labels/quantity.ts';
import type { LabelQuestion, LabelReading } from '../labels/reading.ts';
import type { Scan, ScannedCode } from '../labels/scan.ts';
import { earlierUnnamed } from '../verdict/verify.ts';
import {
  type Desk,
  type DeskView,
  deskAct,
  deskWells,
  emptyDesk,
  type MeaningQuestion,
  missingPieces,
  type ReelInHand,
  takeKnown,
} from './model.ts';
import { namedIn } from './named-in.ts';
import { arePieces, joinPieces } from './pieces.ts';
import { comesOut, isOnSlot, readsAsRunning, runsOn } from './runs-already.ts';

/**
 * Puts a scan on the desk. Every code of the scan is looked at; what the plant knows goes first, the rest is one label. Where a
 * code may be two things, a person is asked, and what is still uncertain waits for the answer; a scan in the meantime joins it.
 */
export function takeScan(desk: Desk, scan: Scan, view: DeskView): Desk {
  const { codes, missing } = joinPortions(scan.codes);
  if (missing !== null) return { ...desk, told: { tell: 'symbols-missing', ...missing } };
  return takeWholeCodes(desk, { ...scan, codes }, view);
}

/** Puts a scan on the desk whose codes are messages of their own. */
function takeWholeCodes(desk: Desk, scan: Scan, view: DeskView): Desk {
  const asking = aboutLabel(desk);
  let next: Desk = { ...desk, told: null, question: null, via: scan.via };
  // A label that waits for an answer is no reel in hand yet.
  if (asking?.ask === 'meaning') next = { ...next, reel: null };
  const label: ScannedCode[] = [];
  const unsure: { readonly code: ScannedCode; readonly options: readonly Recognised[] }[] = [];
  for (const code of codesInHand(desk, scan, view)) {
    const known = recognised(code, view);
    const only = known[0];
    if (known.length > 1) unsure.push({ code, options: known });
    else if (only) next = takeOnly(next, only, view);
    else label.push(code);
  }
  const [asked, ...others] = unsure;
  if (asked) {
    const rest = { ...scan, codes: [...others.map(({ code }) => code), ...label] };
    return { ...next, question: { ask: 'which', text: asked.code.text, options: asked.options, rest } };
  }
  // What was no label leaves the question about one open.
  if (label.length === 0)
    return asking === null ? next : { ...next, question: asking, reel: desk.reel ?? next.reel };
  const texts = label.map(({ text }) => text);
  // What is asked about may be a label's first code: what comes now may say what it means.
  const opened = asking?.ask === 'meaning' && desk.reel !== null ? desk.reel.codes : [];
  const joined = scan.via === 'wedge' && opened.length > 0 ? joinPieces(opened, texts) : null;
  return takeLabel(next, joined ?? texts, scan.via, view, joined !== null);
}

/** The open question about the label that was scanned last, null where there is none. */
function aboutLabel({ question }: Desk) {
  return question?.ask === 'meaning' || question?.ask === 'came-before' ? question : null;
}

/** What the plant knows; a feeder brings what was verified onto it away from the line, so that its scan alone is enough at the slot. */
function takeOnly(desk: Desk, known: Recognised, view: DeskView): Desk {
  const next = takeKnown(desk, known);
  const ready = known.is === 'feeder' ? view.floor.ready.get(known.feeder) : undefined;
  if (ready === undefined || ready.line !== view.line || desk.mode !== 'work' || next.reel !== null)
    return next;
  return { ...next, reel: readyReel(ready, view, next.via ?? 'typed') };
}

/** The reel that stands ready on a feeder, as it was verified; its count as the log has it by now. */
function readyReel(ready: ReadyFeeder, view: DeskView, via: Source): ReelInHand {
  const { reel, part, supplierPart, lot, dateCode, quantity } = ready;
  const known = reel === null ? undefined : reelOf(view.floor, reel);
  const measured = reel === null ? undefined : view.floor.values.get(reel);
  const inHand: ReelInHand = {
    codes: [],
    via,
    reel,
    part,
    supplierPart,
    quantity: known?.count ?? quantity,
    labelQuantity: quantity,
    basis: known?.count != null ? known.basis : quantity === null ? null : 'label',
    lot,
    dateCode,
    expires: reel === null ? null : (view.floor.expiries.get(reel) ?? null),
    msl: null,
    isFresh: true,
    questions: [],
  };
  return measured?.part === part ? { ...inHand, measured, isMeasuredBefore: true } : inHand;
}

/** A person's answer to what a code is; what waited for it goes on. */
export function answerWhich(desk: Desk, known: Recognised, view: DeskView): Desk {
  const rest = desk.question?.ask === 'which' ? desk.question.rest : null;
  const next = takeOnly({ ...desk, told: null, question: null }, known, view);
  if (rest === null || rest.codes.length === 0) return next;
  const after = takeScan(next, rest, view);
  return after.told === null ? { ...after, told: next.told } : after;
}

/** What a code may be besides a reel, which is a label's matter. */
function recognised(code: ScannedCode, view: DeskView): readonly Recognised[] {
  return namedIn(view, code.text).filter((each) => each.is !== 'reel');
}

/** The scan's codes, and before them those that an open question keeps waiting; a newer label replaces the one that waits. */
function codesInHand(desk: Desk, scan: Scan, view: DeskView): readonly ScannedCode[] {
  if (desk.question?.ask !== 'which') return scan.codes;
  const { text, rest } = desk.question;
  const isLabel = (code: ScannedCode) => recognised(code, view).length === 0;
  const newer = scan.codes.some(isLabel);
  const waiting = [
    { text, format: null, symbologyId: null },
    ...rest.codes.filter((code) => !(newer && isLabel(code))),
  ];
  return [...waiting.filter((code) => scan.codes.every((each) => each.text !== code.text)), ...scan.codes];
}

/** Puts a label's codes on the desk: as the old reel where one is wanted, else as the reel in hand. */
export function takeLabel(
  desk: Desk,
  scanned: readonly string[],
  via: Source,
  view: DeskView,
  isJoined = false,
): Desk {
  // Only a scanner sends a label code by code: the camera gathers by itself, and who types says when it is all.
  const before = via === 'wedge' ? ((desk.partial ?? desk.reel)?.codes ?? []) : [];
  const joined = before.length > 0 ? joinPieces(before, scanned) : null;
  const codes = joined ?? scanned;
  const reading = parseLabel(codes, { expected: expectation(view), rules: siteRules(view.floor) });
  const next = { ...desk, partial: null };
  const spoiled = reading.warnings.find((warning) => warning.code === 'keyboard-layout');
  if (spoiled !== undefined) {
    const { layout, text } = spoiled;
    return { ...next, told: { tell: 'wrong-keyboard', layout, text } };
  }
  const reel = reelInHand(reading, codes, via, view);
  if (via === 'wedge' && (joined || isJoined || scanned.length === 1) && arePieces(codes, reading)) {
    if (reel.part === null && reel.supplierPart === null) return takeHalf(next, codes);
    if (missingPieces(reel).length > 0) return { ...next, reel: null, partial: reel };
  }
  return takeWhole(next, reel, reading, view);
}

/** A person says that the label in hand has no more codes. */
export function takeEnough(desk: Desk, view: DeskView): Desk {
  return desk.partial === null ? desk : takeReel({ ...desk, partial: null, told: null }, desk.partial, view);
}

/** Puts a label that is all there on the desk. */
function takeWhole(desk: Desk, reel: ReelInHand, reading: LabelReading, view: DeskView): Desk {
  const { codes } = reel;
  const asked = reel.questions[0];
  if (asked && reel.part === null && reel.supplierPart === null) {
    return { ...desk, reel, question: { ask: 'meaning', question: withPlace(asked) } };
  }
  if (reel.part === null && reel.supplierPart === null && reel.reel === null) {
    if (reading.fields.length === 0) return takeUnknown(desk, codes, view);
    return isPartOfLabel(codes, reading) ? takeHalf(desk, codes) : takeNoPart(desk, codes);
  }
  return takeReel(desk, reel, view);
}

/** A word and a number behind it, as shelves, racks and bins are named. */
const PLACE_LOOK = /^\p{L}{3,}[-_./ ]?\p{L}{0,2}\d[\p{L}\d./-]*$/u;

/**
 * The question with what a code that looks like a place's name may be besides: that place, or a reel of that whole name. A data identifier
 * that is one letter (`S`, `P`) is the first letter of many a word, so it is never cut off unasked.
 */
function withPlace(question: LabelQuestion): MeaningQuestion {
  const { text, candidates } = question;
  if (!PLACE_LOOK.test(text)) return question;
  const whole = [
    { field: 'place', value: text },
    { field: 'reel', value: text },
  ] as const;
  return { ...question, candidates: [...whole, ...candidates] };
}

/** Warnings after which a code may hold more than was read of it. */
const LOST: ReadonlySet<string> = new Set(['header-damaged', 'separators-lost']);

/** True where more may stand on the label than was read: bar codes of one fact each, an envelope without its end, or a damaged code. */
function isPartOfLabel(codes: readonly string[], reading: LabelReading): boolean {
  const isCut = (text: string) => text.startsWith('[)>\u001e') && !/\u001e\u0004?$/.test(text);
  return (
    arePieces(codes, reading) || codes.some(isCut) || reading.warnings.some(({ code }) => LOST.has(code))
  );
}

/** A label that was read whole and names no part: told, and nothing that was scanned before is touched. */
function takeNoPart(desk: Desk, codes: readonly string[]): Desk {
  return { ...desk, told: { tell: 'no-part', text: codes.join(' '), codes } };
}

/** Part of a label without its part number: told, and nothing that was scanned before is touched. */
function takeHalf(desk: Desk, codes: readonly string[]): Desk {
  return { ...desk, told: { tell: 'half-label', text: codes.join(' '), codes } };
}

/** A person's answer to what a text on the label means. */
export function answerMeaning(desk: Desk, field: string, value: string, view: DeskView): Desk {
  if (!desk.reel) return { ...desk, question: null };
  if (field === 'place')
    return { ...desk, reel: null, question: null, told: { tell: 'place', place: value } };
  const known = field === 'reel' ? reelOf(view.floor, value) : undefined;
  const quantity = field === 'quantity' ? (parseQuantity(value)?.quantity ?? null) : null;
  const reel: ReelInHand = {
    ...desk.reel,
    part: field === 'part' ? value : (desk.reel.part ?? known?.part ?? null),
    supplierPart: field === 'supplierPart' ? value : desk.reel.supplierPart,
    lot: field === 'lot' ? value : (desk.reel.lot ?? known?.lot ?? null),
    dateCode: field === 'dateCode' ? value : (desk.reel.dateCode ?? known?.dateCode ?? null),
    reel: field === 'reel' ? value : desk.reel.reel,
    quantity: known?.count ?? quantity ?? desk.reel.quantity,
    labelQuantity: quantity ?? desk.reel.labelQuantity,
    basis: known?.count != null ? known.basis : quantity === null ? desk.reel.basis : 'label',
    questions: desk.reel.questions.slice(1),
  };
  const asked = reel.questions[0];
  if (asked && reel.part === null && reel.supplierPart === null)
    return { ...desk, reel, question: { ask: 'meaning', question: asked } };
  const next = { ...desk, reel: null, question: null };
  if (reel.part === null && reel.supplierPart === null && reel.reel === null)
    return takeNoPart(next, reel.codes);
  return takeReel(next, reel, view);
}

/** A reel whose label is read: the old one of a splice, one that comes out, or the reel in hand. */
function takeReel(desk: Desk, reel: ReelInHand, view: DeskView): Desk {
  if (desk.slot !== null && !desk.atSlot && deskAct(desk, view) === 'splice')
    return takeOldReel(desk, reel, view);
  if (desk.slot !== null && comesOut(desk.slot, view) && isOnSlot(reel, desk.slot, view)) {
    return { ...desk, told: { tell: 'take-out', slot: desk.slot } };
  }
  const runs = runsOn(reel, desk, view);
  if (runs !== null && desk.slot === null)
    return { ...desk, slot: runs, atSlot: true, old: reel, oldSeen: true };
  if (runs !== null && desk.slot === runs) {
    return desk.oldSeen && desk.atSlot
      ? { ...desk, question: { ask: 'runs-here', slot: runs, reel } }
      : { ...desk, atSlot: true, oldSeen: true };
  }
  if (desk.slot !== null && readsAsRunning(reel, desk, view))
    return { ...desk, question: { ask: 'runs-here', slot: desk.slot, reel } };
  return askCameBefore(desk, reel, view) ?? { ...desk, reel };
}

/** Asks whether a label without an id is of the reel that came off before; null where there was none, or nothing hangs on it. */
function askCameBefore(desk: Desk, reel: ReelInHand, view: DeskView): Desk | null {
  if (desk.mode !== 'work' || reel.reel !== null || reel.isFresh || reel.isSecond) return null;
  const earlier = earlierUnnamed(view.floor, reel);
  if (earlier === null || earlier.count === reel.quantity) return null;
  return { ...desk, question: { ask: 'came-before', reel, left: earlier.count, lot: earlier.lot } };
}

/** A person says whether the label in hand is of the reel that was on the line before, whose count then goes on, or of a new one. */
export function answerCameBefore(desk: Desk, isSame: boolean): Desk {
  const { question } = desk;
  if (question?.ask !== 'came-before') return desk;
  const { reel, left } = question;
  const counted = { quantity: left, basis: left === null ? null : ('counted-down' as const) };
  return { ...desk, question: null, reel: isSame ? { ...reel, ...counted } : { ...reel, isFresh: true } };
}

/** A person says whether the label in hand is of the reel that runs there, or of a second reel with the same label. */
export function answerRunsHere(desk: Desk, isSecond: boolean): Desk {
  const { question } = desk;
  if (question?.ask !== 'runs-here') return desk;
  const next = { ...desk, question: null };
  return isSecond
    ? { ...next, reel: { ...question.reel, isSecond: true } }
    : { ...next, atSlot: true, oldSeen: true };
}

/** Codes that no list knows and that are no label: what was scanned stays on the desk, and the code is told. */
function takeUnknown(desk: Desk, codes: readonly string[], view: DeskView): Desk {
  const text = codes.join(' ').trim();
  if (isFullAddress(text)) return { ...desk, told: { tell: 'unknown-slot', slot: text } };
  const feederWanted = deskWells(desk, view).some(({ well, filled }) => well === 'feeder' && !filled);
  if (desk.slot !== null && feederWanted && /^[\w./-]{2,24}$/.test(text)) {
    const options = [{ is: 'feeder', feeder: text }] as const;
    return { ...desk, question: { ask: 'unlisted-feeder', text, options } };
  }
  return { ...desk, told: { tell: 'unknown-code', text, codes } };
}

function takeOldReel(desk: Desk, reel: ReelInHand, view: DeskView): Desk {
  const loaded = view.floor.slots.get(slotKey(view.line, desk.slot ?? ''))?.tapes ?? [];
  if (isOnSlot(reel, desk.slot ?? '', view)) return { ...desk, atSlot: true, oldSeen: true };
  const last = loaded.at(-1);
  return {
    ...desk,
    told: {
      tell: 'old-reel-differs',
      slot: desk.slot ?? '',
      found: reel.reel ?? reel.part ?? reel.supplierPart,
      loaded: last === undefined ? null : !hasOwnId(last.reel) ? last.part : last.reel,
      reel,
    },
  };
}

/** A person says that the reel which was scanned as the running one is what stands on the slot: it is checked there, as in a sweep. */
export function checkStanding(desk: Desk): Desk {
  const { told } = desk;
  if (told?.tell !== 'old-reel-differs') return desk;
  return { ...emptyDesk, mode: 'check', slot: told.slot, atSlot: true, reel: told.reel, via: desk.via };
}

/** What the setups of the lines in hand know, so that a bare code can be told. */
export function expectation({ floor, line, beside = [] }: DeskView) {
  const parts = new Set<string>();
  for (const each of [line, ...beside]) {
    for (const slot of floor.setups.get(floor.chosen.get(each) ?? '')?.slots ?? []) {
      parts.add(slot.part);
      for (const alternate of slot.alternates) parts.add(alternate);
    }
  }
  return { parts, supplierParts: new Set(floor.approvals.keys()) };
}

/** The reel that a text names: as the log writes it, or one of the plant's own ids as people type it. */
function idTyped(text: string, floor: FloorState): string | null {
  if (isReelKnown(floor, text)) return text;
  const own = readPackageId(text);
  return own !== null && own !== 'wrong' && isReelKnown(floor, own.id) ? own.id : null;
}

/** The questions that a person can answer, each once. */
function askable(questions: readonly LabelQuestion[]): readonly LabelQuestion[] {
  const keyOf = ({ text, candidates }: LabelQuestion) => JSON.stringify([text, candidates]);
  const keys = questions.map(keyOf);
  return questions.filter(
    (question, index) => question.candidates.length > 0 && keys.indexOf(keyOf(question)) === index,
  );
}

function reelInHand(
  reading: LabelReading,
  codes: readonly string[],
  via: Source,
  view: DeskView,
): ReelInHand {
  const bare = codes.length === 1 ? codes[0]?.trim() : undefined;
  const knownId = bare === undefined ? null : idTyped(bare, view.floor);
  const id = reading.reel ?? knownId;
  const known = id === null ? undefined : reelOf(view.floor, id);
  const isPieces = reading.unit === null || /^(pcs?|pce|ea|nar|st|stk|c62)$/i.test(reading.unit);
  const labelQuantity = isPieces ? reading.quantity : null;
  return {
    codes,
    via,
    reel: id,
    part: reading.part ?? known?.part ?? null,
    supplierPart: reading.supplierPart ?? known?.supplierPart ?? null,
    quantity: known?.count ?? labelQuantity,
    labelQuantity,
    basis: known?.count != null ? known.basis : labelQuantity === null ? null : 'label',
    lot: reading.lot ?? known?.lot ?? null,
    dateCode: reading.dateCode ?? known?.dateCode ?? null,
    expires: reading.expires,
    msl: reading.msl,
    questions: askable(reading.ambiguous),
  };
}
