// Does any reader of what comes from outside throw, hang or grow, whatever it is given? A million cases: valid samples mutated by their own
// structure (tests/fuzz). Says of each reader how many, how fast, its slowest case and what its heap grew by; a failing case is kept with
// its seed in .tmp/fuzz. FUZZ_SEED repeats a run, FUZZ_CASES draws more or fewer, FUZZ_ONLY asks readers whose name holds that.

import { mkdirSync, writeFileSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import path from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { Plan } from '../fuzz/plan.ts';
import { type FuzzTarget, runTarget } from '../fuzz/target.ts';
import { targets } from '../fuzz/targets.ts';

const seed = Number(process.env['FUZZ_SEED'] ?? Date.now() % 2 ** 31);
const cases = Number(process.env['FUZZ_CASES'] ?? 1_000_000);
const only = process.env['FUZZ_ONLY'] ?? '';
const folder = path.resolve('.tmp', 'fuzz');
/** Cases at one time: drawn, read and forgotten. */
const AT_ONCE = 5_000;
/** The slowest cases of a reader are timed again, each some times by the processor's clock: on a busy machine many wait for nothing of their own. */
const SLOW = 12;
const HANG_MS = 100;
const AGAIN = 4;
const WARM = 500;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** Bytes that are held once nothing is left to be collected. */
function heldBytes(): number {
  collect();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

function keep(target: FuzzTarget, about: Record<string, unknown>, input: string | Uint8Array): string {
  mkdirSync(folder, { recursive: true });
  const file = path.join(folder, `${target.name.replace(/\W+/g, '-')}-${seed}.json`);
  const given =
    typeof input === 'string' ? { text: input } : { base64: Buffer.from(input).toString('base64') };
  writeFileSync(file, JSON.stringify({ target: target.name, seed, ...about, ...given }, null, 1));
  return file;
}

/** The least of some readings of one case: what it costs the processor by itself, ms. */
async function timeAgain(target: FuzzTarget, plan: Plan): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < AGAIN; at += 1) {
    const input = target.input(plan);
    const start = process.cpuUsage();
    await target.read(input, plan);
    const { user, system } = process.cpuUsage(start);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

/** Keeps the slowest of all cases, by the wall's clock. */
function createSlowest(): {
  readonly cases: { readonly plan: Plan; readonly ms: number }[];
  readonly note: (plan: Plan, ms: number) => void;
} {
  const cases: { readonly plan: Plan; readonly ms: number }[] = [];
  const note = (plan: Plan, ms: number) => {
    if (cases.length === SLOW && ms <= (cases.at(-1)?.ms ?? 0)) return;
    cases.push({ plan, ms });
    cases.sort((a, b) => b.ms - a.ms);
    cases.length = Math.min(cases.length, SLOW);
  };
  return { cases, note };
}

const loadAtStart = loadavg()[0] ?? 0;
console.log(
  `fuzz: seed ${seed}, Node ${process.version}, ${availableParallelism()} cores, load ${loadAtStart.toFixed(1)}`,
);
const wanted = targets.filter(({ name }) => name.includes(only));
const shares = wanted.reduce((sum, { share }) => sum + share, 0);
let all = 0;
let faults = 0;
const began = performance.now();
for (const target of wanted) {
  const most = Math.ceil((target.share / shares) * cases);
  const slow = createSlowest();
  let [before, start, done, isWell] = [0, 0, 0, true];
  for (let batch = 0; done < most && isWell; batch += 1) {
    // The compiler and caches settle first; what is held after that must not grow.
    const isWarm = batch > 0;
    if (batch === 1) [before, start, done] = [heldBytes(), performance.now(), 0];
    const run = await runTarget(target, {
      seed: seed + batch,
      cases: isWarm ? Math.min(AT_ONCE, most - done) : Math.min(WARM, most),
      onCase: slow.note,
    });
    if (isWarm) done += run.cases;
    if (!run.failed) continue;
    const { error, path: shrunk, plan, input } = run.failed;
    const file = keep(target, { batch, error, path: shrunk, plan }, input);
    console.log(`  FAILED ${target.name}: ${error.split('\n')[0]}; kept in ${file}`);
    faults += 1;
    isWell = false;
  }
  const ms = performance.now() - start;
  const grew = heldBytes() - before;
  let slowest = 0;
  for (const { plan } of isWell ? slow.cases : []) {
    const again = await timeAgain(target, plan);
    if (again > HANG_MS) {
      faults += 1;
      console.log(
        `  SLOW ${target.name}: ${again.toFixed(0)} ms; kept in ${keep(target, { plan, ms: again }, target.input(plan))}`,
      );
    }
    slowest = Math.max(slowest, again);
  }
  all += done;
  console.log(
    `${target.name.padEnd(24)} ${done.toLocaleString('en').padStart(9)} cases ${Math.round((done / ms) * 1000)
      .toLocaleString('en')
      .padStart(
        7,
      )} /s  slowest ${slowest.toFixed(1).padStart(6)} ms  grew ${(grew / 2 ** 20).toFixed(2)} MiB`,
  );
}
const seconds = (performance.now() - began) / 1000;
console.log(
  `${all.toLocaleString('en')} cases in ${seconds.toFixed(0)} s (${Math.round(all / seconds).toLocaleString('en')} /s), ${faults} faults; load ${(loadavg()[0] ?? 0).toFixed(1)}`,
);
process.exitCode = faults === 0 ? 0 : 1;
process.exit();
