// Does this reel serve this slot? The one answer that the verdict, the slots of a line and both pick lists are built on.
// Method: three small questions, each with its reasons: is it the part (the site's own number, an alternate of this setup, a part of an
// approved maker), may the material be used at all (blocks), and is it still good (expiry by the plant's own day, floor life as handed in).
// Which makers are approved says the setup's own list (makers.ts).
// Refused: each list comparing part numbers of its own; they sent people for blocked reels and past an approved alternate.

import { type ComparedBy, comparePartNumbers, type PartComparison } from '../labels/part-numbers.ts';
import { compareText } from '../log/order.ts';
import { compareSlots } from './address.ts';
import { dateCodeReasons } from './age-limit.ts';
import { blockOn } from './blocks.ts';
import { makerDoubt, notListed } from './fit-makers.ts';
import type { SetupSlot } from './kinds.ts';
import { isApprovedMaker, partsOfMaker } from './makers.ts';
import type { FloorState } from './state.ts';
import type { Verdict } from './vocabulary.ts';

/** Every reason of this answer and what it makes of it; an `accepted` one is a note. */
export const fitVerdicts = {
  'no-part': 'refused',
  'wrong-part': 'refused',
  'reel-blocked': 'refused',
  'floor-life-over': 'refused',
  'part-contradicts': 'held',
  'alternate-not-approved': 'held',
  'supplier-part-not-approved': 'held',
  'maker-not-listed': 'held',
  expired: 'held',
  'date-code-old': 'held',
  'date-code-unknown': 'held',
  'floor-life-short': 'held',
  'bake-short': 'held',
  'bake-hours-over': 'held',
  'reel-gone': 'held',
  'label-time-missing': 'refused',
  'by-alternate': 'accepted',
  'by-supplier-part': 'accepted',
  'by-comparison': 'accepted',
} as const satisfies Record<string, Verdict>;

export type FitCode = keyof typeof fitVerdicts;

/** A reason with the facts that its words need. */
export interface FitReason {
  readonly code: FitCode;
  readonly [fact: string]: string | number | boolean | null | readonly string[];
}

/** What is known of a reel, from its label or from the log. */
export interface FitReel {
  readonly reel: string | null;
  /** The site's part number. */
  readonly part: string | null;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  /** `YYYY-MM-DD` after which the parts must not be used; null or absent where nobody knows. */
  readonly expires?: string | null;
  /** As printed; null or absent where nobody knows. */
  readonly dateCode?: string | null;
}

/**
 * A bake that was too short: hours and degrees Celsius as told (null: not told), the hours that the table wants (null: it gives none), and on
 * what those rest: the plant's own copy, a published one, or memory.
 */
export interface ShortBake {
  readonly hours: number;
  readonly celsius: number | null;
  readonly wanted: number | null;
  readonly source?: 'own' | 'copy' | 'memory' | null;
}

/** Seconds of floor life left (null: no limit in this air), and seconds that the reel is to stand open on its slot; null where not known. */
export interface FitLife {
  readonly leftSeconds: number | null;
  readonly neededSeconds: number | null;
  /** The last bake that was shorter than the table grants; it has reset nothing. */
  readonly shortBake?: ShortBake | null;
  /** Hours above 90 °C in all, where they are more than `most`; null or absent where they are not. */
  readonly hotBakes?: { readonly hours: number; readonly most: number } | null;
  /** True where the level's life stands on the label alone and nobody entered it. */
  readonly wantsLabelTime?: boolean;
}

/** A slot of a setup, and how its line compares part numbers. */
export interface FitSlot {
  readonly line: string;
  readonly setup: string;
  readonly wanted: SetupSlot;
}

/** What is asked of the reel's age. */
export interface FitAge {
  /** The plant's own day, `YYYY-MM-DD`; null: expiry is not asked. */
  readonly today: string | null;
  /** Null where the reel's time out of the bag has no limit. */
  readonly floorLife: FitLife | null;
  /** The day since which the reel stands on the slot already, null where that is not known; absent for a reel that comes. */
  readonly standsSince?: string | null;
}

/** Whether the slot takes the part, as which site part, and why or why not. */
export interface PartFit {
  readonly takes: boolean;
  readonly part: string | null;
  readonly reasons: readonly FitReason[];
}

/** The whole answer. */
export interface Fit extends PartFit {
  readonly verdict: Verdict;
}

const exactly: PartComparison = {
  ignoreCase: false,
  ignoreSpaces: false,
  ignoreDashes: false,
  packingSuffixes: [],
};

