// May this reel go on this slot? Every rule is asked, so that the operator hears all that is wrong at once; the first reason
// is the one to act on. Method: a list of small rules over one question; no rule guesses, a fact that is missing is a reason.

import { compareSlots } from '../floor/address.ts';
import { blockOn } from '../floor/blocks.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { wantedOn } from '../floor/left.ts';
import { isOnLinePlace } from '../floor/place.ts';
import { type CartPlace, type FloorState, slotKey } from '../floor/state.ts';
import type { Verdict, VerifyAct } from '../floor/vocabulary.ts';
import { type ComparedBy, comparePartNumbers, type PartComparison } from '../labels/part-numbers.ts';
import { compareText } from '../log/order.ts';
import { type Reason, verdictOf } from './reasons.ts';

/** What the reel's label says, as far as the verdict needs it. */
export interface ReelFacts {
  /** The reel's own id, null where the label has none. */
  readonly reel: string | null;
  /** The site's part number. */
  readonly part: string | null;
  readonly supplierPart: string | null;
  /** Parts on it as far as anybody knows: counted, typed, or from the label. */
  readonly quantity: number | null;
  /** What the label itself says, null where it says nothing; absent where only one figure is known. */
  readonly labelQuantity?: number | null;
  readonly lot: string | null;
  /** `YYYY-MM-DD` after which the parts must not be used, null where the label says none. */
  readonly expires?: string | null;
  /** True where a person said that it is a second reel, though its label reads like that of the reel that runs there. */
  readonly isSecond?: boolean;
}

/** A bake that was too short: hours and degrees Celsius as told (null: not told), and the hours that the table wants (null: it gives none). */
export interface ShortBake {
  readonly hours: number;
  readonly celsius: number | null;
  readonly wanted: number | null;
}

/** What is asked. */
export interface VerifyQuestion {
  readonly act: VerifyAct;
  readonly line: string;
  readonly setup: string;
  readonly slot: string;
  /** The feeder's id, null where none was scanned. */
  readonly feeder: string | null;
  readonly reel: ReelFacts;
  /** Today in the plant, `YYYY-MM-DD`, for expiry. */
  readonly today: string;
  /** Seconds of floor life left and seconds until the reel is expected to run out; null where not known or not limited. */
  readonly floorLife?: {
    readonly leftSeconds: number;
    readonly neededSeconds: number | null;
    /** The last bake that was shorter than the table grants; it has reset nothing. */
    readonly shortBake?: ShortBake | null;
  } | null;
}

/** The answer, the reasons in order of importance, and the site part that the reel is taken for. */
export interface VerifyAnswer {
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
  readonly part: string | null;
}

const exactly: PartComparison = {
  ignoreCase: false,
  ignoreSpaces: false,
  ignoreDashes: false,
  packingSuffixes: [],
};

