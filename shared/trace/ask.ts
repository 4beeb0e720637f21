// The questions that quality asks: which panels carry this lot, and what is on this panel.

import { compareSlots } from '../floor/address.ts';
import type { Material } from '../floor/made-of.ts';
import type { Run } from '../floor/state.ts';
import { tallyOf } from '../floor/tally.ts';
import type { Side } from '../floor/vocabulary.ts';
import { compareText } from '../log/order.ts';
import { stretchesBeside } from './beside.ts';
import { guessedOf } from './boards.ts';
import { placesOf } from './finds.ts';
import { type Carried, carriedBy, idNow, lotOf, materialOf, otherLots } from './material.ts';
import { isVoid, latestTo, numberAt, panelPlace, type Span, toNumbers } from './order.ts';
import type { TraceQuestion } from './question.ts';
import type { Guess, Stretch, TraceIndex } from './stretches.ts';

/** A stretch as an answer: panels as numbers within the run, and as codes where panels were scanned. */
export interface TracedPlace {
  readonly line: string;
  readonly run: string;
  readonly product: string;
  readonly slot: string;
  readonly feeder: string | null;
  readonly reel: string | null;
  readonly part: string;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  readonly dateCode: string | null;
  /** Other packages whose parts are in it, by cuts and joins; absent where there are none. */
  readonly madeOf?: readonly string[] | undefined;
  /** Panels that surely carry what is asked for, but for one case in a million; null where there is none. */
  readonly sure: Span | null;
  /** Panels that may carry it; null where no panel was built while it was there. */
  readonly possible: Span | null;
  /** What these rest on that nobody has entered or measured. */
  readonly guessed: readonly Guess[];
  /** True where other lots lay loose with it: which of them a panel got nobody can tell. */
  readonly mixed?: boolean | undefined;
  /** Codes of the possible panels that were scanned, in order. */
  readonly serials: readonly string[];
  /** True while the tape is still on the line and the run goes on. */
  readonly goesOn: boolean;
  readonly entry: string;
  readonly who: string | null;
  readonly at: string;
}

/** A lot that is on a panel, surely or perhaps. */
export interface PanelLot {
  readonly lot: string | null;
  readonly reel: string | null;
  readonly supplierPart: string | null;
  /** Other packages whose parts are in it, by cuts and joins; absent where there are none. */
  readonly madeOf?: readonly string[] | undefined;
  readonly sure: boolean;
  /** True where other lots lay loose with it. */
  readonly mixed?: boolean | undefined;
}

/** What one panel carries from one building of it, slot by slot; two lots where the joint cannot be told. */
export interface PanelRun {
  readonly run: string;
  readonly line: string;
  readonly product: string;
  /** Null where the run's setup is not known. */
  readonly side: Side | null;
  readonly panel: number;
  readonly serial: string | null;
  readonly guessed: readonly Guess[];
  readonly slots: readonly {
    readonly slot: string;
    readonly part: string;
    readonly lots: readonly PanelLot[];
  }[];
}

/** A panel with all its runs, oldest first: both sides, and each time that it was built again. */
export interface TracedPanel extends PanelRun {
  readonly runs: readonly PanelRun[];
}

/** Where material was: by lot, reel, part, feeder, slot, person, run or time. Cost: linear in stretches. */
export function tracePlaces(index: TraceIndex, question: TraceQuestion): readonly TracedPlace[] {
  return found(index, carriedBy(index.state, question), (stretch, how) => toPlace(index, stretch, how));
}

/** A place, and what tells how many of its panels it gave parts to. */
export interface ServedPlace extends TracedPlace {
  /** Panels by the count alone, as if none lay between machine and count; undefined where its tape was joined, so that its end was elsewhere. */
  readonly counted: number | undefined;
  /** Parts that it held when it was put on; undefined where nobody counted them. */
  readonly held: number | undefined;
}

/** Where the material of some stretches was, run by run, and what it held; nothing is sure of one that carries it perhaps. Cost: linear in stretches. */
export function servedWhere(
  index: TraceIndex,
  carried: (stretch: Stretch) => Carried | null,
): readonly ServedPlace[] {
  return found(index, carried, (stretch, how) => {
    const run = index.state.runs.get(stretch.run);
    const counted = run && stretch.joined === null ? byCount(run, stretch) : undefined;
    return { ...toPlace(index, stretch, how), counted, held: stretch.held };
  });
}

function found<T extends TracedPlace>(
  index: TraceIndex,
  carried: (stretch: Stretch) => Carried | null,
  placeOf: (stretch: Stretch, how: Carried) => T,
): readonly T[] {
  return [...index.stretches, ...stretchesBeside(index.state)]
    .flatMap((stretch) => {
      const how = carried(stretch);
      return how === null ? [] : [placeOf(stretch, how)];
    })
    .filter((place) => place.possible !== null || !cameAfterEnd(index, place))
    .sort(
      (a, b) =>
        compareText(a.run, b.run) ||
        compareSlots(a.slot, b.slot) ||
        (a.possible?.first ?? 0) - (b.possible?.first ?? 0),
    );
}

/** True where panels to come may carry it. */
function goesOn(run: Run, { there, to }: Stretch): boolean {
  return there && run.phase !== 'ended' && (to === null || latestTo(run, to) > tallyOf(run));
}

/** True for a reel that came on when the run had ended: it concerns panels that are counted later, and none was. */
function cameAfterEnd(index: TraceIndex, place: TracedPlace): boolean {
  const run = index.state.runs.get(place.run);
  return run?.phase === 'ended' && Date.parse(place.at) > run.sinceMs;
}

