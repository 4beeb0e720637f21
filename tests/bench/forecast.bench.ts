// How long does the forecast of a whole line take? Aim: 1000 slots in 10 ms.
// Baselines of the same run: the plain quotient without spread, risk or window (what any forecast must at least do), and the same
// early and late points by 1000 seeded draws per slot (the simulation that the exact laws replace).

import { forecastLine, type LinePace, type SlotLoad } from '../../shared/forecast/run-out.ts';
import { workingMoment, workingTime } from '../../shared/forecast/working-time.ts';
import { chanceBelow, chanceNormal, seededChance } from '../../shared/kit/chance.ts';

const slots = 1000;
const hourMs = 3_600_000;
const chance = seededChance(20_261_124);

const calendar = workingTime(
  Array.from({ length: 60 }, (_, i) => ({
    fromMs: (i * 4 + 3) * hourMs,
    toMs: (i * 4 + 3) * hourMs + 900_000,
  })),
);
const pace: LinePace = { nowMs: 0, panelSeconds: 30, panelsLeft: 900, calendar };

function makeLoads(change: (index: number) => Partial<SlotLoad>): SlotLoad[] {
  return Array.from({ length: slots }, (_, i) => ({
    slot: `M${1 + Math.floor(i / 100)}-F-${String((i % 100) + 1).padStart(3, '0')}`,
    perPanel: 1 + chanceBelow(chance, 20),
    left: 200 + chanceBelow(chance, 10_000),
    sd: 0,
    loss: 0.0005 + chance() * 0.01,
    pitchMm: 4,
    hubToPickMm: 700,
    intakeToPickMm: 250,
    ...change(i),
  }));
}

/** Median processor time of the runs in ms, after as many again to warm up: other programs on the machine do not count, the compiler's threads do. */
function median(run: () => unknown, runs = 101): number {
  const times: number[] = [];
  for (let round = 0; round < 2 * runs; round++) {
    const start = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(start);
    if (round >= runs) times.push((user + system) / 1000);
  }
  return times.sort((a, b) => a - b)[(runs - 1) / 2] ?? Number.NaN;
}

function quotient(loads: readonly SlotLoad[]): number[] {
  return loads
    .map((load) =>
      workingMoment(calendar, 0, (((1 - load.loss) * load.left) / load.perPanel) * pace.panelSeconds),
    )
    .sort((a, b) => a - b);
}

function simulation(loads: readonly SlotLoad[]): number[] {
  return loads.map((load) => {
    const draws: number[] = [];
    const spread = Math.sqrt(load.left * load.loss * (1 - load.loss) + load.sd ** 2);
    for (let i = 0; i < 1000; i++) draws.push(chanceNormal(chance, (1 - load.loss) * load.left, spread));
    draws.sort((a, b) => a - b);
    return workingMoment(calendar, 0, (Math.max(0, draws[50] ?? 0) / load.perPanel) * pace.panelSeconds);
  });
}

const kinds: readonly (readonly [string, LinePace, SlotLoad[]])[] = [
  ['certain counts, known loss (exact law)', pace, makeLoads(() => ({}))],
  [
    'a third each: exact, learnt loss, uncertain count',
    { ...pace, panelSd: 2, panelMeanSd: 0.1 },
    makeLoads((i) => (i % 3 === 0 ? {} : i % 3 === 1 ? { lossStrength: 2000 } : { sd: 40 })),
  ],
  ['learnt loss, certain counts', pace, makeLoads(() => ({ lossStrength: 2000 }))],
  [
    'first reels: assumed loss, label counts, counted down',
    { ...pace, panelSd: 2, panelMeanSd: 0.1 },
    makeLoads((i) => ({ loss: 0.003, lossStrength: 150, sd: 5 + (i % 20), taken: (i * 37) % 8000 })),
  ],
];

for (const [what, linePace, loads] of kinds) {
  const ms = median(() => forecastLine(linePace, loads));
  const plain = median(() => quotient(loads));
  const drawn = median(() => simulation(loads), 5);
  console.log(
    `${what.padEnd(54)} ${ms.toFixed(2).padStart(7)} ms for ${slots} slots   ${(ms / plain).toFixed(1)} x plain quotient (${plain.toFixed(2)} ms)   1/${(drawn / ms).toFixed(0)} of 1000 draws a slot (${drawn.toFixed(0)} ms)`,
  );
}
