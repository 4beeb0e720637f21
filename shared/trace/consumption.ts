// What did a run take out of the store? Part by part and reel by reel: parts placed, parts on scrapped panels, parts that feeders lost.
// Method: the panels that each reel served (stretches.ts) times what a panel takes. Where two reels may have served the same panels each has a share of
// them, so that their sum is what was placed, and none more than it held when it was put on. Boards skipped are taken off by the run's own share.
// Losses are those that counted reels showed, told in the run in which the count was made, of lanes in the newest that took from the slot. Refused: to
// spread losses over runs by guess; nobody saw in which of them a part fell.

import { feedersOf } from '../floor/lanes.ts';
import { shownOn } from '../floor/remaining.ts';
import type { FloorState, Run } from '../floor/state.ts';
import { perPanelOf, wantedOn } from '../floor/wanted.ts';
import { compareText } from '../log/order.ts';
import { type ServedPlace, servedWhere } from './ask.ts';
import type { Span } from './order.ts';
import type { TraceIndex } from './stretches.ts';

/** What a row counts: parts placed, parts that are on scrapped panels (placed too), parts that a feeder lost. */
export const consumptionKinds = ['placed', 'scrapped', 'lost'] as const;
export type ConsumptionKind = (typeof consumptionKinds)[number];

/** One row of a run's consumption. */
export interface Consumption {
  readonly kind: ConsumptionKind;
  readonly line: string;
  readonly run: string;
  readonly product: string;
  readonly slot: string;
  readonly part: string;
  readonly reel: string | null;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  /** Parts, not rounded; null where slots are used in turn and no count says which placed how many. */
  readonly parts: number | null;
  /** Parts at least and at most; null where `parts` is. */
  readonly least: number | null;
  readonly most: number | null;
}

/** Which runs: of a line, going on or ended from a moment on (ms since 1970), whenever they began; every one where neither is said. */
export interface ConsumptionQuestion {
  readonly line?: string | null;
  readonly fromMs?: number | null;
}

const panelsIn = (span: Span | null, done: number): number =>
  span === null ? 0 : Math.max(0, Math.min(span.last, done) - span.first + 1);

/** The share of a run's boards that were placed on; 1 where nobody ever said that one was skipped. */
function shareBuilt(state: FloorState, run: Run): number {
  const boards = state.setups.get(run.setup)?.boardsPerPanel ?? 1;
  const { skips } = run;
  return skips.panels === 0 ? 1 : 1 - skips.boards / (skips.panels * boards);
}

/** A reel on a slot with the panels that it surely and perhaps served, of those counted. */
interface Served {
  readonly place: ServedPlace;
  readonly sure: number;
  readonly most: number;
}

/** Panels that a reel is taken to have served where nothing else is known: by the count where nobody entered what lies in the line, else the middle. */
function likely({ place, sure, most }: Served): number {
  const byCount = place.guessed.includes('in-line') ? place.counted : undefined;
  return Math.min(most, Math.max(sure, byCount ?? (sure + most) / 2));
}

/**
 * Panels that each reel of one slot is taken to have served, within what it surely and perhaps did: all that it may have, or, where more than one may
 * have, so that their sum is right.
 */
function panelsServed(reels: readonly Served[], done: number): readonly number[] {
  const all = reels.reduce((sum, { most }) => sum + most, 0);
  if (all <= done) return reels.map(({ most }) => most);
  const first = reels.map(likely);
  const over = first.reduce((total, each) => total + each, 0) - done;
  const room = reels.map(({ sure, most }, at) =>
    over > 0 ? (first[at] ?? 0) - sure : most - (first[at] ?? 0),
  );
  const free = room.reduce((total, each) => total + each, 0);
  const share = free === 0 ? 0 : Math.min(1, Math.abs(over) / free);
  return first.map((each, at) => each - Math.sign(over) * share * (room[at] ?? 0));
}

