// The server's side of the trace process: starts it, tells it of appends, asks it, and starts another where it ends.

import { type ChildProcess, fork } from 'node:child_process';
import type { StoreChoice } from '../stores/open.ts';
import type { Store } from '../stores/store.ts';
import type { PanelAnswer, TraceAnswer } from './answer.ts';
import type { TraceDesk } from './desk.ts';
import { hearFault } from './faults.ts';
import { type FromChild, type ToChild, traceRole } from './protocol.ts';

/** Least time between two words of appends, ms. */
const PACE_MS = 500;
/** How long after its end another process is started, ms. */
const AGAIN_MS = 5_000;

export interface RemoteParts {
  /** The program that plays the role, e.g. the command line's own file. */
  readonly program: string;
  /** Where the store is. */
  readonly place: Pick<StoreChoice, 'folder' | 'database'> & { readonly months: string | null };
  readonly store: Pick<Store, 'watch'>;
  readonly onFault: (error: Error) => void;
}

/** The trace process does not run just now. */
export class TraceAway extends Error {}

interface Waiting {
  readonly resolve: (answer: TraceAnswer | PanelAnswer | null) => void;
  readonly reject: (error: Error) => void;
}

/** Starts the process. */
export function createRemoteDesk({ program, place, store, onFault }: RemoteParts): TraceDesk {
  const waiting = new Map<number, Waiting>();
  let child: ChildProcess | null = null;
  let isStopped = false;
  let asked = 0;
  let telling: NodeJS.Timeout | null = null;
  let again: NodeJS.Timeout | null = null;

  const hear = (message: FromChild) => {
    if (message.id === null) return onFault(hearFault(message.fault));
    const one = waiting.get(message.id);
    waiting.delete(message.id);
    if ('fault' in message) one?.reject(hearFault(message.fault));
    else one?.resolve(message.answer);
  };

  const start = () => {
    again = null;
    const started = fork(program, [traceRole], {
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
      execArgv: [],
    });
    child = started;
    started.on('message', hear);
    started.on('error', onFault);
    started.once('exit', (code) => {
      child = null;
      for (const one of waiting.values()) one.reject(new TraceAway('the trace process ended'));
      waiting.clear();
      if (isStopped) return;
      onFault(new Error(`the trace process ended with ${code}; another is started`));
      again = setTimeout(start, AGAIN_MS);
      again.unref();
    });
    say({ say: 'open', ...place });
  };

  const say = (message: ToChild) => {
    if (child?.connected) child.send(message, () => undefined); // its end is told by `exit`
  };

  const ask = (make: (id: number) => ToChild) =>
    new Promise<TraceAnswer | PanelAnswer | null>((resolve, reject) => {
      if (!child) return reject(new TraceAway('the trace process is being started'));
      asked += 1;
      waiting.set(asked, { resolve, reject });
      say(make(asked));
    });

  const unwatch = store.watch((signal) => {
    if (signal.kind !== 'appended' || telling) return;
    telling = setTimeout(() => {
      telling = null;
      say({ say: 'appended' });
    }, PACE_MS);
    telling.unref();
  });
  start();

  return {
    // Each question has its own kind of answer.
    places: async (question) => (await ask((id) => ({ say: 'places', id, question }))) as TraceAnswer,
    panel: async (panel, run) =>
      (await ask((id) => ({ say: 'panel', id, panel, run: run ?? null }))) as PanelAnswer,
    caughtUp: async () => void (await ask((id) => ({ say: 'caught-up', id }))),
    stop: async () => {
      isStopped = true;
      unwatch();
      for (const timer of [telling, again]) if (timer) clearTimeout(timer);
      const ending = child;
      if (!ending) return;
      const over = new Promise<void>((resolve) => ending.once('exit', () => resolve()));
      // What it has not kept is made again; a transaction is kept whole or not at all.
      ending.kill('SIGKILL');
      await over;
    },
  };
}
