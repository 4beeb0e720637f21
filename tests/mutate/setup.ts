// In the tests' own process: which bodies each test comes by, and the end of a loop that a fault made endless.

import fastCheck from 'fast-check';
import { afterEach, beforeEach, inject } from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** Turns of loops that one test may take. */
    mutateTurns: number;
    /** The first run marks who comes by where. */
    mutateMarks: boolean;
  }
  interface TaskMeta {
    /** Numbers of bodies that a test came by, those that ran as files were read among them. */
    reached?: readonly number[];
    turns?: number;
  }
}

const own = globalThis as unknown as { __reached?: Set<number>; __turn?: () => void };
const most = inject('mutateTurns');
let turns = 0;
own.__turn = () => {
  turns += 1;
  if (turns > most) throw new Error(`more than ${most} turns: endless`);
};

// One counterexample is enough; a smaller one is looked for by people only.
fastCheck.configureGlobal({ ...fastCheck.readConfigureGlobal(), endOnFailure: true });

if (inject('mutateMarks')) {
  own.__reached ??= new Set();
  const outside = own.__reached;
  let before: readonly number[] = [...outside];
  beforeEach(() => {
    before = [...new Set([...before, ...outside])];
    outside.clear();
  });
  afterEach(({ task }) => {
    task.meta.reached = [...new Set([...before, ...outside])];
    task.meta.turns = turns;
    outside.clear();
  });
}
beforeEach(() => {
  turns = 0;
});
