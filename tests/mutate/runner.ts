// One warm test runner for all faults of a room. Method: a first run learns which tests come by which functions; then all faults lie in the
// files at once and each test is run for each of its faults in one process (many.ts); what lives there is tried alone, in a process of its own.
// Refused: a process for every fault, which costs a second each on a quiet machine.

import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { createVitest, type Reporter, type TestSpecification, type Vitest } from 'vitest/node';
import { projectRoot, type SourceFile } from '../source-scan.ts';
import type { Mutant } from './mutants.ts';
import { armed, bodiesOf, bodyAt, counted, forgetting, marked, planted } from './plant.ts';

/** One test and what it comes by. */
interface Test {
  readonly file: string;
  readonly id: string;
  readonly ms: number;
  readonly reached: ReadonlySet<number>;
  /** What ran as files were read, or before all tests of a suite: it cannot be repeated with another fault. */
  readonly outside: ReadonlySet<number>;
}

/** Turns that a test may take beyond what the longest of the unharmed ones did. */
const MORE_TURNS = 10;
const SPARE_TURNS = 1_000_000;
/** A test that takes longer than this with one fault is stuck where no turn is counted. */
const STUCK_MS = 90_000;
const LOOK_MS = 5_000;
/** What a test may take unharmed on a machine that others keep busy; with a fault `STUCK_MS` ends it sooner. */
const PATIENCE_MS = 600_000;
const AT_FIRST_TURNS = 10_000_000_000;

/** The tests of one room, ready to be asked. */
export interface Runner {
  /** Those of the faults that a test sees. */
  tryAll(faults: readonly Mutant[]): Promise<ReadonlySet<Mutant>>;
  close(): Promise<void>;
}

/** What the tests' process writes down, since it may have to be ended. */
const scratch = path.join(projectRoot, '.tmp', 'mutate-found');

const absolute = (file: string) => path.join(projectRoot, file);

/** What the runner is to read in a file's place. */
interface Planting {
  isMarking: boolean;
  /** One fault alone, as if it were written. */
  fault: Mutant | null;
  /** Many faults, each with its number. */
  faults: ReadonlyMap<Mutant, number>;
}

function plugin(files: ReadonlyMap<string, SourceFile>, first: ReadonlyMap<string, number>, now: Planting) {
  const textOf = (relative: string, code: string): string | null => {
    const file = files.get(relative);
    if (!file)
      return /^(shared|src)\/.*\.tsx?$/.test(relative) ? counted({ path: relative, source: code }) : null;
    if (now.isMarking) return marked(file, first.get(relative)!);
    if (now.fault?.path === relative) return planted(file, now.fault.edits);
    const here = [...now.faults].filter(([mutant]) => mutant.path === relative);
    return here.length > 0 ? armed(file, new Map(here)) : counted(file);
  };
  return {
    name: 'plant-faults',
    enforce: 'pre' as const,
    transform(code: string, id: string) {
      const relative = path.relative(projectRoot, id.split('?')[0]!).replaceAll('\\', '/');
      const text = textOf(relative, code);
      return text !== null && relative.startsWith('shared/') ? forgetting(text) : text;
    },
  };
}

/** What failed in the run that goes on: a runner's own memory keeps what failed in runs before. */
const failures: string[] = [];
const reporter: Reporter = {
  onTestCaseResult(test) {
    if (test.result().state === 'failed')
      failures.push(`${test.fullName}: ${test.result().errors?.[0]?.message}`);
  },
  onTestModuleEnd(module) {
    for (const error of module.errors()) failures.push(`${module.moduleId}: ${error.message}`);
  },
  onTestSuiteResult(suite) {
    for (const error of suite.errors()) failures.push(`${suite.fullName}: ${error.message}`);
  },
  onTestRunEnd(_, errors) {
    for (const error of errors) failures.push(error.message);
  },
};

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
 * `files`: what faults will be planted in; `tests`: folders; `longestMs`: tests that take longer unharmed are not asked.
 */
