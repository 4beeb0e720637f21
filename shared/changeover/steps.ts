// In which order are the handlings of a changeover done, one feeder at a time?
// Method: fewest feeders parked first (parking.ts; feeders of the same part may trade places to break a cycle for
// nothing), then walks along the line: at each slot passed, whatever can be done there is done; a feeder whose new place
// is still taken waits for the next walk. Taking out comes before putting in at the same slot.
// Refused: all taking out before all putting in; it walks the line twice as often and fills every trolley at once.

import { placeKey, positionsUnder, sortByWalk } from '../floor/address.ts';
import { cycleGroups, fewestParked } from '../order/parking.ts';
import { type FeederMove, kindOf, type PlacedFeeder, type SetupDiff } from './diff.ts';
import type { LaneOf } from './feeder-lanes.ts';

/** What a hand does; `unpark` puts a parked feeder on its new slot. The order is the order at one slot. */
export const stepActs = ['takeOut', 'park', 'move', 'unpark', 'putIn'] as const;
/** One handling. */
export interface ChangeStep {
  readonly act: (typeof stepActs)[number];
  /** Where the hand works: the slot left (takeOut, park, move) or filled (unpark, putIn). */
  readonly slot: string;
  readonly part: string;
  /** Where the feeder ends: the slot for move and unpark, null else. */
  readonly to: string | null;
  /** Other lanes of the feeder, which come with it: the slot worked at, as `slot` is. Absent where it has none. */
  readonly lanes?: readonly LaneOf[];
  /** The feeder stays where it is: the reel on this lane comes off (takeOut) or goes on (putIn). */
  readonly laneOnly?: true;
}

/** The handlings in order. */
export interface StepPlan {
  readonly steps: readonly ChangeStep[];
  /** Feeders parked off the machine on the way. */
  readonly parked: number;
  /** No order with fewer parked exists. */
  readonly isProven: boolean;
  /** The difference with moves traded between feeders of the same part, as the steps carry it out. */
  readonly diff: SetupDiff;
}

/** Most ways of trading tried one by one; above it, trades are made as long as one helps. */
const MOST_TRADES = 120;

/** Puts a difference (from `diffSetups`) in an order that can be carried out, with the fewest feeders parked. */
export function orderSteps(diff: SetupDiff): StepPlan {
  const traded = tradeMoves(diff);
  const { move, takeOut, putIn } = traded.diff;
  const tasks: Task[] = [
    ...takeOut.map((feeder) => task('takeOut', feeder.slot, null, feeder)),
    ...putIn.map((feeder) => task('putIn', null, feeder.slot, feeder)),
    ...move.map((one, at) => task(traded.parked.has(at) ? 'park' : 'move', one.from, one.to, one)),
  ];
  const steps = walk(tasks);
  const parked = steps.filter((step) => step.act === 'park').length;
  return { steps, parked, isProven: traded.isProven, diff: traded.diff };
}

interface Task {
  readonly act: (typeof stepActs)[number];
  readonly part: string;
  readonly from: string | null;
  readonly to: string | null;
  readonly leaves: readonly string[];
  readonly fills: readonly string[];
  readonly lanes: readonly { readonly part: string; readonly from: string; readonly to: string }[];
  readonly laneOnly: boolean;
}

function task(
  act: Task['act'],
  from: string | null,
  to: string | null,
  feeder: PlacedFeeder | FeederMove,
): Task {
  const laneOnly = 'laneOnly' in feeder && feeder.laneOnly === true;
  const positions = (slot: string | null) => {
    if (slot === null) return [];
    return laneOnly ? [placeKey(slot)] : positionsUnder(slot, feeder.width);
  };
  const lanes = (feeder.lanes ?? []).map((lane) =>
    'slot' in lane ? { part: lane.part, from: lane.slot, to: lane.slot } : lane,
  );
  const { part } = feeder;
  return { act, part, from, to, leaves: positions(from), fills: positions(to), lanes, laneOnly };
}

