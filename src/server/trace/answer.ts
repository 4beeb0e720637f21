// Answers to quality's questions out of the kept index: what the store holds of it and what the keeper holds, joined for the
// material or the panel asked for, and then asked as any index is.

import { type TracedPanel, type TracedPlace, tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import { stretchesBeside } from '../../../shared/trace/beside.ts';
import { carriedBy, namesToo, type Parts, partsAsked } from '../../../shared/trace/material.ts';
import { addSettled } from '../../../shared/trace/parts.ts';
import { asAsked, askedInAnyCase, type TraceQuestion } from '../../../shared/trace/question.ts';
import type { SerialPanel } from '../../../shared/trace/serials.ts';
import { emptyTrace, type Stretch, type TraceIndex } from '../../../shared/trace/stretches.ts';
import type { Store } from '../stores/store.ts';
import { fromBody } from './fold.ts';
import type { TraceKeeper, TraceTip } from './keeper.ts';

/** Places in one answer; a common part of a year has more, and each can name hundreds of panels. */
const PLACES_AT_MOST = 300;

/** An answer, and how far the index was behind the log, in entries. */
export interface TraceAnswer {
  readonly places: readonly TracedPlace[];
  /** What the reel asked for is made of and went into; absent where it was never cut nor joined. */
  readonly parts?: Parts | undefined;
  /** True where there are more than are answered. */
  readonly more: boolean;
  readonly behind: number;
}

/** What is on one panel, and how far the index was behind the log, in entries. */
export interface PanelAnswer {
  readonly panel: TracedPanel | null;
  readonly behind: number;
}

type Rows = Pick<Store, 'traceStretches' | 'traceSerials' | 'traceSerial'>;

interface Kept {
  readonly store: Rows & Pick<Store, 'tracePlace'>;
  readonly keeper: TraceKeeper;
}

const TIMES_MOST = 5;

/** What lies in the store is of another index, or on its way out. */
const nothing: Rows = {
  traceStretches: async () => [],
  traceSerials: async () => [],
  traceSerial: async () => [],
};

/** An answer out of the tip and of what the store has beside it: once more where the store's part moved on meanwhile, as both would tell of the same. */
async function answered<T>(
  { store, keeper }: Kept,
  answer: (tip: TraceTip, rows: Rows) => Promise<T>,
): Promise<T> {
  for (let times = 1; ; times += 1) {
    const tip = await keeper.tip();
    if (tip.base === null) return answer(tip, nothing);
    const told = await answer(tip, store);
    // Of one that is far behind the answer says so.
    if (times === TIMES_MOST || (await store.tracePlace()) === tip.base) return told;
  }
}

/** Where material was. */
export function answerPlaces(kept: Kept, question: TraceQuestion): Promise<TraceAnswer> {
  return answered(kept, (tip, rows) => placesOf(tip, rows, question));
}

async function placesOf(
  { index, behind }: TraceTip,
  store: Rows,
  question: TraceQuestion,
): Promise<TraceAnswer> {
  const { from, to, ...named } = question;
  const inOneCase = askedInAnyCase.flatMap((name) => {
    const value = named[name];
    return value === undefined ? [] : [[name, asAsked(value)] as const];
  });
  const wanted = {
    ...named,
    ...Object.fromEntries(inOneCase),
    ...(from === undefined ? {} : { fromMs: Date.parse(from) }),
    ...(to === undefined ? {} : { toMs: Date.parse(to) }),
  };
  const carried = carriedBy(index.state, question);
  const isMeant = (stretch: Stretch) => carried(stretch) !== null;
  // Pieces and joined packages stand under names of their own: what is found by those is looked at before it is counted.
  const orReels = namesToo(index.state, question);
  const found =
    orReels.length === 0
      ? (await store.traceStretches(wanted, PLACES_AT_MOST + 1)).map(fromBody)
      : (await store.traceStretches({ ...wanted, orReels }, Number.MAX_SAFE_INTEGER))
          .map(fromBody)
          .filter(isMeant);
  const kept = found.slice(0, PLACES_AT_MOST);
  const newest = index.stretches.filter(isMeant);
  const beside = stretchesBeside(index.state).filter(isMeant);
  const joined = await join(
    { store, index },
    [...kept, ...newest],
    beside.map(({ run }) => run),
  );
  const parts = partsAsked(index.state, question);
  return {
    places: tracePlaces(joined, question),
    ...(parts === null ? {} : { parts }),
    more: found.length > PLACES_AT_MOST,
    behind,
  };
}

/** What is on one panel: by its code, or by its number within `run`. */
export function answerPanel(kept: Kept, panel: string, run: string | undefined): Promise<PanelAnswer> {
  return answered(kept, (tip, rows) => panelOf(tip, rows, { panel, run }));
}

async function panelOf(
  { index, behind }: TraceTip,
  store: Rows,
  { panel, run }: { readonly panel: string; readonly run: string | undefined },
): Promise<PanelAnswer> {
  const scanned = [...(await store.traceSerial(panel)), ...(index.serials.get(panel) ?? [])];
  const found = [...new Set(scanned.map((each) => each.run))].filter(
    (each) => run === undefined || each === run,
  );
  const all = [...index.state.runs.keys()];
  const named = run ?? (all.length === 1 ? all[0] : undefined);
  const wanted = found.length > 0 ? found : named === undefined ? [] : [named];
  const kept: Stretch[] = [];
  for (const each of wanted)
    kept.push(...(await store.traceStretches({ run: each }, Number.MAX_SAFE_INTEGER)).map(fromBody));
  const newest = index.stretches.filter((stretch) => wanted.includes(stretch.run));
  const joined = await join({ store, index }, [...kept, ...newest], wanted);
  return { panel: tracePanel(joined, panel, run ?? (found.length > 0 ? undefined : named)), behind };
}

/** An index of these stretches, with their runs and scanned panels. */
async function join(
  { store, index }: { readonly store: Rows; readonly index: TraceIndex },
  stretches: readonly Stretch[],
  named: readonly string[] = [],
): Promise<TraceIndex> {
  const runs = [...new Set([...named, ...stretches.map((stretch) => stretch.run)])];
  const joined = { ...emptyTrace(), state: index.state };
  const serials: SerialPanel[] = [...(await store.traceSerials(runs))];
  for (const run of runs) {
    for (const serial of index.serialByPanel.get(run)?.values() ?? [])
      serials.push(...(index.serials.get(serial) ?? []).filter((scanned) => scanned.run === run));
  }
  addSettled(joined, { stretches, serials });
  return joined;
}
