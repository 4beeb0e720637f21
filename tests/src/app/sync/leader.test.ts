// One window syncs at a time; the next takes over when it ends.

import { describe, expect, it } from 'vitest';
import { asLeader, type Locks } from '../../../../src/app/sync/leader.ts';

/** A lock manager as the browser's, for one name. */
function newLocks(): Locks {
  let held: Promise<unknown> = Promise.resolve();
  return {
    request: (_, { signal }, run) => {
      const turn = held.then(() => {
        if (signal.aborted) throw new DOMException('aborted', 'AbortError');
        return run();
      });
      held = turn.catch(() => undefined);
      return turn;
    },
  };
}

describe('`asLeader()`', () => {
  it('lets the second window in when the first ends', async () => {
    const locks = newLocks();
    const log: string[] = [];
    const first = new AbortController();
    const second = new AbortController();
    const run = (name: string, signal: AbortSignal) => () =>
      new Promise<void>((resolve) => {
        log.push(`${name} leads`);
        signal.addEventListener('abort', () => resolve());
      });
    const one = asLeader(locks, first.signal, run('first', first.signal));
    const two = asLeader(locks, second.signal, run('second', second.signal));
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(log).toEqual(['first leads']);
    first.abort();
    await one;
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(log).toEqual(['first leads', 'second leads']);
    second.abort();
    await two;
  });

  it('that is stopped while it waits never runs', async () => {
    const locks = newLocks();
    const first = new AbortController();
    const waiting = new AbortController();
    const one = asLeader(
      locks,
      first.signal,
      () => new Promise((resolve) => first.signal.addEventListener('abort', () => resolve())),
    );
    let ran = false;
    const two = asLeader(locks, waiting.signal, async () => {
      ran = true;
    });
    waiting.abort();
    first.abort();
    await Promise.all([one, two]);
    expect(ran).toBe(false);
  });

  it('runs at once where there is no lock manager', async () => {
    let ran = false;
    await asLeader(null, new AbortController().signal, async () => {
      ran = true;
    });
    expect(ran).toBe(true);
  });
});