/** The step that carries a task out. */
function stepOf(one: Task, act: Task['act']): ChangeStep {
  const to = act === 'move' || act === 'unpark' ? one.to : null;
  const isFilled = act === 'unpark' || act === 'putIn';
  const lanes = one.lanes.map((lane) => ({ slot: isFilled ? lane.to : lane.from, part: lane.part }));
  return {
    act,
    slot: handSlot(one),
    part: one.part,
    to,
    ...(lanes.length > 0 ? { lanes } : {}),
    ...(one.laneOnly ? { laneOnly: true as const } : {}),
  };
}

const handSlot = (one: Task): string => (one.act === 'unpark' ? one.to : (one.from ?? one.to)) ?? '';

function walk(tasks: readonly Task[]): ChangeStep[] {
  const rankOf = walkRanks(tasks);
  const taken = new Map<string, Task>();
  for (const one of tasks) for (const position of one.leaves) taken.set(position, one);
  const steps: ChangeStep[] = [];
  const rank = (one: Task) => rankOf.get(`${one.act} ${handSlot(one)}`) ?? 0;
  const inOrder = (list: readonly Task[]) =>
    list
      .map((one) => ({ one, rank: rank(one) }))
      .sort((x, y) => x.rank - y.rank)
      .map(({ one }) => one);
  let waiting = inOrder(tasks);
  while (waiting.length > 0) {
    const later: Task[] = [];
    let hasParked = false;
    for (const one of waiting) {
      const isClear = one.fills.every((position) => (taken.get(position) ?? one) === one);
      if (!isClear && one.act !== 'park') {
        later.push(one);
        continue;
      }
      for (const position of one.leaves) if (taken.get(position) === one) taken.delete(position);
      const act = one.act === 'park' && isClear ? 'move' : one.act;
      steps.push(stepOf(one, act));
      if (act === 'park') {
        later.push({ ...one, act: 'unpark', leaves: [] });
        hasParked = true;
      }
    }
    if (!hasParked && later.length === waiting.length) {
      throw new Error(
        `Cannot order steps as every cycle of moves must have a parked feeder: ${later.length} are left`,
      );
    }
    waiting = hasParked ? inOrder(later) : later;
  }
  return steps;
}

/** Where each act at each slot comes in one walk: by slot, then in the order of the acts. */
function walkRanks(tasks: readonly Task[]): Map<string, number> {
  const slots = new Set(tasks.flatMap((one) => [one.from, one.to].filter((slot) => slot !== null)));
  const ranks = new Map<string, number>();
  for (const slot of sortByWalk([...slots], (one) => one)) {
    for (const act of stepActs) ranks.set(`${act} ${slot}`, ranks.size);
  }
  return ranks;
}

/** Moves, with the feeders of one kind free to trade: which source goes to which slot, and which is taken out instead. */
function tradeMoves(diff: SetupDiff): { diff: SetupDiff; parked: Set<number>; isProven: boolean } {
  const waitsOf = waitsFinder(diff);
  const choose = (moves: readonly FeederMove[]) => {
    const choice = fewestParked(waitsOf(moves));
    return { parked: new Set(choice.parked), isProven: choice.isProven };
  };
  let best = { diff, ...choose(diff.move) };
  if (best.parked.size === 0) return best;
  const groups = tradeGroups(diff);
  const ways = groups.reduce(
    (product, group) => product * permutationCount(group.sources.length, group.moves.length),
    1,
  );
  const consider = (arranged: readonly (readonly string[])[]): boolean => {
    const next = arrange(diff, groups, arranged);
    const choice = choose(next.move);
    if (choice.parked.size >= best.parked.size) return false;
    best = { diff: next, ...choice };
    return true;
  };
  if (ways <= 1) return best;
  if (ways <= MOST_TRADES) {
    for (const arranged of everyArrangement(groups)) if (best.parked.size > 0) consider(arranged);
    return best;
  }
  const now = groups.map((group) => [...group.sources]);
  const tradeOnce = (): boolean => {
    const cycleOf = cycleGroups(waitsOf(best.diff.move));
    for (const [at, group] of groups.entries()) {
      const list = now[at] ?? [];
      for (const [x, number] of group.moves.entries()) {
        const cycle = cycleOf[number] ?? -1;
        if (cycle < 0) continue;
        for (let y = 0; y < list.length; y++) {
          // Two moves of one cycle that trade places split it, which hardly ever saves a feeder.
          if (cycleOf[group.moves[y] ?? -1] === cycle) continue;
          [list[x], list[y]] = [list[y] ?? '', list[x] ?? ''];
          if (consider(now)) return true;
          [list[x], list[y]] = [list[y] ?? '', list[x] ?? ''];
        }
      }
    }
    return false;
  };
  while (best.parked.size > 0 && tradeOnce());
  return { ...best, isProven: best.parked.size === 0 };
}

