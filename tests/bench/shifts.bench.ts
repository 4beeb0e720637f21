// Are forecasts honest and walks few, on shifts that nobody tuned on? 200 simulated shifts of eight hours: the 90 % band against what
// came, the error an hour ahead, the warning's lead, and the hands' walks against a naive rule in the same shifts.
// Baseline: label count over usage times nominal cycle, walk at a fixed threshold; several thresholds, since none suits all windows.
// `SHIFTS=20 SEED=1` in the environment plays fewer, or others.

import { lineFigures } from '../../demo/plant.ts';
import { panelSeconds, type SimulatedShift } from '../../demo/simulate.ts';
import { forecastSlot } from '../../shared/forecast/run-out.ts';
import { needWarning } from '../../shared/forecast/warnings.ts';
import {
  type FirstWarning,
  type Foreseen,
  type Played,
  playByApp,
  playNaively,
  workedSeconds,
} from './shifts-play.ts';

const shifts = Number(process.env['SHIFTS'] ?? 200);
/** Seeds from here on were never used while the rules' figures were chosen; those below 1000 were. */
const firstSeed = Number(process.env['SEED'] ?? 500_000);
/** Seconds before run-out at which the naive rule walks: the line's own lead, half an hour, and the one that missed fewest on seeds 21 to 76. */
const naiveThresholds = (process.env['NAIVE'] ?? '600,1800,2400').split(',').map(Number);
const horizons = [900, 1800, 3600, 7200] as const;

interface Tally {
  walks: number;
  visits: number;
  spliced: number;
  vain: number;
  late: number;
  vainParts: number;
  dry: number;
  /** Of those: kept from the job before with a window that had closed, or closed before anybody could be there. */
  kept: number;
  stoppedSeconds: number;
  panels: number;
}

function emptyTally(): Tally {
  return {
    walks: 0,
    visits: 0,
    spliced: 0,
    vain: 0,
    late: 0,
    vainParts: 0,
    dry: 0,
    kept: 0,
    stoppedSeconds: 0,
    panels: 0,
  };
}

/** A window that closes sooner than this after the run's start is beyond reach: the walk, the work, two panels to see it. */
const reachSeconds = lineFigures.walkSeconds + lineFigures.spliceSeconds + 2 * panelSeconds;

/** When each run began. */
function runStarts({ entries }: SimulatedShift): ReadonlyMap<string, number> {
  const started = entries.filter((entry) => entry.kind === 'run.started');
  return new Map(started.map((entry) => [String(entry.payload['run']), entry.hlc.ms]));
}

function addShift(tally: Tally, shift: SimulatedShift): void {
  const { truth } = shift;
  const starts = runStarts(shift);
  tally.walks += truth.walks.length;
  tally.panels += truth.panelEndsMs.length;
  for (const walk of truth.walks) {
    tally.visits += walk.slots.length;
    tally.spliced += walk.spliced;
    tally.vain += walk.vain;
    tally.late += walk.late;
    tally.vainParts += walk.vainParts;
  }
  for (const stop of truth.stops) {
    if (stop.reason !== 'run-out') continue;
    tally.dry += 1;
    const end = truth.ends.find(
      (each) => each.slot === stop.slot && Math.abs(each.atMs - stop.fromMs) < 1000,
    );
    const startMs = starts.get(end?.run ?? '') ?? 0;
    if (end && end.closesMs !== null && end.closesMs <= startMs + reachSeconds * 1000) tally.kept += 1;
    tally.stoppedSeconds += (stop.toMs - stop.fromMs) / 1000;
  }
}

interface Bands {
  readonly inside: Map<number, number>;
  readonly early: Map<number, number>;
  readonly all: Map<number, number>;
  readonly clockInside: Map<number, number>;
  readonly errors: number[];
  readonly shares: number[];
  readonly clockErrors: number[];
}

