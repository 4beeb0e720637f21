// What does the folded state of a plant hold after a while, part by part, and what grows with the plant's age? As it is handed to a new tablet,
// packed closely, and as plain JSON; beside each the growth an entry from the first quarter of the time on, which says what a year would be.
// BENCH_HOURS of a simulated line (default 400).

import { gzipSync } from 'node:zlib';
import { simulateShift } from '../../demo/simulate.ts';
import { applyAll } from '../../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../../shared/floor/state.ts';
import { packClosely, packValue } from '../../shared/kit/pack.ts';
import { parameter } from './server-process.ts';

const HOURS = parameter('BENCH_HOURS', 400);
/** Parts of the state that are shown: the largest. */
const SHOWN = 10;
const A_YEAR = 995_000;

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
const quarter = Math.round(entries.length / 4);
const state = applyAll(emptyState(), entries.slice(0, quarter));
const before = sizesOf(state, packClosely);
const startMs = performance.now();
applyAll(state, entries.slice(quarter));
const foldMs = performance.now() - startMs;
const closely = sizesOf(state, packClosely);
const plainly = sizesOf(state, packValue);

const rest = entries.length - quarter;
console.log(
  `${entries.length} entries of ${HOURS} hours; the last ${rest} folded in ${(foldMs / 1000).toFixed(1)} s`,
);
console.log(
  'kB                plain    gzipped     handed    gzipped   gzipped more in a year at this growth',
);
const largest = [...closely].sort(([, a], [, b]) => b.gzip - a.gzip).slice(0, SHOWN + 1);
for (const [name, size] of largest) {
  const plain = plainly.get(name) ?? size;
  const grown = ((size.gzip - (before.get(name)?.gzip ?? 0)) / rest) * A_YEAR;
  const figures = [plain.text, plain.gzip, size.text, size.gzip, grown].map(kB).join('  ');
  console.log(`${(name === '' ? 'the whole' : name).padEnd(14)}${figures}`);
}
process.exit(0);