/** The packages whose parts are in some material, where there are others. */
function madeOfIt(material: Material | null): Pick<TracedPlace, 'madeOf'> {
  return material === null || material.of.length === 0 ? {} : { madeOf: material.of };
}

function toPlace(index: TraceIndex, stretch: Stretch, how: Carried): TracedPlace {
  const counted = index.state.runs.get(stretch.run);
  const { sure, possible } = counted
    ? placesOf(index.state, counted, stretch)
    : { sure: null, possible: null };
  const { line, run, product, slot, feeder, part, supplierPart, dateCode } = stretch;
  const { entry, who, at } = stretch;
  const guessed = guessedOf(index.state, stretch);
  const material = materialOf(index.state, stretch);
  return {
    line,
    run,
    product,
    slot,
    feeder,
    reel: idNow(index.state, stretch),
    part,
    supplierPart,
    lot: lotOf(index.state, stretch, material),
    dateCode,
    ...madeOfIt(material),
    sure: counted && how === 'surely' ? toNumbers(counted, sure) : null,
    possible: counted ? toNumbers(counted, possible) : null,
    guessed,
    mixed: stretch.mixed === true,
    serials: counted && possible ? serialsBetween(index, counted, possible) : [],
    goesOn: counted !== undefined && goesOn(counted, stretch),
    entry,
    who,
    at,
  };
}

/** Panels counted between the entries that put it on and took it off. */
function byCount(run: Run, { from, to }: Stretch): number {
  const last = to === null ? tallyOf(run) : (to.at ?? tallyOf(run));
  return Math.max(0, numberAt(run, last) - numberAt(run, from.at ?? 0));
}

/** Codes of the panels at these places, in the order of counting. */
export function serialsBetween(index: TraceIndex, run: Run, places: Span): readonly string[] {
  const byPanel = index.serialByPanel.get(run.run);
  if (!byPanel) return [];
  return [...byPanel]
    .filter(([place]) => place >= places.first && place <= places.last && !isVoid(run, place))
    .sort((a, b) => a[0] - b[0])
    .map(([, serial]) => serial);
}

/** Where a panel was counted: each run and its place in the run's order, oldest first. `panel` as of `tracePanel`. */
function buildings(
  index: TraceIndex,
  panel: string,
  run: string | undefined,
): readonly (readonly [Run, number])[] {
  const found = (index.serials.get(panel) ?? []).flatMap((scanned) => {
    const counted = index.state.runs.get(scanned.run);
    const isMeant = run === undefined || scanned.run === run;
    return counted && isMeant && !isVoid(counted, scanned.panel) ? [[counted, scanned.panel] as const] : [];
  });
  if (found.length > 0) return found.sort(([a], [b]) => a.startedMs - b.startedMs);
  const counted = index.state.runs.get(run ?? onlyRun(index) ?? '');
  const place = counted && /^\d+$/.test(panel) ? panelPlace(counted, Number(panel)) : null;
  return counted && place !== null ? [[counted, place]] : [];
}

/**
 * What one panel carries, with all its runs; the newest of them stands first. `panel`: a scanned code, or a number within `run`; null
 * where no such panel was counted. With `run`: that run alone.
 */
export function tracePanel(index: TraceIndex, panel: string, run?: string): TracedPanel | null {
  const runs = buildings(index, panel, run).map(([counted, place]) => panelIn(index, counted, place));
  const newest = runs.at(-1);
  return newest ? { ...newest, runs } : null;
}

function panelIn(index: TraceIndex, run: Run, place: number): PanelRun {
  const bySlot = new Map<string, { part: string; lots: PanelLot[] }>();
  const guessed = new Set<Guess>();
  for (const stretch of [...index.stretches, ...stretchesBeside(index.state)]) {
    if (stretch.run !== run.run) continue;
    const { sure, possible } = placesOf(index.state, run, stretch);
    const isWithin = (places: Span | null) =>
      places !== null && place >= places.first && place <= places.last;
    if (!isWithin(possible)) continue;
    const there = bySlot.get(stretch.slot) ?? { part: stretch.part, lots: [] };
    there.lots.push(...lotsOf(index, stretch, isWithin(sure)));
    bySlot.set(stretch.slot, there);
    for (const each of guessedOf(index.state, stretch)) guessed.add(each);
  }
  return {
    run: run.run,
    line: run.line,
    product: run.product,
    side: index.state.setups.get(run.setup)?.side ?? null,
    panel: numberAt(run, place),
    serial: index.serialByPanel.get(run.run)?.get(place) ?? null,
    guessed: [...guessed].sort(),
    slots: [...bySlot]
      .sort((a, b) => compareSlots(a[0], b[0]))
      .map(([slot, { part, lots }]) => ({ slot, part, lots })),
  };
}

/** What a stretch brings to a panel: its own lot, and those of other lots that were joined with it though that was not to be done. */
function lotsOf(index: TraceIndex, stretch: Stretch, isSure: boolean): readonly PanelLot[] {
  const { state } = index;
  const { supplierPart } = stretch;
  const reel = idNow(state, stretch);
  const material = materialOf(state, stretch);
  const lot = lotOf(state, stretch, material);
  const mixed = stretch.mixed === true;
  const others = otherLots(state, stretch, material);
  const own = { lot, reel, supplierPart, ...madeOfIt(material), sure: isSure && others.length === 0 };
  return [{ ...own, mixed }, ...others.map((other) => ({ ...other, sure: false, mixed }))];
}

function onlyRun(index: TraceIndex): string | null {
  const [first, ...others] = index.state.runs.keys();
  return first !== undefined && others.length === 0 ? first : null;
}