function compareForecasts(played: Played, bands: Bands): void {
  const byTape = new Map<string, Foreseen[]>();
  for (const each of played.foreseen) {
    const key = `${each.run}|${each.slot}|${each.reel}`;
    const list = byTape.get(key);
    if (list) list.push(each);
    else byTape.set(key, [each]);
  }
  for (const end of played.shift.truth.ends) {
    const list = byTape.get(`${end.run}|${end.slot}|${end.reel}`) ?? [];
    for (const horizon of horizons) {
      let best: { off: number; truth: number; each: Foreseen } | null = null;
      for (const each of list) {
        if (each.atMs > end.atMs) break;
        const truth = workedSeconds(played.shift, each.atMs, end.atMs);
        const off = Math.abs(truth - horizon);
        if (best === null || off < best.off) best = { off, truth, each };
      }
      if (best === null || best.off > 0.1 * horizon) continue;
      const { each, truth } = best;
      const add = (map: Map<number, number>) => map.set(horizon, (map.get(horizon) ?? 0) + 1);
      add(bands.all);
      if (truth < each.early) add(bands.early);
      if (truth >= each.early && truth <= each.late) add(bands.inside);
      if (end.atMs >= each.clockEarlyMs && end.atMs <= each.clockLateMs) add(bands.clockInside);
      if (horizon !== 3600) continue;
      bands.errors.push(Math.abs(each.expected - truth));
      bands.shares.push(Math.abs(each.expected - truth) / truth);
      bands.clockErrors.push(Math.abs(each.clockExpectedMs - end.atMs) / 1000);
    }
  }
}

interface Leads {
  ends: number;
  inTime: number;
  /** Nobody could know: the reel came with less than the lead and a window left, or its count was not known. */
  shortReel: number;
  /** Less than the lead was left when the run began, and that was said before it began. */
  toldBefore: number;
  /** The run's first panel came with less than the lead left on a tape kept from the job before. */
  keptReel: number;
  /** Nobody could know: the same rule, told the feeder's true loss, would not have warned in time either; the label's count or chance was too far off. */
  notByTruth: number;
  /** The feeder loses otherwise than was learnt by then: told its true loss, the same rule would have warned in time. */
  notLearnt: number;
  /** Kept quiet because the run's end was expected first (risk below 5 %), and the run-out came within that risk. */
  quietRisk: number;
  unexplained: number;
}

/** Reels said to begin short, and those of them that did end in that run. */
const begun = { told: 0, ended: 0 };

function compareBegins({ shift, toldBefore }: Played): void {
  for (const [run, slots] of toldBefore) {
    begun.told += slots.size;
    const ends = new Set(
      shift.truth.ends.filter((end) => end.run === run).map((end) => `${end.slot}/${end.reel}`),
    );
    for (const slot of slots) if (ends.has(slot)) begun.ended += 1;
  }
}

function compareWarnings(played: Played, leads: Leads, seed: number): void {
  const leadMs = lineFigures.leadSeconds * 1000;
  const starts = runStarts(played.shift);
  for (const end of played.shift.truth.ends) {
    const seen = played.foreseen.find((each) => isOf(each, end));
    const begunMs = Math.max(starts.get(end.run) ?? 0, seen?.atMs ?? 0);
    const warning = played.warned.get(`${end.slot}/${end.reel}`);
    leads.ends += 1;
    if (warning && end.atMs - warning.atMs >= leadMs) leads.inTime += 1;
    else if (played.toldBefore.get(end.run)?.has(`${end.slot}/${end.reel}`)) leads.toldBefore += 1;
    else if (!warning || end.atMs - warning.seenMs < leadMs + 5 * panelSeconds * 1000) leads.shortReel += 1;
    else if (end.atMs - begunMs < leadMs + 5 * panelSeconds * 1000) leads.keptReel += 1;
    else {
      const ahead = played.foreseen.filter((each) => isOf(each, end) && each.atMs <= end.atMs - leadMs);
      const looked = ahead.at(-1);
      const reason = looked ? reasonOf(looked, played) : 'unexplained';
      leads[reason] += 1;
      console.log(`  seed ${seed} ${caseLine(end, { looked, warning, leadMs })}: ${reason}`);
    }
  }
}

