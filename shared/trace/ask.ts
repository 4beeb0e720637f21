// The questions that quality asks: which panels carry this lot, and what is on this panel.

import { compareSlots } from '../floor/address.ts';
import { compareText } from '../log/order.ts';
import type { Stretch, TraceIndex } from './stretches.ts';

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
  /** Panels that surely carry it; null where there is none. */
  readonly sure: { readonly first: number; readonly last: number } | null;
  /** Panels that may carry it; null where no panel was built while it was there. */
  readonly possible: { readonly first: number; readonly last: number } | null;
  /** Codes of the possible panels that were scanned, in order. */
  readonly serials: readonly string[];
  /** True while the tape is still on the line and the run goes on. */
  readonly goesOn: boolean;
  readonly entry: string;
  readonly who: string | null;
  readonly at: string;
}

/** What is on one panel, slot by slot; two lots where the joint cannot be told. */
export interface TracedPanel {
  readonly run: string;
  readonly line: string;
  readonly product: string;
  readonly panel: number;
  readonly serial: string | null;
  readonly slots: readonly {
    readonly slot: string;
    readonly part: string;
    readonly lots: readonly {
      readonly lot: string | null;
      readonly reel: string | null;
      readonly supplierPart: string | null;
      readonly sure: boolean;
    }[];
  }[];
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
  return index.stretches
    .filter(isAskedFor(question))
    .map((stretch) => toPlace(index, stretch))
    .sort(
      (a, b) =>
        compareText(a.run, b.run) ||
        compareSlots(a.slot, b.slot) ||
        (a.possible?.first ?? 0) - (b.possible?.first ?? 0),
    );
}

function toPlace(index: TraceIndex, stretch: Stretch): TracedPlace {
  const done = index.state.runs.get(stretch.run)?.done ?? 0;
  const to = stretch.to ?? { sure: done, possible: done };
  const possible = span(stretch.from.possible, Math.min(to.possible, done));
  const { line, run, product, slot, feeder, reel, part, supplierPart, lot, dateCode, entry, who, at } =
    stretch;
  return {
    ...{ line, run, product, slot, feeder, reel, part, supplierPart, lot, dateCode },
    sure: span(stretch.from.sure, Math.min(to.sure, done)),
    possible,
    serials: possible ? serialsBetween(index, run, possible) : [],
    goesOn: stretch.to === null && index.state.runs.get(run)?.phase !== 'ended',
    ...{ entry, who, at },
  };
}

function span(first: number, last: number): { first: number; last: number } | null {
  return first <= last ? { first, last } : null;
}

function serialsBetween(
  index: TraceIndex,
  run: string,
  panels: { first: number; last: number },
): readonly string[] {
  const byPanel = index.serialByPanel.get(run);
  if (!byPanel) return [];
  return [...byPanel]
    .filter(([panel]) => panel >= panels.first && panel <= panels.last)
    .sort((a, b) => a[0] - b[0])
    .map(([, serial]) => serial);
}

/** What one panel carries. `panel`: a scanned code, or a number within `run`; null where no such panel was counted. */
export function tracePanel(index: TraceIndex, panel: string, run?: string): TracedPanel | null {
  const scanned = index.serials.get(panel);
  const number = scanned ? scanned.panel : /^\d+$/.test(panel) ? Number(panel) : null;
  const id = scanned?.run ?? run ?? onlyRun(index);
  const built = id === null ? undefined : index.state.runs.get(id);
  if (number === null || !built || number < 1 || number > built.done) return null;
  const bySlot = new Map<string, { part: string; lots: TracedPanel['slots'][number]['lots'][number][] }>();
  for (const stretch of index.stretches) {
    if (stretch.run !== built.run) continue;
    const to = stretch.to ?? { sure: built.done, possible: built.done };
    if (number < stretch.from.possible || number > to.possible) continue;
    const sure = number >= stretch.from.sure && number <= to.sure;
    const there = bySlot.get(stretch.slot) ?? { part: stretch.part, lots: [] };
    there.lots.push({ lot: stretch.lot, reel: stretch.reel, supplierPart: stretch.supplierPart, sure });
    bySlot.set(stretch.slot, there);
  }
  return {
    ...{ run: built.run, line: built.line, product: built.product, panel: number },
    serial: scanned?.serial ?? index.serialByPanel.get(built.run)?.get(number) ?? null,
    slots: [...bySlot]
      .sort((a, b) => compareSlots(a[0], b[0]))
      .map(([slot, { part, lots }]) => ({ slot, part, lots })),
  };
}

function onlyRun(index: TraceIndex): string | null {
  const [first, ...others] = index.state.runs.keys();
  return first !== undefined && others.length === 0 ? first : null;
}
