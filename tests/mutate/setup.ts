// In the tests' own process: which bodies each test comes by, and the end of a loop that a fault made endless.

import fastCheck from 'fast-check';
import { afterEach, beforeEach, inject } from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** Turns of loops that one test may take. */
    mutateTurns: number;
    /** How many bodies the first run marks; 0 afterwards. */
    mutateMarks: number;
  }
  interface TaskMeta {
    /** Numbers of bodies that a test came by, those that ran as files were read among them. */
    reached?: readonly number[];
    /** Those of them that ran outside the test: as files were read, or before all tests of a suite. */
    outside?: readonly number[];
    turns?: number;
  }
}

const own = globalThis as unknown as {
  __fault: number;
  __reach?: (body: number) => void;
  __turn?: () => void;
  __afresh?: () => void;
  __WeakMap?: unknown;
  /** Counts on over all files: modules stay while this one is read anew for each. */
  __run?: number;
};
const most = inject('mutateTurns');
let turns = 0;
own.__fault = 0;
own.__run ??= 0;
own.__afresh = () => {
  turns = 0;
  own.__run = (own.__run ?? 0) + 1;
};
/** Forgets what was kept in runs of a test before this one. */
class ForgettingMap<K extends WeakKey, V> {
  #kept = new WeakMap<K, V>();
  #run = own.__run;
  #now(): WeakMap<K, V> {
    if (this.#run !== own.__run) this.#kept = new WeakMap();
    this.#run = own.__run;
    return this.#kept;
  }
  get = (key: K) => this.#now().get(key);
  has = (key: K) => this.#now().has(key);
  delete = (key: K) => this.#now().delete(key);
  set = (key: K, value: V) => {
    this.#now().set(key, value);
    return this;
  };
}
own.__WeakMap ??= ForgettingMap;
own.__turn = () => {
  turns += 1;
  if (turns > most) throw new Error(`more than ${most} turns: endless`);
};

// One counterexample is enough; a smaller one is looked for by people only.
fastCheck.configureGlobal({ ...fastCheck.readConfigureGlobal(), endOnFailure: true });

const bodies = inject('mutateMarks');
if (bodies > 0) {
  /** 1 for a body that was come by outside tests (as files are read, or before all tests of a suite), and for one of the test. */
  const outside = new Uint8Array(bodies);
  const within = new Uint8Array(bodies);
  let marks = outside;
  own.__reach = (body) => {
    marks[body] = 1;
  };
  beforeEach(() => {
    marks = within.fill(0);
  });
  afterEach(({ task }) => {
    task.meta.reached = [...within.keys()].filter((body) => within[body] === 1 || outside[body] === 1);
    task.meta.outside = [...outside.keys()].filter((body) => outside[body] === 1);
    task.meta.turns = turns;
    marks = outside;
  });
}
beforeEach(() => {
  turns = 0;
});