export async function startRunner(
  files: readonly SourceFile[],
  tests: readonly string[],
  longestMs: number,
): Promise<Runner> {
  const bodies = new Map(files.map((file) => [file.path, bodiesOf(file)]));
  const first = new Map<string, number>();
  let next = 0;
  for (const { path: name } of files) {
    first.set(name, next);
    next += bodies.get(name)!.length;
  }
  const now: Planting = { isMarking: true, fault: null, faults: new Map() };
  const vitest = await createVitest(
    'test',
    {
      root: projectRoot,
      config: false,
      watch: false,
      silent: true,
      include: tests.flatMap((folder) => [`${folder}/**/*.test.ts`, `${folder}/**/*.test.tsx`]),
      setupFiles: ['tests/mutate/setup.ts', 'tests/src/app/every-word.ts'],
      runner: 'tests/mutate/many.ts',
      pool: 'threads',
      isolate: false,
      maxWorkers: 1,
      testTimeout: PATIENCE_MS,
      hookTimeout: PATIENCE_MS,
      reporters: [reporter],
      sequence: { sequencer: AsGiven },
      provide: {
        mutateTurns: AT_FIRST_TURNS,
        mutateMarks: next,
        mutateAsked: null,
        mutateFound: scratch,
      },
    },
    { plugins: [plugin(new Map(files.map((file) => [file.path, file])), first, now)] },
  );
  const { known, turns } = await firstRun(vitest);
  now.isMarking = false;
  for (const file of files) vitest.invalidateFile(absolute(file.path));
  vitest.provide('mutateTurns', turns * MORE_TURNS + SPARE_TURNS);
  vitest.provide('mutateMarks', 0);

  const changed = (mutants: Iterable<Mutant>) => {
    for (const { path: file } of mutants) vitest.invalidateFile(absolute(file));
  };
  const bodyOf = ({ path: file, at }: Mutant) => bodyAt(bodies.get(file)!, at);
  const askedOf = (mutant: Mutant, where: 'reached' | 'outside' = 'reached') => {
    const body = first.get(mutant.path)! + bodyOf(mutant);
    return known.filter((test) => test.ms <= longestMs && test[where].has(body));
  };
  /** What is decided as a file is read shows in tests of its functions before it does in others. */
  const isNear = ({ path: file }: Mutant, { reached }: Test) =>
    bodies.get(file)!.some((_, at) => at > 0 && reached.has(first.get(file)! + at));
  const isSeenAlone = async (mutant: Mutant) => {
    const asked = askedOf(mutant, 'outside');
    const near = asked.filter((test) => isNear(mutant, test));
    const far = asked.filter((test) => !isNear(mutant, test));
    now.fault = mutant;
    changed([mutant]);
    const isSeen =
      (near.length > 0 && (await anyFails(vitest, near))) ||
      (far.length > 0 && (await anyFails(vitest, far)));
    now.fault = null;
    changed([mutant]);
    return isSeen;
  };

  return {
    async tryAll(faults) {
      const within = faults.filter((mutant) => bodyOf(mutant) > 0);
      now.faults = new Map(within.map((mutant, at) => [mutant, at + 1]));
      changed(faults);
      const killed = await together(vitest, now.faults, askedOf);
      now.faults = new Map();
      changed(faults);
      // What is decided as files are read is only seen in a process of its own.
      for (const mutant of faults) if (!killed.has(mutant) && (await isSeenAlone(mutant))) killed.add(mutant);
      return killed;
    },
    close: () => vitest.close(),
  };
}

/** Tries all faults in one process, in those tests that come by them; begins again without a fault at which it stuck. */
async function together(
  vitest: Vitest,
  faults: ReadonlyMap<Mutant, number>,
  askedOf: (mutant: Mutant) => readonly Test[],
): Promise<Set<Mutant>> {
  const killed = new Set<number>();
  for (;;) {
    const asked: Record<string, number[]> = {};
    const tests = new Map<string, Test>();
    for (const [mutant, number] of faults) {
      if (killed.has(number)) continue;
      for (const test of askedOf(mutant)) {
        tests.set(test.id, test);
        asked[test.id] = [...(asked[test.id] ?? []), number];
      }
    }
    rmSync(scratch, { recursive: true, force: true });
    mkdirSync(scratch, { recursive: true });
    vitest.provide('mutateAsked', asked);
    const watch = watchFor(vitest);
    failures.length = 0;
    await vitest.runTestSpecifications(specificationsOf(vitest, [...tests.values()]));
    const stuckAt = watch();
    vitest.provide('mutateAsked', null);
    for (const line of readLines('killed')) killed.add(Number(line));
    if (stuckAt !== null) killed.add(stuckAt);
    else return new Set([...faults].flatMap(([mutant, number]) => (killed.has(number) ? [mutant] : [])));
  }
}

