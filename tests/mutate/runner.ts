// One warm test runner for all faults: it reads each file once and afterwards only the one that changed, and asks only the tests that
// come by the fault, the quickest first, until one fails.

import path from 'node:path';
import { createVitest, type Reporter, type TestSpecification, type Vitest } from 'vitest/node';
import { projectRoot, type SourceFile } from '../source-scan.ts';
import type { Mutant } from './mutants.ts';
import { bodiesOf, bodyAt, counted, marked, planted } from './plant.ts';

/** One test and what it comes by. */
interface Test {
  readonly file: string;
  readonly id: string;
  readonly ms: number;
  readonly reached: ReadonlySet<number>;
}

/** What became of a fault. */
export type Fate = 'killed' | 'not-reached' | 'lived';

/** Turns that a test may take beyond what the longest of the unharmed ones did. */
const MORE_TURNS = 10;
const SPARE_TURNS = 1_000_000;
/** A run that takes longer than this is stuck where no turn is counted. */
const STUCK_MS = 120_000;
const AT_FIRST_TURNS = 10_000_000_000;

/** The tests of one room, ready to be asked. */
export interface Runner {
  try(mutant: Mutant): Promise<Fate>;
  close(): Promise<void>;
}

const absolute = (file: string) => path.join(projectRoot, file);

/** What the runner is to read in a file's place; the file as it is for null. */
interface Planting {
  isMarking: boolean;
  fault: Mutant | null;
}

function plugin(files: ReadonlyMap<string, SourceFile>, first: ReadonlyMap<string, number>, now: Planting) {
  return {
    name: 'plant-faults',
    enforce: 'pre' as const,
    transform(code: string, id: string) {
      const relative = path.relative(projectRoot, id.split('?')[0]!).replaceAll('\\', '/');
      const file = files.get(relative);
      if (!file)
        return /^(shared|src)\/.*\.tsx?$/.test(relative) ? counted({ path: relative, source: code }) : null;
      if (now.fault?.path === relative) return planted(file, now.fault.edits);
      return now.isMarking ? marked(file, first.get(relative)!) : counted(file);
    },
  };
}

/** As the specifications come: the quickest first. */
class AsGiven {
  sort(specifications: TestSpecification[]) {
    return specifications;
  }
  shard(specifications: TestSpecification[]) {
    return specifications;
  }
}

/**
 * Runs a room's tests once as they are and keeps what each comes by. Throws where one of them fails without a fault.
 * `files`: what faults will be planted in; `tests`: folders.
 */
export async function startRunner(files: readonly SourceFile[], tests: readonly string[]): Promise<Runner> {
  const bodies = new Map(files.map((file) => [file.path, bodiesOf(file)]));
  const first = new Map<string, number>();
  let next = 0;
  for (const { path: name } of files) {
    first.set(name, next);
    next += bodies.get(name)!.length;
  }
  const now: Planting = { isMarking: true, fault: null };
  const vitest = await createVitest(
    'test',
    {
      root: projectRoot,
      config: false,
      watch: false,
      silent: true,
      include: tests.flatMap((folder) => [`${folder}/**/*.test.ts`, `${folder}/**/*.test.tsx`]),
      setupFiles: ['tests/mutate/setup.ts', 'tests/src/app/every-word.ts'],
      pool: 'threads',
      isolate: false,
      maxWorkers: 1,
      bail: 1,
      testTimeout: 60_000,
      hookTimeout: 60_000,
      reporters: [{} as Reporter],
      sequence: { sequencer: AsGiven },
      provide: { mutateTurns: AT_FIRST_TURNS, mutateMarks: next },
    },
    { plugins: [plugin(new Map(files.map((file) => [file.path, file])), first, now)] },
  );
  const { known, turns } = await firstRun(vitest);
  now.isMarking = false;
  for (const file of files) vitest.invalidateFile(absolute(file.path));
  vitest.provide('mutateTurns', turns * MORE_TURNS + SPARE_TURNS);
  vitest.provide('mutateMarks', 0);

  return {
    async try(mutant) {
      const body = first.get(mutant.path)! + bodyAt(bodies.get(mutant.path)!, mutant.at);
      const asked = known.filter(({ reached }) => reached.has(body));
      if (asked.length === 0) return 'not-reached';
      now.fault = mutant;
      vitest.invalidateFile(absolute(mutant.path));
      const isKilled = await anyFails(vitest, asked);
      now.fault = null;
      vitest.invalidateFile(absolute(mutant.path));
      return isKilled ? 'killed' : 'lived';
    },
    close: () => vitest.close(),
  };
}

/** Each file in a process of its own, so that what is read as it begins is seen as read by it. */
async function firstRun(
  vitest: Vitest,
): Promise<{ readonly known: readonly Test[]; readonly turns: number }> {
  const known: Test[] = [];
  let turns = 0;
  for (const specification of await vitest.globTestSpecifications()) {
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications([specification]);
    for (const test of testModules.flatMap((module) => [...module.children.allTests()])) {
      if (test.result().state === 'failed')
        throw new Error(`${test.fullName} fails without a fault: ${test.result().errors?.[0]?.message}`);
      const { reached = [], turns: taken = 0 } = test.meta();
      const ms = test.diagnostic()?.duration ?? 0;
      known.push({ file: specification.moduleId, id: test.id, ms, reached: new Set(reached) });
      turns = Math.max(turns, taken);
    }
    const broken = testModules.find((module) => module.state() === 'failed');
    if (broken || unhandledErrors.length > 0)
      throw new Error(
        `${specification.moduleId} fails without a fault: ${broken?.errors()[0]?.message ?? unhandledErrors[0]}`,
      );
  }
  return { known, turns };
}

/** True as soon as one of the tests fails, cannot begin, or does not come to an end. */
async function anyFails(vitest: Vitest, tests: readonly Test[]): Promise<boolean> {
  const byFile = grouped(tests);
  const costOf = (file: string) => byFile.get(file)!.reduce((sum, { ms }) => sum + ms, 0);
  const project = vitest.getRootProject();
  const specifications = [...byFile.keys()]
    .sort((a, b) => costOf(a) - costOf(b))
    .map((file) => project.createSpecification(file, { testIds: byFile.get(file)!.map(({ id }) => id) }));
  let isStuck = false;
  const watch = setTimeout(() => {
    isStuck = true;
    // The first call asks, the second ends the process.
    void vitest.cancelCurrentRun('test-failure').catch(() => undefined);
    void vitest.cancelCurrentRun('test-failure').catch(() => undefined);
  }, STUCK_MS);
  try {
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specifications);
    return isStuck || unhandledErrors.length > 0 || testModules.some((module) => module.state() === 'failed');
  } finally {
    clearTimeout(watch);
  }
}

function grouped(tests: readonly Test[]): Map<string, Test[]> {
  const found = new Map<string, Test[]>();
  for (const test of tests) found.set(test.file, [...(found.get(test.file) ?? []), test]);
  return found;
}