function placedRows(state: FloorState, run: Run, places: readonly ServedPlace[]): readonly Consumption[] {
  const bySlot = new Map<string, Served[]>();
  for (const place of places) {
    const possible = panelsIn(place.possible, run.done);
    const each = perPanelOf(state, run.setup, place.slot) * shareBuilt(state, run);
    if (possible === 0) continue;
    const sure = panelsIn(place.sure, run.done);
    // A package gives no more than it held.
    const held = place.held === undefined || each === 0 ? possible : place.held / each;
    const served = { place, most: Math.max(sure, Math.min(possible, held)), sure };
    bySlot.set(place.slot, [...(bySlot.get(place.slot) ?? []), served]);
  }
  return [...bySlot].flatMap(([slot, reels]): readonly Consumption[] => {
    const wanted = wantedOn(state, run.setup, slot);
    if (wanted === null || wanted.perPanel === 0) return [];
    const each = wanted.perPanel * shareBuilt(state, run);
    const panels = panelsServed(reels, run.done);
    return reels.map(({ place, sure, most }, at): Consumption => {
      const { line, product, part, reel, supplierPart, lot } = place;
      const row = {
        kind: 'placed',
        line,
        run: run.run,
        product,
        slot,
        part,
        reel,
        supplierPart,
        lot,
      } as const;
      return wanted.turn === undefined
        ? { ...row, parts: (panels[at] ?? 0) * each, least: sure * each, most: most * each }
        : { ...row, parts: null, least: null, most: null };
    });
  });
}

function scrappedRows(state: FloorState, run: Run): readonly Consumption[] {
  if (run.scrapped === 0) return [];
  const slots = state.setups.get(run.setup)?.slots ?? [];
  return slots
    .filter(({ perPanel, turn }) => perPanel > 0 && turn === undefined)
    .map(({ slot, part, perPanel }): Consumption => {
      const parts = perPanel * run.scrapped * shareBuilt(state, run);
      const { line, product } = run;
      const none = { reel: null, supplierPart: null, lot: null };
      return {
        kind: 'scrapped',
        line,
        run: run.run,
        product,
        slot,
        part,
        ...none,
        parts,
        least: parts,
        most: parts,
      };
    });
}

/** Losses by the run that was being built, or had last ended, on their line when the count was made; a count that contradicts the rest tells none. */
function lostRows(state: FloorState, runs: readonly Run[]): readonly Consumption[] {
  const rows: Consumption[] = [];
  const byFeeders = new Map<string, Run[]>();
  for (const run of runs) {
    const host = feedersOf(run.line);
    const there = byFeeders.get(host);
    if (there) there.push(run);
    else byFeeders.set(host, [run]);
  }
  for (const [part, finished] of state.finished)
    for (const reel of finished) {
      if (reel.told === 'splice') continue; // a bound, and no count
      const { slot, atMs } = reel;
      const before = (byFeeders.get(feedersOf(reel.line)) ?? []).filter((each) => each.startedMs <= atMs);
      const took = before.filter((each) => perPanelOf(state, each.setup, slot) > 0);
      const run = took.at(-1) ?? before.at(-1);
      const shown = run === undefined ? null : shownOn(state, reel);
      if (run === undefined || shown === null) continue;
      const { lost: parts, sd = 0 } = shown;
      const { line, product } = run;
      const none = { reel: null, supplierPart: null, lot: null };
      const bounds = { least: Math.max(0, parts - 2 * sd), most: parts + 2 * sd };
      rows.push({ kind: 'lost', line, run: run.run, product, slot, part, ...none, parts, ...bounds });
    }
  return rows;
}

/** Rows by their run, in their order. */
function byRun<T extends { readonly run: string }>(rows: readonly T[]): ReadonlyMap<string, readonly T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const there = found.get(row.run);
    if (there) there.push(row);
    else found.set(row.run, [row]);
  }
  return found;
}

/** Every run's consumption, oldest run first. Cost: the trace's places of these runs, once. */
export function consumptionOf(
  index: TraceIndex,
  { line = null, fromMs = null }: ConsumptionQuestion = {},
): readonly Consumption[] {
  const { state } = index;
  const all = [...state.runs.values()].sort((a, b) => a.startedMs - b.startedMs || compareText(a.run, b.run));
  const asked = all.filter(
    (run) =>
      (line === null || run.line === line) &&
      (fromMs === null || run.phase !== 'ended' || run.sinceMs >= fromMs),
  );
  const names = new Set(asked.map(({ run }) => run));
  const places = byRun(servedWhere(index, ({ run }) => (names.has(run) ? 'surely' : null)));
  const lost = byRun(lostRows(state, all));
  return asked.flatMap((run) => [
    ...placedRows(state, run, places.get(run.run) ?? []),
    ...scrappedRows(state, run),
    ...(lost.get(run.run) ?? []),
  ]);
}