/** Does this reel serve this slot? `accepted`: as it is; `held`: a lead decides; `refused`: not at all. */
export function fits(state: FloorState, slot: FitSlot, reel: FitReel, age: FitAge): Fit {
  const part = partFits(state, slot, reel);
  const { today, standsSince } = age;
  const stands = standsSince === undefined ? {} : { standsSince };
  const dated =
    today === null || part.part === null
      ? []
      : dateCodeReasons(state, { line: slot.line, part: part.part }, reel, { today, ...stands });
  const blocked = blockReasons(state, reel, part.part);
  const reasons = [...part.reasons, ...blocked, ...ageReasons(reel, age), ...dated];
  return { ...part, reasons, verdict: fitVerdict(reasons) };
}

/** What reasons add up to: accepted where none speaks against. */
export function fitVerdict(reasons: readonly FitReason[]): Verdict {
  const each = reasons.map(({ code }): Verdict => fitVerdicts[code]);
  if (each.includes('refused')) return 'refused';
  return each.includes('held') ? 'held' : 'accepted';
}

/** Is it the part? The site part that the reel stands for, and whether the slot takes it. */
export function partFits(state: FloorState, slot: FitSlot, reel: FitReel): PartFit {
  return takesLabel(state, slot, reel) ?? { takes: false, ...whyNotTaken(state, slot, reel) };
}

/** May the material be used at all? The block that it falls under as labelled, or as the site part that it is taken for. */
export function blockReasons(
  state: FloorState,
  reel: Pick<FitReel, 'reel' | 'lot' | 'part'>,
  takenFor: string | null = null,
): readonly FitReason[] {
  if (state.blocks.size === 0) return [];
  const { reel: id, lot } = reel;
  const block =
    blockOn(state, reel) ?? (takenFor === null ? null : blockOn(state, { reel: id, lot, part: takenFor }));
  return block === null ? [] : [{ code: 'reel-blocked', reason: state.blocks.get(block)?.reason ?? '' }];
}

/**
 * Is it still good? Expiry and floor life. What stands on its slot with its date passed was let there by a lead, so that only a date
 * that passed since counts; nor is it asked again whether its floor life will last, since the line says so all along.
 */
export function ageReasons(reel: Pick<FitReel, 'expires'>, age: FitAge): readonly FitReason[] {
  const { today, floorLife: life, standsSince } = age;
  const { expires } = reel;
  const isComing = standsSince === undefined;
  const reasons: FitReason[] = [];
  const isDecided = expires && standsSince && expires < standsSince;
  if (expires && today !== null && expires < today && !isDecided) reasons.push({ code: 'expired', expires });
  if (life === null) return reasons;
  const { leftSeconds, neededSeconds, shortBake, hotBakes, wantsLabelTime } = life;
  if (isComing && hotBakes) reasons.push({ code: 'bake-hours-over', ...hotBakes });
  if (leftSeconds === null) return reasons;
  // A lead decides whether such a bake counts, also where the floor life was over before it.
  if (isComing && shortBake) reasons.push({ code: 'bake-short', leftSeconds, ...shortBake });
  else if (wantsLabelTime && leftSeconds <= 0) reasons.push({ code: 'label-time-missing' });
  else if (leftSeconds <= 0) reasons.push({ code: 'floor-life-over' });
  else if (isComing && neededSeconds !== null && leftSeconds < neededSeconds)
    reasons.push({ code: 'floor-life-short', leftSeconds, neededSeconds });
  return reasons;
}

/** The site part as which a slot takes a part number: the part itself or an alternate, by its line's comparison; null where it does not. */
export function takenAs(state: FloorState, line: string, wanted: SetupSlot, part: string): string | null {
  return takes(wanted, part, comparisonOf(state, line))?.part ?? null;
}

/** True where a line's comparison takes two part numbers for one. */
export function isSamePart(state: FloorState, line: string, one: string, other: string): boolean {
  return comparePartNumbers(one, other, comparisonOf(state, line)) !== null;
}

/** Slots of a setup that want a part (or take it as an alternate), in walking order. */
export function slotsWanting(state: FloorState, setup: string, part: string): readonly string[] {
  const slots = state.setups.get(setup)?.slots ?? [];
  return slots
    .filter((slot) => takes(slot, part, exactly) !== null)
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
  reel: Pick<FitReel, 'part' | 'supplierPart'>,
): { readonly part: string; readonly isWanted: boolean } | null {
  const slots = state.setups.get(setup)?.slots;
  if (slots === undefined) return null;
  const comparison = comparisonOf(state, line);
  // Some labels carry the site's number in the supplier's field.
  const parts = reel.part === null ? partsOfMaker(state, reel.supplierPart, comparison) : [reel.part];
  const [part] = parts;
  if (part === undefined) return null;
  const { supplierPart } = reel;
  const isListed = (wanted: SetupSlot) =>
    reel.part === null &&
    supplierPart !== null &&
    [wanted.part, ...wanted.alternates].some((each) =>
      isApprovedMaker(state, setup, { part: each, supplierPart }, comparison),
    );
  const isWanted = slots.some(
    (wanted) =>
      isListed(wanted) ||
      parts.some(
        (each) =>
          takes(wanted, each, comparison) !== null || alternateFor(state, setup, wanted, each).length > 0,
      ),
  );
  return { part, isWanted };
}

