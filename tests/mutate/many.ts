// Runs each test once for every fault that it comes by, in one process: most faults die here, without a start of anything. What a test does
// is repeated as it stands, so after each fault seen it is asked without one too: where it fails then, it cannot be repeated, and says nothing.

import { setMaxListeners } from 'node:events';
import { appendFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { inject, type RunnerTestCase } from 'vitest';
import { VitestTestRunner } from 'vitest/runners';
import { getFn } from 'vitest/suite';

declare module 'vitest' {
  interface ProvidedContext {
    /** Test -> numbers of faults to be tried by it; null where no faults are. */
    mutateAsked: Readonly<Record<string, readonly number[]>> | null;
    /** Folder for what is found: `killed`, a line each; `now`, what is being tried. */
    mutateFound: string;
  }
}

// A test that is run often waits for its end by its limit as often.
setMaxListeners(0);

const own = globalThis as unknown as { __fault: number; __killed?: Set<number>; __afresh?: () => void };

/** Vitest's own runner, but for what it does with a test. */
export default class ManyRunner extends VitestTestRunner {
  async runTask(test: RunnerTestCase): Promise<void> {
    const run = getFn(test);
    const asked = inject('mutateAsked')?.[test.id];
    if (asked === undefined) {
      await run();
      return;
    }
    const folder = inject('mutateFound');
    own.__killed ??= new Set();
    for (const number of asked) {
      if (own.__killed.has(number)) continue;
      writeFileSync(path.join(folder, 'now'), `${number} ${test.id}`);
      if (!(await fails(run, number))) continue;
      if (await fails(run, 0)) return;
      own.__killed.add(number);
      appendFileSync(path.join(folder, 'killed'), `${number}\n`);
    }
  }
}

async function fails(run: () => unknown, fault: number): Promise<boolean> {
  own.__fault = fault;
  own.__afresh?.();
  try {
    await run();
    return false;
  } catch {
    return true;
  } finally {
    own.__fault = 0;
  }
}