function isOf(each: Foreseen, end: { slot: string; reel: string; run: string }): boolean {
  return each.slot === end.slot && each.reel === end.reel && each.run === end.run;
}

/** Why a tape ended without a warning a lead time ahead, by the last look before that moment. */
function reasonOf(
  looked: Foreseen,
  { shift }: Played,
): 'notByTruth' | 'notLearnt' | 'quietRisk' | 'unexplained' {
  const feeder = shift.truth.feeders.find((each) => each.feeder === looked.feeder);
  if (feeder === undefined) return 'unexplained';
  if (!isWarnedOf(looked, feeder.loss)) return 'notByTruth';
  if (looked.reason === 'run-ends-first') return 'quietRisk';
  return isWarnedOf(looked, looked.load.loss) ? 'unexplained' : 'notLearnt';
}

/** Would the rule have warned at this look, had it known the feeder's loss? The count and its spread stay as the log has them. */
function isWarnedOf({ load, pace }: Foreseen, loss: number): boolean {
  const { lossStrength: _, taken = 0, ...known } = load;
  const left = Math.max(0, load.left + taken / (1 - load.loss) - taken / (1 - loss));
  const { windowMs, runOutMs, risk } = forecastSlot(pace, { ...known, taken, left, loss });
  const warning = needWarning({
    nowMs: pace.nowMs,
    need: load.slot,
    risk,
    leadSeconds: lineFigures.leadSeconds,
    previous: null,
    opensMs: windowMs?.opens ?? runOutMs.early,
    closesMs: windowMs?.closes ?? runOutMs.expected,
    earlySeconds: windowMs === null ? 0 : Math.max(0, runOutMs.expected - runOutMs.early) / 1000,
  });
  return warning.level !== 'quiet';
}

function caseLine(
  end: Played['shift']['truth']['ends'][number],
  at: { looked: Foreseen | undefined; warning: FirstWarning; leadMs: number },
): string {
  const { looked, warning } = at;
  const when = new Date(end.atMs).toISOString().slice(11, 19);
  const warned =
    warning.atMs < end.atMs
      ? `warned ${((end.atMs - warning.atMs) / 1000).toFixed(0)} s ahead`
      : 'never warned';
  if (!looked) return `slot ${end.slot} at ${when}, ${warned}, no look a lead time ahead`;
  const late = (looked.clockExpectedMs - end.atMs) / 1000;
  return (
    `slot ${end.slot} at ${when}, ${warned}; ${((end.atMs - looked.atMs) / 1000).toFixed(0)} s ahead: ${looked.level} (${looked.reason}), ` +
    `run-out expected ${late.toFixed(0)} s after the true one, early bound ${((looked.clockEarlyMs - end.atMs) / 1000).toFixed(0)} s, ` +
    `risk ${looked.risk.toFixed(4)}, ${looked.parts.toFixed(0)} parts ± ${looked.sd.toFixed(1)} on ${looked.tapes} tapes, ${looked.panelsLeft} panels left`
  );
}