/** Answers the question from the floor's state. Pure; cost: a few look-ups, and one walk over the setup for a wrong part. */
export function verifyReel(state: FloorState, question: VerifyQuestion): VerifyAnswer {
  const reasons: Reason[] = [];
  const wanted = wantedOn(state, question.setup, question.slot);
  reasons.push(...slotReasons(state, question, wanted));
  let part = question.reel.part;
  if (wanted) {
    const judged = judgePart(state, question, wanted);
    part = judged.part;
    reasons.push(...judged.reasons);
    reasons.push(...feederReasons(state, question, wanted));
  }
  reasons.push(...reelReasons(state, question));
  const order: Readonly<Record<Verdict, number>> = { refused: 0, held: 1, accepted: 2 };
  const ranked = reasons
    .map((reason, index) => ({ reason, index, rank: order[verdictOf([reason])] }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map(({ reason }) => reason);
  return { verdict: verdictOf(ranked), reasons: ranked, part };
}

/** Slots of a setup that want a part (or take it as an alternate), in walking order. */
export function slotsWanting(state: FloorState, setup: string, part: string): readonly string[] {
  const slots = state.setups.get(setup)?.slots ?? [];
  return slots
    .filter((slot) => slot.part === part || slot.alternates.includes(part))
    .map((slot) => slot.slot)
    .sort(compareSlots);
}

/**
 * The site part that a reel stands for and whether any slot of the setup takes it, by the line's rules or by a lead's leave; null where the
 * label names no part that is known.
 */
export function wantsAnywhere(
  state: FloorState,
  line: string,
  setup: string,
  reel: Pick<ReelFacts, 'part' | 'supplierPart'>,
): { readonly part: string; readonly isWanted: boolean } | null {
  const slots = state.setups.get(setup)?.slots;
  if (slots === undefined) return null;
  const comparison = state.rules.get(line)?.comparison ?? exactly;
  // Some labels carry the site's number in the supplier's field.
  const parts = reel.part === null ? approvedParts(state, reel.supplierPart, comparison) : [reel.part];
  const [part] = parts;
  if (part === undefined) return null;
  const isWanted = slots.some((wanted) =>
    parts.some(
      (each) =>
        takes(wanted, each, comparison) !== null || alternateFor(state, setup, wanted, each).length > 0,
    ),
  );
  return { part, isWanted };
}

function slotReasons(state: FloorState, question: VerifyQuestion, wanted: SetupSlot | null): Reason[] {
  const { act, line, slot } = question;
  const there = state.slots.get(slotKey(line, slot));
  if (!wanted && !isOnLinePlace(state, line, slot)) return [{ code: 'unknown-slot', slot }];
  if (!wanted) return [{ code: 'slot-not-in-setup', slot }];
  if (act === 'load' && there) {
    const reel = there.tapes.at(-1);
    return [{ code: 'slot-loaded', slot, part: reel?.part ?? null, reel: shownReel(reel?.reel) }];
  }
  if (act !== 'load' && !there) return [{ code: 'slot-empty', slot }];
  return [];
}

/** Which site part the label stands for, and whether the slot takes it. */
function judgePart(
  state: FloorState,
  question: VerifyQuestion,
  wanted: SetupSlot,
): { part: string | null; reasons: Reason[] } {
  const { reel } = question;
  const comparison = state.rules.get(question.line)?.comparison ?? exactly;
  const bySupplier = approvedParts(state, reel.supplierPart, comparison);
  if (reel.part === null && reel.supplierPart === null) {
    return { part: null, reasons: [{ code: 'no-part', slot: question.slot, wanted: wanted.part }] };
  }
  if (reel.part === null) {
    if (bySupplier.length === 0) {
      // Some labels carry the site's number in the supplier's field; then it is compared as what it is.
      const direct = takes(wanted, reel.supplierPart ?? '', comparison);
      if (direct) return { part: direct.part, reasons: direct.reasons };
      return {
        part: null,
        reasons: [
          { code: 'supplier-part-not-approved', supplierPart: reel.supplierPart, wanted: wanted.part },
        ],
      };
    }
    const fitting = bySupplier.find((part) => takes(wanted, part, exactly) !== null);
    const part = fitting ?? bySupplier[0] ?? null;
    const taken = part === null ? null : takes(wanted, part, exactly);
    if (part !== null && taken) {
      const note: Reason = { code: 'by-supplier-part', supplierPart: reel.supplierPart, part };
      return { part: taken.part, reasons: [...taken.reasons, note] };
    }
    return { part, reasons: [wrongPart(state, question, wanted, part ?? '')] };
  }
  const taken = takes(wanted, reel.part, comparison);
  if (!taken) {
    const elsewhere = alternateFor(state, question.setup, wanted, reel.part);
    if (elsewhere.length > 0) {
      return {
        part: reel.part,
        reasons: [
          { code: 'alternate-not-approved', wanted: wanted.part, found: reel.part, approvedFor: elsewhere },
        ],
      };
    }
    return { part: reel.part, reasons: [wrongPart(state, question, wanted, reel.part)] };
  }
  const reasons = [...taken.reasons];
  if (bySupplier.length > 0 && !bySupplier.includes(taken.part)) {
    reasons.push({
      code: 'part-contradicts',
      part: reel.part,
      supplierPart: reel.supplierPart,
      approvedFor: [...bySupplier].sort(compareText),
    });
  }
  return { part: taken.part, reasons };
}

/** The site part that the slot takes a number for, with notes on what decided; null where it does not take it. */
function takes(
  wanted: SetupSlot,
  found: string,
  comparison: PartComparison,
): { part: string; reasons: Reason[] } | null {
  for (const candidate of [wanted.part, ...wanted.alternates]) {
    const by: ComparedBy | null = comparePartNumbers(candidate, found, comparison);
    if (by === null) continue;
    const reasons: Reason[] = [];
    if (candidate !== wanted.part)
      reasons.push({ code: 'by-alternate', wanted: wanted.part, found: candidate });
    if (by !== 'exact') reasons.push({ code: 'by-comparison', rule: by, wanted: candidate, found });
    return { part: candidate, reasons };
  }
  return null;
}

function approvedParts(
  state: FloorState,
  supplierPart: string | null,
  comparison: PartComparison,
): readonly string[] {
  if (supplierPart === null) return [];
  const exact = state.approvals.get(supplierPart);
  if (exact) return exact;
  for (const [known, parts] of state.approvals) {
    if (comparePartNumbers(known, supplierPart, comparison) !== null) return parts;
  }
  return [];
}

/** Products for which a part is an approved alternate of the wanted one, though not for this setup. */
function alternateFor(state: FloorState, setup: string, wanted: SetupSlot, found: string): readonly string[] {
  const products = new Set<string>();
  for (const other of state.setups.values()) {
    if (other.setup === setup) continue;
    for (const slot of other.slots) {
      const both = [slot.part, ...slot.alternates];
      if (both.includes(wanted.part) && both.includes(found)) products.add(other.product);
    }
  }
  return [...products].sort(compareText);
}

function wrongPart(state: FloorState, question: VerifyQuestion, wanted: SetupSlot, found: string): Reason {
  return {
    code: 'wrong-part',
    slot: question.slot,
    wanted: wanted.part,
    found,
    goesTo: slotsWanting(state, question.setup, found).filter((slot) => slot !== question.slot),
  };
}

function feederReasons(state: FloorState, question: VerifyQuestion, wanted: SetupSlot): Reason[] {
  const { feeder, line, slot, act } = question;
  if (feeder === null || act === 'splice') return [];
  const reasons: Reason[] = [];
  const known = state.feeders.get(feeder);
  if (!known && state.rules.get(line)?.feedersKnown) reasons.push({ code: 'feeder-unknown', feeder });
  if (known && wanted.tapeWidthMm !== null && known.tapeWidthMm !== wanted.tapeWidthMm) {
    reasons.push({ code: 'feeder-width', feeder, wanted: wanted.tapeWidthMm, found: known.tapeWidthMm });
  }
  if (
    known &&
    wanted.pitchMm !== null &&
    known.pitchesMm.length > 0 &&
    !known.pitchesMm.includes(wanted.pitchMm)
  ) {
    reasons.push({
      code: 'feeder-pitch',
      feeder,
      wanted: wanted.pitchMm,
      found: known.pitchesMm.join(' / '),
    });
  }
  for (const other of state.slots.values()) {
    if (other.feeder === feeder && !(other.line === line && other.slot === slot)) {
      reasons.push({ code: 'feeder-elsewhere', feeder, slot: other.slot, line: other.line });
    }
  }
  if (act === 'load') {
    const carried = onOtherPlaces(state, line, slot).filter(({ place }) => place.feeder === feeder);
    reasons.push(
      ...carried.map(
        ({ cart, place }): Reason => ({ code: 'feeder-on-cart', feeder, cart, slot: place.slot }),
      ),
    );
  }
  return reasons;
}

/** What carts carry for other slots than the one asked for; a place for that slot is the cart's load done by hand. */
function onOtherPlaces(state: FloorState, line: string, slot: string): { cart: string; place: CartPlace }[] {
  const asked = slotKey(line, slot);
  return [...state.carts].flatMap(([cart, places]) =>
    [...places.values()]
      .filter((place) => slotKey(place.line, place.slot) !== asked)
      .map((place) => ({ cart, place })),
  );
}

function reelReasons(state: FloorState, question: VerifyQuestion): Reason[] {
  const { reel, line, slot, act } = question;
  const reasons: Reason[] = [];
  const known = reel.reel === null ? undefined : state.reels.get(reel.reel);
  const block = blockOn(state, reel);
  if (block !== null) reasons.push({ code: 'reel-blocked', reason: state.blocks.get(block)?.reason ?? '' });
  const there = state.slots.get(slotKey(line, slot));
  const loaded = there?.tapes.find((tape) => sameReel(tape, reel));
  if (act === 'sweep') {
    if (there && !loaded) {
      reasons.push({
        code: 'not-the-loaded-reel',
        slot,
        reel: reel.reel,
        loaded: shownReel(there.tapes.at(-1)?.reel),
      });
    }
  } else {
    if (known?.at) {
      const here = known.at.line === line && known.at.slot === slot;
      if (here) reasons.push({ code: 'reel-here', reel: known.reel, slot });
      else
        reasons.push({ code: 'reel-elsewhere', reel: known.reel, slot: known.at.slot, line: known.at.line });
    }
    if (act === 'load' && reel.reel !== null) {
      const carried = onOtherPlaces(state, line, slot).filter(({ place }) => place.reel === reel.reel);
      reasons.push(
        ...carried.map(
          ({ cart, place }): Reason => ({ code: 'reel-on-cart', reel: reel.reel, cart, slot: place.slot }),
        ),
      );
    }
    if (reel.quantity === null && (known?.count ?? null) === null) reasons.push({ code: 'no-quantity' });
    const { quantity, labelQuantity } = reel;
    if (quantity !== null && labelQuantity !== undefined && quantity !== labelQuantity)
      reasons.push({ code: 'quantity-corrected', label: labelQuantity, quantity });
    if (act === 'splice' && reel.isSecond) reasons.push({ code: 'same-label', slot });
    const last = there?.tapes.at(-1);
    if (act === 'splice' && last?.lot && reel.lot && last.lot !== reel.lot) {
      reasons.push({ code: 'mixed-lots', from: last.lot, to: reel.lot });
    }
  }
  // What stood on the slot with its date passed was let there by a lead: a sweep need not call for that again, nor for a floor life
  // that is short: the line says so all along.
  const since = act === 'sweep' && loaded ? new Date(loaded.atMs).toISOString().slice(0, 10) : null;
  const decided = reel.expires && since !== null && reel.expires < since;
  if (reel.expires && reel.expires < question.today && !decided)
    reasons.push({ code: 'expired', expires: reel.expires });
  const life = question.floorLife ?? null;
  // A lead decides whether such a bake counts, also where the floor life was over before it.
  if (act !== 'sweep' && life?.shortBake)
    reasons.push({ code: 'bake-short', leftSeconds: life.leftSeconds, ...life.shortBake });
  else if (life && life.leftSeconds <= 0) reasons.push({ code: 'floor-life-over' });
  else if (act !== 'sweep' && life && life.neededSeconds !== null && life.leftSeconds < life.neededSeconds) {
    reasons.push({
      code: 'floor-life-short',
      leftSeconds: life.leftSeconds,
      neededSeconds: life.neededSeconds,
    });
  }
  return reasons;
}

/** A reel without an id of its own is the same where part and lot are. */
function sameReel(
  tape: {
    readonly reel: string;
    readonly part: string;
    readonly supplierPart: string | null;
    readonly lot: string | null;
  },
  reel: ReelFacts,
): boolean {
  if (reel.reel !== null && !tape.reel.startsWith('~')) return tape.reel === reel.reel;
  const samePart = reel.part === null ? tape.supplierPart === reel.supplierPart : tape.part === reel.part;
  return samePart && (reel.lot === null || tape.lot === null || tape.lot === reel.lot);
}

function shownReel(reel: string | undefined): string | null {
  return reel === undefined || reel.startsWith('~') ? null : reel;
}