/** Finds which moves each move waits for; positions are looked up once per slot. */
function waitsFinder(diff: SetupDiff): (moves: readonly FeederMove[]) => number[][] {
  const numbers = new Map<string, number>();
  const bySlot = new Map<string, number[]>();
  const positions = (slot: string, width: number): number[] => {
    const key = `${width} ${slot}`;
    const known = bySlot.get(key);
    if (known !== undefined) return known;
    const found = positionsUnder(slot, width).map((position) => {
      const number = numbers.get(position) ?? numbers.size;
      numbers.set(position, number);
      return number;
    });
    bySlot.set(key, found);
    return found;
  };
  for (const one of diff.move) {
    positions(one.from, one.width);
    positions(one.to, one.width);
  }
  for (const feeder of diff.takeOut) positions(feeder.slot, feeder.width);
  return (moves) => {
    const holder = new Int32Array(numbers.size).fill(-1);
    moves.forEach((one, at) => {
      for (const position of positions(one.from, one.width)) holder[position] = at;
    });
    return moves.map((one) =>
      positions(one.to, one.width).flatMap((position) => {
        const at = holder[position] ?? -1;
        return at < 0 ? [] : [at];
      }),
    );
  };
}

/** Moves of one kind with every source that they may come from: theirs first, then those to be taken out. */
interface TradeGroup {
  readonly moves: readonly number[];
  readonly sources: readonly string[];
}

function tradeGroups(diff: SetupDiff): TradeGroup[] {
  const groups = new Map<string, { moves: number[]; sources: string[] }>();
  diff.move.forEach((one, at) => {
    const kind = kindOf(one);
    const group = groups.get(kind) ?? { moves: [], sources: [] };
    groups.set(kind, group);
    group.moves.push(at);
    group.sources.push(one.from);
  });
  for (const feeder of diff.takeOut) {
    groups.get(kindOf(feeder))?.sources.push(feeder.slot);
  }
  return [...groups.values()].filter((group) => group.sources.length > 1);
}

function permutationCount(from: number, take: number): number {
  let count = 1;
  for (let at = 0; at < take; at++) count *= from - at;
  return count;
}

function* everyArrangement(groups: readonly TradeGroup[]): Generator<string[][]> {
  const [first, ...rest] = groups;
  if (first === undefined) {
    yield [];
    return;
  }
  for (const head of everyPermutation(first.sources, first.moves.length)) {
    for (const tail of everyArrangement(rest)) yield [head, ...tail];
  }
}

function* everyPermutation(sources: readonly string[], take: number): Generator<string[]> {
  if (take === 0) {
    yield [...sources];
    return;
  }
  for (let at = 0; at < sources.length; at++) {
    const head = sources[at] ?? '';
    const others = sources.filter((_, other) => other !== at);
    for (const tail of everyPermutation(others, take - 1)) yield [head, ...tail];
  }
}

/** The difference with each group's sources in a new order: the first go to its moves, the rest is taken out. */
function arrange(
  diff: SetupDiff,
  groups: readonly TradeGroup[],
  arranged: readonly (readonly string[])[],
): SetupDiff {
  const move = [...diff.move];
  const swapped = new Map<string, string>();
  groups.forEach((group, at) => {
    const list = arranged[at] ?? [];
    group.moves.forEach((number, x) => {
      const one = move[number];
      if (one !== undefined) move[number] = { ...one, from: list[x] ?? one.from };
    });
    group.sources.slice(group.moves.length).forEach((slot, x) => {
      swapped.set(slot, list[group.moves.length + x] ?? slot);
    });
  });
  const takeOut = diff.takeOut.map(
    (feeder): PlacedFeeder => ({ ...feeder, slot: swapped.get(feeder.slot) ?? feeder.slot }),
  );
  return { ...diff, move, takeOut: sortByWalk(takeOut, (feeder) => feeder.slot) };
}
