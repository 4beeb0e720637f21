// How long does it take to lay 200 splices out as rounds? Aim: 50 ms.
// Baseline of the same run: "earliest closing first", one pass that takes the most urgent splice and adds others while they fit. It is
// quick; the lines show what it costs in walks and misses.

import { type SpliceNeed, scheduleWalks } from '../../shared/forecast/walk-schedule.ts';
import { chanceBelow, seededChance } from '../../shared/kit/chance.ts';

const walkMs = 60_000;
const eachMs = 45_000;

function makeSplices(
  seed: number,
  shift: { count: number; span: number; least: number; most: number },
): SpliceNeed[] {
  const chance = seededChance(seed);
  return Array.from({ length: shift.count }, (_, i) => {
    const opensMs = chanceBelow(chance, shift.span) * 1000;
    const long = shift.least + chanceBelow(chance, shift.most - shift.least);
    return { slot: `M1-F-${i}`, opensMs, closesMs: opensMs + long * 1000 };
  });
}

/** The baseline: start when the most urgent splice opens or as soon as free, then serve whatever is open, most urgent first. */
function earliestClosingFirst(splices: readonly SpliceNeed[]): { walks: number; missed: number } {
  const waiting = [...splices].sort((a, b) => a.closesMs - b.closesMs);
  let free = 0;
  let walks = 0;
  let done = 0;
  while (waiting.length > 0) {
    const urgent = waiting[0];
    if (urgent === undefined) break;
    let begins = Math.max(free + walkMs, urgent.opensMs);
    let served = 0;
    for (let i = 0; i < waiting.length; ) {
      const splice = waiting[i];
      if (splice === undefined) break;
      if (splice.closesMs < begins + eachMs) waiting.splice(i, 1);
      else if (splice.opensMs <= begins) {
        waiting.splice(i, 1);
        served += 1;
        begins += eachMs;
        i = 0;
      } else i += 1;
    }
    if (served > 0) walks += 1;
    done += served;
    free = begins;
  }
  return { walks, missed: splices.length - done };
}

/** Median processor time of seven runs in ms, after one to warm up: other programs on the machine do not count. */
function median(run: () => unknown): number {
  const times: number[] = [];
  for (let round = 0; round < 8; round++) {
    const start = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(start);
    if (round > 0) times.push((user + system) / 1000);
  }
  return times.sort((a, b) => a - b)[3] ?? Number.NaN;
}

const shifts = [
  { what: 'windows 200-400 s over 8 h', count: 200, span: 28_800, least: 200, most: 400 },
  { what: 'windows 300-1200 s over 16 h', count: 200, span: 57_600, least: 300, most: 1200 },
  { what: 'windows 600-1200 s over 8 h', count: 200, span: 28_800, least: 600, most: 1200 },
  { what: 'windows 600-3600 s over 8 h', count: 200, span: 28_800, least: 600, most: 3600 },
  { what: 'windows 200-3600 s over 16 h', count: 200, span: 57_600, least: 200, most: 3600 },
  { what: 'windows 300-900 s over 2 h', count: 200, span: 7200, least: 300, most: 900 },
  { what: '20 splices in an hour, proven', count: 20, span: 3600, least: 300, most: 900 },
];

for (const shift of shifts) {
  const splices = makeSplices(20_261_124, shift);
  const ask = { nowMs: 0, walkSeconds: walkMs / 1000, eachSeconds: eachMs / 1000, splices };
  const plan = scheduleWalks(ask);
  const plain = earliestClosingFirst(splices);
  const ms = median(() => scheduleWalks(ask));
  const plainMs = median(() => earliestClosingFirst(splices));
  console.log(
    `${shift.what.padEnd(32)} ${String(shift.count).padStart(4)} splices ${ms.toFixed(1).padStart(6)} ms (${(ms / plainMs).toFixed(0)} x baseline)   ` +
      `${plan.walks.length} rounds, ${plan.missed.length} missed${plan.proven ? ', proven' : ''}   earliest closing first: ${plain.walks} rounds, ${plain.missed} missed`,
  );
}
