// How long does a changeover of 240 slots take to work out? Baseline in the same run: sorting the same slots in walking
// order, the least that any plan has to do. Cases: everything new, everything shuffled (cycles), wide feeders shifted.

import { performance } from 'node:perf_hooks';
import { diffSetups, type PlacedFeeder } from '../../shared/changeover/diff.ts';
import { orderSteps } from '../../shared/changeover/steps.ts';
import { compareSlots } from '../../shared/floor/address.ts';
import { type Chance, chanceBelow, seededChance } from '../../shared/kit/chance.ts';

const SLOTS = 240;
const ROUNDS = 40;

function shuffled<T>(items: readonly T[], chance: Chance): T[] {
  const list = [...items];
  for (let at = list.length - 1; at > 0; at--) {
    const other = chanceBelow(chance, at + 1);
    const [x, y] = [list[at], list[other]];
    if (x !== undefined && y !== undefined) [list[at], list[other]] = [y, x];
  }
  return list;
}

/** Feeders side by side on four banks of 60 positions. */
function lay(feeders: readonly { part: string; width: number }[]): PlacedFeeder[] {
  const placed: PlacedFeeder[] = [];
  let bank = 0;
  let at = 1;
  for (const feeder of feeders) {
    if (at + feeder.width - 1 > SLOTS / 4) {
      bank++;
      at = 1;
    }
    if (bank > 3) break;
    const row = ['M1-F', 'M1-R', 'M2-F', 'M2-R'][bank] ?? '';
    placed.push({ ...feeder, slot: `${row}-${String(at).padStart(3, '0')}` });
    at += feeder.width;
  }
  return placed;
}

const chance = seededChance(240);
const narrow = Array.from({ length: SLOTS }, (_, at) => ({ part: `P${at}`, width: 1 }));
const mixed = Array.from({ length: SLOTS }, (_, at) => ({
  part: `P${at}`,
  width: chance() < 0.72 ? 1 : 2 + chanceBelow(chance, 3),
}));
const twins = narrow.map((one, at) => ({ ...one, part: `P${at % 160}` }));
const cases: [string, () => [PlacedFeeder[], PlacedFeeder[]]][] = [
  ['all new', () => [lay(narrow), lay(narrow.map((one) => ({ ...one, part: `N${one.part}` })))]],
  ['all shuffled', () => [lay(narrow), lay(shuffled(narrow, chance))]],
  [
    'half shuffled',
    () => [lay(narrow), [...lay(shuffled(narrow.slice(0, 120), chance)), ...lay(narrow).slice(120)]],
  ],
  ['wide shuffled', () => [lay(mixed), lay(shuffled(mixed.slice(0, 150), chance))]],
  ['twins shuffled', () => [lay(twins), lay(shuffled(twins, chance))]],
];

console.log('case            median ms  most ms  sort ms  ratio  parked  proven');
for (const [name, make] of cases) {
  const times: number[] = [];
  const sorts: number[] = [];
  let parked = 0;
  let proven = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const [loaded, wanted] = make();
    let from = performance.now();
    const diff = diffSetups(loaded, wanted);
    if (!diff.ok) throw new Error(JSON.stringify(diff.error[0]));
    const plan = orderSteps(diff.value);
    times.push(performance.now() - from);
    parked += plan.parked;
    proven += plan.isProven ? 1 : 0;
    from = performance.now();
    [...loaded, ...wanted].map((one) => one.slot).sort(compareSlots);
    sorts.push(performance.now() - from);
  }
  const median = (list: number[]) => list.sort((x, y) => x - y)[list.length >> 1] ?? 0;
  const [time, sort] = [median(times), median(sorts)];
  console.log(
    `${name.padEnd(15)} ${time.toFixed(2).padStart(9)}  ${(times.at(-1) ?? 0).toFixed(1).padStart(7)}  ${sort.toFixed(2).padStart(7)}  ${(time / sort).toFixed(1).padStart(5)}  ${(parked / ROUNDS).toFixed(1).padStart(6)}  ${proven}/${ROUNDS}`,
  );
}
