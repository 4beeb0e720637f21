// The questions that quality asks: which panels carry this lot, and what is on this panel.

import { compareSlots } from '../floor/address.ts';
import type { Run } from '../floor/state.ts';
import { tallyOf } from '../floor/tally.ts';
import type { Side } from '../floor/vocabulary.ts';
import { compareText } from '../log/order.ts';
import { stretchesBeside } from './beside.ts';
import { guessedOf } from './boards.ts';
import { placesOf } from './finds.ts';
import { isVoid, latestTo, numberAt, panelPlace, type Span, toNumbers } from './order.ts';
import type { Guess, Stretch, TraceIndex } from './stretches.ts';

/** Which stretches are asked for; every field given must fit. */
export interface TraceQuestion {
  readonly lot?: string;
  readonly reel?: string;
  readonly part?: string;
  readonly feeder?: string;
  readonly slot?: string;
  readonly who?: string;
  readonly run?: string;
  /** Moments, ISO 8601 with offset: stretches that began within them. */
  readonly from?: string;
  readonly to?: string;
}

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
  /** Panels that surely carry it, but for one case in a million; null where there is none. */
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
    readonly lots: readonly {
      readonly lot: string | null;
      readonly reel: string | null;
      readonly supplierPart: string | null;
      readonly sure: boolean;
      /** True where other lots lay loose with it. */
      readonly mixed?: boolean | undefined;
    }[];
  }[];
}

/** A panel with all its runs, oldest first: both sides, and each time that it was built again. */
export interface TracedPanel extends PanelRun {
  readonly runs: readonly PanelRun[];
}

/**
 * A lot, reel, part, feeder or slot as it is looked for: a person types it in any letter case, and labels of one maker differ in it too.
 * Marks and blanks within stay: they may tell two lots apart.
 */
export function asAsked(text: string): string {
  return text.normalize('NFC').trim().toLowerCase();
}

/** Facts of a stretch that are looked for in any letter case. */
export const askedInAnyCase = ['lot', 'reel', 'part', 'feeder', 'slot'] as const;

/** Which stretches a question asks for: every field given must fit, and the moment at which they began. */
export function isAskedFor(question: TraceQuestion): (stretch: Stretch) => boolean {
  const fromMs = question.from === undefined ? Number.NEGATIVE_INFINITY : Date.parse(question.from);
  const toMs = question.to === undefined ? Number.POSITIVE_INFINITY : Date.parse(question.to);
  const inAnyCase = askedInAnyCase.flatMap((name) => {
    const value = question[name];
    return value === undefined ? [] : [[name, asAsked(value)] as const];
  });
  const exact = (['who', 'run'] as const).filter((name) => question[name] !== undefined);
  return (stretch) => {
    if (!exact.every((name) => stretch[name] === question[name])) return false;
    const isOther = inAnyCase.some(([name, value]) => {
      const found = stretch[name];
      return found === null || asAsked(found) !== value;
    });
    if (isOther) return false;
    const atMs = Date.parse(stretch.at);
    return atMs >= fromMs && atMs <= toMs;
  };
}

/** Where material was: by lot, reel, part, feeder, slot, person, run or time. Cost: linear in stretches. */
export function tracePlaces(index: TraceIndex, question: TraceQuestion): readonly TracedPlace[] {
  return placesWhere(index, isAskedFor(question));
}

/** Where the material of some stretches was, run by run. Cost: linear in stretches. */
export function placesWhere(
  index: TraceIndex,
  isAsked: (stretch: Stretch) => boolean,
): readonly TracedPlace[] {
  return [...index.stretches, ...stretchesBeside(index.state)]
    .filter(isAsked)
    .map((stretch) => toPlace(index, stretch))
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

function toPlace(index: TraceIndex, stretch: Stretch): TracedPlace {
  const counted = index.state.runs.get(stretch.run);
  const { sure, possible } = counted
    ? placesOf(index.state, counted, stretch)
    : { sure: null, possible: null };
  const { line, run, product, slot, feeder, reel, part, supplierPart, lot, dateCode } = stretch;
  const { entry, who, at } = stretch;
  const guessed = guessedOf(index.state, stretch);
  return {
    line,
    run,
    product,
    slot,
    feeder,
    reel,
    part,
    supplierPart,
    lot,
    dateCode,
    sure: counted ? toNumbers(counted, sure) : null,
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
  const bySlot = new Map<string, { part: string; lots: PanelRun['slots'][number]['lots'][number][] }>();
  const guessed = new Set<Guess>();
  for (const stretch of [...index.stretches, ...stretchesBeside(index.state)]) {
    if (stretch.run !== run.run) continue;
    const { sure, possible } = placesOf(index.state, run, stretch);
    const isWithin = (places: Span | null) =>
      places !== null && place >= places.first && place <= places.last;
    if (!isWithin(possible)) continue;
    const there = bySlot.get(stretch.slot) ?? { part: stretch.part, lots: [] };
    const { lot, reel, supplierPart } = stretch;
    there.lots.push({ lot, reel, supplierPart, sure: isWithin(sure), mixed: stretch.mixed === true });
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

function onlyRun(index: TraceIndex): string | null {
  const [first, ...others] = index.state.runs.keys();
  return first !== undefined && others.length === 0 ? first : null;
}