/** How a line compares part numbers: to the very same characters where nobody ruled. */
export function comparisonOf(state: FloorState, line: string): PartComparison {
  return state.rules.get(line)?.comparison ?? exactly;
}

/** The answer where the slot takes the part, with notes on what decided; null where it does not. */
export function takesLabel(state: FloorState, slot: FitSlot, reel: FitReel): PartFit | null {
  const { wanted } = slot;
  const comparison = comparisonOf(state, slot.line);
  if (reel.part === null) return takesMaker(state, slot, reel.supplierPart);
  const taken = takes(wanted, reel.part, comparison);
  if (!taken) return null;
  const also = reel.supplierPart === null ? null : takes(wanted, reel.supplierPart, comparison);
  const label = { part: taken.part, supplierPart: reel.supplierPart, printed: reel.part };
  const doubt = makerDoubt(state, { setup: slot.setup, comparison }, label, also?.part ?? null);
  return {
    takes: true,
    part: taken.part,
    reasons: doubt === null ? taken.reasons : [...taken.reasons, doubt],
  };
}

/** The answer for a label that carries a maker's number alone. */
function takesMaker(state: FloorState, slot: FitSlot, supplierPart: string | null): PartFit | null {
  if (supplierPart === null) return null;
  const { wanted, setup } = slot;
  const comparison = comparisonOf(state, slot.line);
  const candidates = [wanted.part, ...wanted.alternates];
  const approved = candidates.find((part) =>
    isApprovedMaker(state, setup, { part, supplierPart }, comparison),
  );
  const standsFor = partsOfMaker(state, supplierPart, comparison);
  const part = approved ?? candidates.find((each) => standsFor.includes(each));
  if (part === undefined) {
    // Some labels carry the site's number in the supplier's field; then it is compared as what it is.
    const direct = standsFor.length > 0 ? null : takes(wanted, supplierPart, comparison);
    return direct && { takes: true, ...direct };
  }
  const note: FitReason =
    approved === undefined
      ? notListed(state, { setup, comparison }, { part, supplierPart })
      : { code: 'by-supplier-part', supplierPart, part };
  return { takes: true, part, reasons: [...(takes(wanted, part, exactly)?.reasons ?? []), note] };
}

/** Why a slot does not take the part, and what the label stands for then. */
function whyNotTaken(state: FloorState, slot: FitSlot, reel: FitReel): Omit<PartFit, 'takes'> {
  const { setup, wanted } = slot;
  const { part, supplierPart } = reel;
  if (part === null && supplierPart === null)
    return { part: null, reasons: [{ code: 'no-part', slot: wanted.slot, wanted: wanted.part }] };
  if (part === null) {
    const [known] = partsOfMaker(state, supplierPart, comparisonOf(state, slot.line));
    if (known !== undefined) return { part: known, reasons: [wrongPart(state, slot, known)] };
    return {
      part: null,
      reasons: [{ code: 'supplier-part-not-approved', supplierPart, wanted: wanted.part }],
    };
  }
  const approvedFor = alternateFor(state, setup, wanted, part);
  if (approvedFor.length === 0) return { part, reasons: [wrongPart(state, slot, part)] };
  return {
    part,
    reasons: [{ code: 'alternate-not-approved', wanted: wanted.part, found: part, approvedFor }],
  };
}

function wrongPart(state: FloorState, { setup, wanted }: FitSlot, found: string): FitReason {
  return {
    code: 'wrong-part',
    slot: wanted.slot,
    wanted: wanted.part,
    found,
    goesTo: slotsWanting(state, setup, found).filter((slot) => slot !== wanted.slot),
  };
}

/** The site part that the slot takes a number for, with notes on what decided; null where it does not take it. */
function takes(
  wanted: SetupSlot,
  found: string,
  comparison: PartComparison,
): { readonly part: string; readonly reasons: readonly FitReason[] } | null {
  for (const candidate of [wanted.part, ...wanted.alternates]) {
    const by: ComparedBy | null = comparePartNumbers(candidate, found, comparison);
    if (by === null) continue;
    const reasons: FitReason[] = [];
    if (candidate !== wanted.part)
      reasons.push({ code: 'by-alternate', wanted: wanted.part, found: candidate });
    if (by !== 'exact') reasons.push({ code: 'by-comparison', rule: by, wanted: candidate, found });
    return { part: candidate, reasons };
  }
  return null;
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