/** Ends a run that stays at one fault for too long; what it gives back ends the watch and answers with that fault's number, or null. */
function watchFor(vitest: Vitest): () => number | null {
  let last = '';
  let sinceMs = Date.now();
  let stuckAt: number | null = null;
  const timer = setInterval(() => {
    const [line = ''] = readLines('now');
    if (line !== last) sinceMs = Date.now();
    last = line;
    if (line === '' || Date.now() - sinceMs < STUCK_MS || stuckAt !== null) return;
    stuckAt = Number(line.split(' ')[0]);
    end(vitest);
  }, LOOK_MS);
  return () => {
    clearInterval(timer);
    return stuckAt;
  };
}

function end(vitest: Vitest): void {
  // The first call asks, the second ends the process.
  for (let call = 0; call < 2; call += 1) void vitest.cancelCurrentRun('test-failure').catch(() => undefined);
}

function readLines(name: string): readonly string[] {
  const file = path.join(scratch, name);
  return existsSync(file)
    ? readFileSync(file, 'utf8')
        .split('\n')
        .filter((line) => line !== '')
    : [];
}

/** Each file in a process of its own, so that what is read as it begins is seen as read by it. */
async function firstRun(
  vitest: Vitest,
): Promise<{ readonly known: readonly Test[]; readonly turns: number }> {
  const known: Test[] = [];
  let turns = 0;
  failures.length = 0;
  for (const specification of await vitest.globTestSpecifications()) {
    const { testModules } = await vitest.runTestSpecifications([specification]);
    if (failures.length > 0) throw new Error(`fails without a fault: ${failures.join('; ')}`);
    const own = testModules.filter(({ moduleId }) => moduleId === specification.moduleId);
    for (const test of own.flatMap((module) => [...module.children.allTests()])) {
      const { reached = [], outside = [], turns: taken = 0 } = test.meta();
      const ms = test.diagnostic()?.duration ?? 0;
      known.push({
        file: specification.moduleId,
        id: test.id,
        ms,
        reached: new Set(reached),
        outside: new Set(outside),
      });
      turns = Math.max(turns, taken);
    }
  }
  return { known, turns };
}

/** True as soon as one of the tests fails, cannot begin, or does not come to an end. */
async function anyFails(vitest: Vitest, tests: readonly Test[]): Promise<boolean> {
  let isStuck = false;
  const watch = setTimeout(() => {
    isStuck = true;
    end(vitest);
  }, STUCK_MS);
  vitest.config.bail = 1;
  failures.length = 0;
  try {
    await vitest.runTestSpecifications(specificationsOf(vitest, tests));
    return isStuck || failures.length > 0;
  } finally {
    vitest.config.bail = 0;
    clearTimeout(watch);
  }
}

/** These tests file by file, the quickest first. */
function specificationsOf(vitest: Vitest, tests: readonly Test[]): TestSpecification[] {
  const byFile = grouped(tests);
  const costOf = (file: string) => byFile.get(file)!.reduce((sum, { ms }) => sum + ms, 0);
  const project = vitest.getRootProject();
  return [...byFile.keys()]
    .sort((a, b) => costOf(a) - costOf(b))
    .map((file) => project.createSpecification(file, { testIds: byFile.get(file)!.map(({ id }) => id) }));
}

function grouped(tests: readonly Test[]): Map<string, Test[]> {
  const found = new Map<string, Test[]>();
  for (const test of tests) found.set(test.file, [...(found.get(test.file) ?? []), test]);
  return found;
}