function point(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

const bands: Bands = {
  inside: new Map(),
  early: new Map(),
  all: new Map(),
  clockInside: new Map(),
  errors: [],
  shares: [],
  clockErrors: [],
};
const leads: Leads = {
  ends: 0,
  inTime: 0,
  shortReel: 0,
  toldBefore: 0,
  keptReel: 0,
  notByTruth: 0,
  notLearnt: 0,
  quietRisk: 0,
  unexplained: 0,
};
const ours = emptyTally();
const naive = new Map(naiveThresholds.map((threshold) => [threshold, emptyTally()]));
const lookMs: number[] = [];
for (let index = 0; index < shifts; index += 1) {
  const seed = firstSeed + index;
  const played = playByApp(seed);
  compareForecasts(played, bands);
  compareWarnings(played, leads, seed);
  compareBegins(played);
  addShift(ours, played.shift);
  lookMs.push(...played.lookMs);
  for (const [threshold, tally] of naive) addShift(tally, playNaively(seed, threshold));
  if (process.env['PROGRESS']) console.error(`${index + 1} of ${shifts}`);
}

const percent = (part: number, whole: number) => `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;
const sum = (map: Map<number, number>) => [...map.values()].reduce((total, value) => total + value, 0);
console.log(`${shifts} simulated shifts of 8 h, seeds ${firstSeed} to ${firstSeed + shifts - 1}`);
console.log('\nRun-outs inside the 90 % band (5 % to 95 %), by working time ahead');
for (const horizon of horizons) {
  const all = bands.all.get(horizon) ?? 0;
  console.log(
    `  ${String(horizon / 60).padStart(4)} min  ${String(all).padStart(6)} run-outs  inside ${percent(bands.inside.get(horizon) ?? 0, all)}` +
      `  before early ${percent(bands.early.get(horizon) ?? 0, all)}  inside by the clock ${percent(bands.clockInside.get(horizon) ?? 0, all)}`,
  );
}
console.log(
  `  all       ${String(sum(bands.all)).padStart(6)} run-outs  inside ${percent(sum(bands.inside), sum(bands.all))}`,
);
console.log('\nError of the expected run-out an hour ahead');
console.log(
  `  working time: median ${point(bands.errors, 0.5).toFixed(1)} s = ${(100 * point(bands.shares, 0.5)).toFixed(2)} %, ` +
    `95 % below ${point(bands.errors, 0.95).toFixed(0)} s; one panel is ${panelSeconds} s`,
);
console.log(
  `  by the clock, with stops that nobody plans: median ${point(bands.clockErrors, 0.5).toFixed(0)} s`,
);
console.log(`\nWarned at least ${lineFigures.leadSeconds} s before the run-out`);
console.log(
  `  ${leads.ends} tape ends: ${leads.inTime} in time, ${leads.shortReel} where nobody could know (put on with less than that left), ` +
    `${leads.toldBefore} said to begin short before the run began, ` +
    `${leads.keptReel} where the run began with less than that left on a kept reel and nobody was told before, ` +
    `${leads.notByTruth} where nobody could know (told the feeder's true loss, the same rule would not have warned in time either), ` +
    `${leads.notLearnt} where a feeder lost more than was learnt by then, ` +
    `${leads.quietRisk} within the 5 % in which the run's end was expected first, ${leads.unexplained} unexplained`,
);
console.log(
  `  said to begin short before a run: ${begun.told} reels, of which ${begun.ended} did end in that run`,
);
console.log('\nSame shifts, by rule');
console.log(
  '  rule            walks  slots a walk  splices  came in vain  came too late  run dry  of these kept  stood s  wasted if cut  panels',
);
function row(name: string, tally: Tally): void {
  console.log(
    `  ${name.padEnd(13)} ${String(tally.walks).padStart(7)}  ${(tally.visits / Math.max(1, tally.walks)).toFixed(2).padStart(12)}` +
      `  ${String(tally.spliced).padStart(7)}  ${String(tally.vain).padStart(12)}  ${String(tally.late).padStart(13)}` +
      `  ${String(tally.dry).padStart(7)}  ${String(tally.kept).padStart(13)}  ${tally.stoppedSeconds.toFixed(0).padStart(7)}  ${String(tally.vainParts).padStart(13)}  ${String(tally.panels).padStart(6)}`,
  );
}
row('rounds', ours);
for (const [threshold, tally] of naive) {
  row(`naive ${threshold} s`, tally);
  console.log(
    `    rounds against it: walks ${(100 * (ours.walks / tally.walks - 1)).toFixed(1)} %, run dry ${ours.dry} to ${tally.dry}`,
  );
}
console.log(
  `\nOne look (outlook and walks): median ${point(lookMs, 0.5).toFixed(1)} ms, 99 % below ${point(lookMs, 0.99).toFixed(0)} ms`,
);
