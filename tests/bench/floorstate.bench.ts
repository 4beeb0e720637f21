// What does the folded state of a plant hold after a while, part by part, and what grows with the plant's age? As it is handed to a new tablet,
// packed closely, and as plain JSON; beside each what it would be after three years at 5,000 entries a day, by its growth over the last third of
// the time: what is kept for some weeks, or to a number, has stopped growing by then. Wanted: at most 3 MB in all.
// BENCH_HOURS of a simulated line (default 2,400: a hundred days).

import { gzipSync } from 'node:zlib';
import { simulateShift } from '../../demo/simulate.ts';
import { applyAll } from '../../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../../shared/floor/state.ts';
import { packClosely, packValue } from '../../shared/kit/pack.ts';
import { parameter } from './server-process.ts';

const HOURS = parameter('BENCH_HOURS', 2_400);
/** Parts of the state that are shown: the largest. */
const SHOWN = 12;
const THREE_YEARS = 3 * 365 * 5_000;

interface Size {
  readonly text: number;
  readonly gzip: number;
}

function sizeOf(value: unknown): Size {
  const text = JSON.stringify(value);
  return { text: text.length, gzip: gzipSync(text).length };
}

const kB = (bytes: number) => (bytes / 1000).toFixed(1).padStart(9);

/** Sizes of the state's parts, and of the whole under an empty name. */
function sizesOf(state: FloorState, pack: (value: unknown) => unknown): ReadonlyMap<string, Size> {
  const parts = Object.entries(state).filter(([, part]) => part.size > 0);
  return new Map([
    ['', sizeOf(pack(state))],
    ...parts.map(([name, part]) => [name, sizeOf(pack(part))] as const),
  ]);
}

const { entries } = simulateShift({
  seed: 1,
  hours: HOURS,
  zone: 'Europe/London',
  startMs: Date.UTC(2026, 0, 5),
});
const most = Math.round((entries.length * 2) / 3);
const state = applyAll(emptyState(), entries.slice(0, most));
const before = sizesOf(state, packClosely);
const startMs = performance.now();
applyAll(state, entries.slice(most));
const foldMs = performance.now() - startMs;
const closely = sizesOf(state, packClosely);
const plainly = sizesOf(state, packValue);

const rest = entries.length - most;
console.log(
  `${entries.length} entries of ${HOURS} hours; the last ${rest} folded in ${(foldMs / 1000).toFixed(1)} s`,
);
console.log(
  'kB                plain    gzipped     handed    gzipped   gzipped after three years at this growth',
);
const largest = [...closely].sort(([, a], [, b]) => b.gzip - a.gzip).slice(0, SHOWN + 1);
for (const [name, size] of largest) {
  const plain = plainly.get(name) ?? size;
  const growth = (size.gzip - (before.get(name)?.gzip ?? 0)) / rest;
  const grown = size.gzip + growth * (THREE_YEARS - entries.length);
  const figures = [plain.text, plain.gzip, size.text, size.gzip, grown].map(kB).join('  ');
  console.log(`${(name === '' ? 'the whole' : name).padEnd(14)}${figures}`);
}
process.exit(0);
