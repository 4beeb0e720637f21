// How good is the order of jobs after so many seconds of one core? Published instances by set, line-like instances with
// wide feeders, and 40 more of those whose optimum is proven here by an integer program over every order.
// Baseline in the same run: the order as given. `--only=published|wide`, `--seconds=1` narrow it down.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import { type Chance, chanceBelow, seededChance } from '../../shared/kit/chance.ts';
import { median } from '../../shared/kit/median.ts';
import { orderJobs, startOrder, workOfSeconds } from '../../shared/order/jobs.ts';
import { planOrder } from '../../shared/order/plan.ts';
import type { OrderQuestion } from '../../shared/order/problem.ts';

interface Instance {
  name: string;
  jobs: number;
  tools: number;
  capacity: number;
  jobTools: number[][];
  width?: number[];
  bestKnown: number;
  optimal: boolean;
  best: { setups: number; optimal: boolean };
}

const option = (name: string) =>
  process.env[`BENCH_${name.toUpperCase()}`] ??
  process.argv.find((one) => one.startsWith(`--${name}=`))?.slice(name.length + 3);
const fixtures = path.join(process.cwd(), 'tests', 'fixtures', 'changeover');
const load = (name: string): Instance[] =>
  JSON.parse(readFileSync(path.join(fixtures, `${name}.json`), 'utf8')).instances;

function ask(one: Pick<Instance, 'capacity' | 'jobTools' | 'width'>): OrderQuestion {
  const widths = Object.fromEntries((one.width ?? []).map((width, part) => [`p${part}`, width]));
  const jobs = one.jobTools.map((parts, job) => ({ id: `j${job}`, parts: parts.map((part) => `p${part}`) }));
  return { capacity: one.capacity, jobs, widths };
}

function cpuSeconds(): number {
  const used = process.cpuUsage();
  return (used.user + used.system) / 1e6;
}

function solve(question: OrderQuestion, seconds: number) {
  const from = cpuSeconds();
  const found = orderJobs(question, { seed: 1, budget: workOfSeconds(seconds) });
  if (!found.ok) throw new Error(JSON.stringify(found.error));
  return { ...found.value, seconds: cpuSeconds() - from };
}

function firstAnswerMs(question: OrderQuestion): number {
  const from = performance.now();
  const started = startOrder(question, { seed: 1, budget: 1e9 });
  if (started.ok) started.value.next();
  return performance.now() - from;
}

function given(question: OrderQuestion): number {
  const plan = planOrder(
    question,
    question.jobs.map((_, job) => job),
  );
  return plan.ok ? plan.value.changes : Number.NaN;
}

function published(seconds: number): void {
  console.log(`\nPublished sets, ${seconds} s: switches over best known (as given: the order of the file)`);
  console.log('set              jobs  C   n  gap %  as given %  best  proven  cpu s median  most  first ms');
  const rows = new Map<
    string,
    {
      n: number;
      found: number;
      best: number;
      given: number;
      hit: number;
      proven: number;
      cpu: number[];
      first: number;
      jobs: number;
    }
  >();
  for (const set of ['catanzaro', 'crama']) {
    for (const one of load(set)) {
      const key = `${set.padEnd(15)}  ${String(one.jobs).padStart(4)}  ${String(one.capacity).padStart(2)}`;
      const row = rows.get(key) ?? {
        n: 0,
        found: 0,
        best: 0,
        given: 0,
        hit: 0,
        proven: 0,
        cpu: [],
        first: 0,
        jobs: one.jobs,
      };
      rows.set(key, row);
      const question = ask(one);
      const first = Math.min(one.capacity, new Set(one.jobTools.flat()).size);
      const found = solve(question, seconds);
      row.n++;
      row.found += found.changes - first;
      row.best += one.bestKnown;
      row.given += given(question) - first;
      row.hit += found.changes - first <= one.bestKnown ? 1 : 0;
      row.proven += found.isProven ? 1 : 0;
      row.cpu.push(found.seconds);
      row.first = Math.max(row.first, firstAnswerMs(question));
    }
  }
  let gaps = 0;
  let large = 0;
  const cpu: number[] = [];
  for (const [key, row] of rows) {
    const gap = 100 * (row.found / row.best - 1);
    cpu.push(...row.cpu);
    if (row.jobs >= 30) {
      gaps += gap;
      large++;
    }
    const cells = [gap.toFixed(2).padStart(5), (100 * (row.given / row.best - 1)).toFixed(1).padStart(10)];
    console.log(
      `${key}  ${String(row.n).padStart(2)}  ${cells.join('  ')}  ${String(row.hit).padStart(4)}  ${String(row.proven).padStart(6)}  ${(median(row.cpu) ?? 0).toFixed(2).padStart(12)}  ${Math.max(...row.cpu).toFixed(2)}  ${row.first.toFixed(1).padStart(8)}`,
    );
  }
  console.log(`mean gap over the ${large} sets of 30 and 40 jobs: ${(gaps / large).toFixed(3)} %`);
  console.log(
    `processor seconds of an answer: median ${(median(cpu) ?? 0).toFixed(2)}, most ${Math.max(...cpu).toFixed(2)}`,
  );
}

