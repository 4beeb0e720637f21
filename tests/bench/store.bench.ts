// A store of 20,000 packages: how long does a letter typed into its search take, a filter, the list of places, the packages for every slot of a
// setup; and what does its folded state weigh? What is made ready in steps before the first question is measured cold, step by step, and the first
// question after it. Each answer is held against a plain one. The tablet is taken as six times as slow as this machine.

import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { plantDay } from '../../shared/floor/plant-day.ts';
import { shelfFor, shelfSteps } from '../../shared/floor/shelf.ts';
import { copyState, emptyState, type FloorState, type Reel, type Setup } from '../../shared/floor/state.ts';
import { seededChance } from '../../shared/kit/chance.ts';
import { findSteps, listSteps, placeSteps, reelFilters } from '../../src/app/screens/stock/found-reels.ts';
import { wantedSlot } from '../shared/floor/story.ts';
import { toTheEnd } from '../to-the-end.ts';

const PACKAGES = Number(process.env['REELWARD_PACKAGES'] ?? 20_000);
const SLOWDOWN = 6;
const SLOTS = 120;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

function heapMb(): number {
  collect();
  return process.memoryUsage().heapUsed / 1024 / 1024;
}

const partAt = (number: number) => `22-0603-${String(number).padStart(3, '0')}`;

function madeFloor(): FloorState {
  const chance = seededChance(7);
  const floor = emptyState();
  for (let at = 0; at < PACKAGES; at += 1) {
    const part = partAt(Math.floor(chance() * 800));
    const reel: Reel = {
      reel: `R-${String(100_000 + at)}`,
      part,
      supplierPart: `MK${part.replaceAll('-', '')}`,
      lot: `LT-${Math.floor(chance() * 4000)}`,
      dateCode: String(2500 + Math.floor(chance() * 52)),
      count: Math.floor(chance() * 5000),
      sd: 10,
      basis: 'label',
      at: null,
      place: `S${Math.floor(chance() * 90)}-${Math.floor(chance() * 40)}`,
    };
    floor.reels.set(reel.reel, reel);
    if (at % 20 === 0) {
      const period = { air: 'floor' as const, fromMs: at, celsius: null, humidity: null, entry: `T/e/${at}` };
      floor.exposures.set(reel.reel, { msl: '3', periods: [period] });
    }
    if (at % 2000 === 0) {
      const facts = { block: `b${at}`, reel: reel.reel, lot: null, part: null, reason: 'bench' };
      floor.blocks.set(facts.block, { ...facts, atMs: 0, done: [], letRun: [] });
    }
  }
  const setup = {
    setup: 'S',
    product: 'bench',
    side: 'top',
    revision: 'A',
    line: 'L1',
    source: '',
    takenMs: 0,
    slots: Array.from({ length: SLOTS }, (_, at) => wantedSlot(`F-${at}`, partAt(at * 5))),
  } as const satisfies Setup;
  floor.setups.set('S', setup);
  return floor;
}

const before = heapMb();
const floor = madeFloor();
const weighs = heapMb() - before;

/** Processor time, ms, so that what else the machine does is not counted; what the engine compiles and clears away beside the page's thread is. */
function busyMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

interface Measured {
  readonly p95: number;
  readonly first: number;
}

function spreadOf(taken: number[]): Measured {
  const first = taken[0] ?? 0;
  taken.sort((a, b) => a - b);
  return { p95: taken[Math.floor(taken.length * 0.95)] ?? 0, first };
}

function measured(times: number, work: (at: number) => unknown): Measured {
  const taken: number[] = [];
  for (let at = 0; at < times; at += 1) {
    const from = busyMs();
    work(at);
    taken.push(busyMs() - from);
  }
  return spreadOf(taken);
}

/** Every step taken, the longest told. */
function stepped(what: string, steps: Iterator<undefined, unknown>): void {
  const taken: number[] = [];
  for (let isDone = false; !isDone; ) {
    const from = busyMs();
    isDone = steps.next().done === true;
    taken.push(busyMs() - from);
  }
  const slow = (ms: number) => (ms * SLOWDOWN).toFixed(1);
  const all = taken.reduce((sum, ms) => sum + ms, 0);
  console.log(
    `${what}, made ready: ${taken.length} steps, longest at ${SLOWDOWN}x ${slow(Math.max(...taken))} ms (wanted 50), ${slow(all)} ms in all`,
  );
}

const typed = ['r-104233', '22-0603-417', 'lt-2201', 's12-4', 'nothing like it'];
const queries = typed.flatMap((text) => [...text].map((_, at) => text.slice(0, at + 1)));

function plainCount(query: string): number {
  let count = 0;
  for (const { reel, part, supplierPart, lot, dateCode, place } of floor.reels.values())
    if (`${reel} ${part} ${supplierPart} ${lot} ${dateCode}  ${place}`.toLowerCase().includes(query))
      count += 1;
  return count;
}

function held(what: string, { p95, first }: { readonly p95: number; readonly first: number }): void {
  const slow = (ms: number) => (ms * SLOWDOWN).toFixed(1);
  console.log(
    `${what}: p95 ${p95.toFixed(2)} ms, at ${SLOWDOWN}x ${slow(p95)} ms (wanted 50), first ${slow(first)} ms`,
  );
}

console.log(`${PACKAGES} packages; the state weighs ${weighs.toFixed(1)} MB (wanted 40)`);
stepped('the search', findSteps(floor, { query: 'lt-2', filter: 'all', most: 60 }));
stepped(
  'opened ones',
  listSteps(floor, { query: '', filter: 'opened', most: 60, endOf: ({ reel }) => reel.length }),
);
held(
  'a letter of the search',
  measured(300, (at) =>
    toTheEnd(findSteps(floor, { query: queries[at % queries.length] ?? '', filter: 'all', most: 60 })),
  ),
);
held(
  'a filter',
  measured(100, (at) =>
    toTheEnd(
      findSteps(floor, { query: '', filter: reelFilters[at % reelFilters.length] ?? 'all', most: 60 }),
    ),
  ),
);
stepped('the places', placeSteps(floor));
stepped('the places again', placeSteps(floor));
// A page knows the plant's day long before: its calendar is fetched once, by whoever asks first.
plantDay(floor, 'L1', 0);
stepped('packages', shelfSteps(floor, { line: 'L1', setup: 'S', nowMs: 0 }));
const packages = () => {
  const shelf = shelfFor(floor, { line: 'L1', setup: 'S', nowMs: 0 });
  return floor.setups.get('S')?.slots.map(shelf);
};
held(`packages for ${SLOTS} slots`, measured(100, packages));
held(
  `packages for ${SLOTS} slots, after a reel changed`,
  measured(100, (at) => {
    const reel = floor.reels.get(`R-${100_000 + at * 7}`);
    if (reel) floor.reels.set(reel.reel, { ...reel, count: at });
    return packages();
  }),
);
held(
  'a copy of the state',
  measured(20, () => copyState(floor)),
);

const byHand = queries.map(plainCount);
const byList = queries.map((query) => toTheEnd(findSteps(floor, { query, filter: 'all', most: 60 })).count);
const isAlike = byHand.every((count, at) => count === byList[at]);
console.log(`each search finds as many as a plain look at every package: ${isAlike ? 'yes' : 'NO'}`);
if (!isAlike) process.exitCode = 1;