/** A shift's jobs on a bank of 120 positions: common parts most jobs use, and parts of their own; widths 1-4. */
function plantLike(chance: Chance): Pick<Instance, 'name' | 'capacity' | 'jobTools' | 'width'> {
  const jobs = 4 + chanceBelow(chance, 3);
  const width = Array.from({ length: 190 }, () => {
    const draw = chance();
    return draw < 0.72 ? 1 : draw < 0.9 ? 2 : draw < 0.97 ? 3 : 4;
  });
  const likeness = 0.2 + 0.6 * chance();
  const jobTools = Array.from({ length: jobs }, () => {
    const most = 60 + chanceBelow(chance, 56);
    const parts = new Set<number>();
    let taken = 0;
    for (let tries = 0; tries < 400; tries++) {
      const part = chance() < likeness ? chanceBelow(chance, 45) : chanceBelow(chance, width.length);
      if (parts.has(part) || taken + (width[part] ?? 1) > most) continue;
      parts.add(part);
      taken += width[part] ?? 1;
    }
    return [...parts];
  });
  return { name: `plant-like, ${jobs} jobs`, capacity: 120, jobTools, width };
}

function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length === 0) yield [];
  for (const item of items) {
    for (const rest of permutations(items.filter((other) => other !== item))) yield [item, ...rest];
  }
}

interface Solver {
  solve(text: string): { ObjectiveValue: number };
}

/** Most pipes kept in one order: the knapsack over places as an integer program. */
function keptByProgram(
  highs: Solver,
  one: Pick<Instance, 'capacity' | 'jobTools' | 'width'>,
  order: readonly number[],
): number {
  const last = new Map<number, number>();
  const free = order.map(
    (job) =>
      one.capacity - (one.jobTools[job] ?? []).reduce((sum, part) => sum + (one.width?.[part] ?? 1), 0),
  );
  const rooms: string[][] = order.map(() => []);
  const pipes: string[] = [];
  let direct = 0;
  order.forEach((job, place) => {
    for (const part of one.jobTools[job] ?? []) {
      const from = last.get(part);
      last.set(part, place);
      if (from === undefined) continue;
      if (from === place - 1) {
        direct++;
        continue;
      }
      const name = `x${pipes.length}`;
      pipes.push(name);
      for (let at = from + 1; at < place; at++) rooms[at]?.push(`${one.width?.[part] ?? 1} ${name}`);
    }
  });
  const rows = rooms.flatMap((terms, at) =>
    terms.length === 0 ? [] : [`${terms.join(' + ')} <= ${free[at]}`],
  );
  if (pipes.length === 0) return direct;
  const text = `Maximize\n obj: ${pipes.join(' + ')}\nSubject To\n ${rows.join('\n ')}\nBinary\n ${pipes.join(' ')}\nEnd`;
  return direct + Math.round(highs.solve(text).ObjectiveValue);
}

function provenBest(highs: Solver, one: Pick<Instance, 'capacity' | 'jobTools' | 'width'>): number {
  const total = one.jobTools.reduce((sum, parts) => sum + parts.length, 0);
  let most = 0;
  for (const order of permutations(one.jobTools.map((_, job) => job))) {
    if ((order[0] ?? 0) < (order.at(-1) ?? 0)) most = Math.max(most, keptByProgram(highs, one, order));
  }
  return total - most;
}

async function wide(seconds: number): Promise<void> {
  const { default: loadHighs } = await import('highs');
  const highs: Solver = await loadHighs();
  const chance = seededChance(40);
  const made = Array.from({ length: 40 }, () => plantLike(chance));
  const sets: [string, { question: OrderQuestion; best: number; isProven: boolean }[]][] = [
    [
      'line-like',
      load('smtlike').map((one) => ({
        question: ask(one),
        best: one.best.setups,
        isProven: one.best.optimal,
      })),
    ],
    ['plant-like', made.map((one) => ({ question: ask(one), best: provenBest(highs, one), isProven: true }))],
  ];
  console.log(`\nWide feeders (1-4 positions), ${seconds} s: feeders put in`);
  console.log(
    'set         n  proven  reached  we prove  worst over %  as given over %  over best known of the rest  median cpu s  most cpu s  first ms',
  );
  for (const [name, cases] of sets) {
    let reached = 0;
    let proved = 0;
    let worst = 0;
    const cpu: number[] = [];
    let first = 0;
    let asGiven = 0;
    let rest = 0;
    const provenCases = cases.filter((one) => one.isProven).length;
    for (const one of cases) {
      const found = solve(one.question, seconds);
      const over = 100 * (found.changes / one.best - 1);
      if (found.isProven) proved++;
      if (one.isProven && found.changes < one.best) throw new Error('below a proven optimum');
      if (one.isProven) {
        reached += found.changes === one.best ? 1 : 0;
        worst = Math.max(worst, over);
        asGiven += (100 * (given(one.question) / one.best - 1)) / provenCases;
      } else rest += found.changes - one.best;
      cpu.push(found.seconds);
      first = Math.max(first, firstAnswerMs(one.question));
    }
    console.log(
      `${name.padEnd(10)} ${cases.length}  ${provenCases}  ${reached}  ${proved}  ${worst.toFixed(2)}  ${asGiven.toFixed(1)}  ${rest}  ${(median(cpu) ?? 0).toFixed(2)}  ${Math.max(...cpu).toFixed(2)}  ${first.toFixed(1)}`,
    );
  }
}

const only = option('only');
const secondsList = (option('seconds') ?? '1,3').split(',').map(Number);
if (only !== 'published') await wide(2);
if (only !== 'wide') for (const seconds of secondsList) published(seconds);
