// The pace of work that follows from many small events, under a clock that the test moves.

import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createPaced, type PacedParts } from '../../../src/server/paced.ts';

describe('`createPaced()`', () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  /** A runner of work that ends when the test says, and when each began, in ms from the test's start. */
  const runner = (parts: Partial<PacedParts> = {}) => {
    const startMs = performance.now();
    const begun: number[] = [];
    const faults: string[] = [];
    const ends: { readonly well: () => void; readonly broken: (error: Error) => void }[] = [];
    const paced = createPaced({
      work: () => {
        begun.push(performance.now() - startMs);
        return new Promise<void>((well, broken) => ends.push({ well, broken }));
      },
      onFault: (error) => faults.push(error.message),
      pauseMs: 100,
      latestMs: 450,
      ...parts,
    });
    return { paced, begun, faults, ends };
  };
  const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);

  it('begins nothing that was not asked for', async () => {
    const { begun } = runner();
    await pass(10_000);
    expect(begun).toEqual([]);
  });

  it('begins once, when nothing has come for the pause', async () => {
    const { paced, begun, ends } = runner();
    paced.ask();
    await pass(60);
    paced.ask();
    await pass(99);
    expect(begun).toEqual([]);
    await pass(1);
    expect(begun).toEqual([160]);
    ends[0]?.well();
    await pass(10_000);
    expect(begun).toEqual([160]);
  });

  it('begins at the latest so long after the first, though more comes all the time', async () => {
    const { paced, begun } = runner();
    for (let at = 0; at < 600; at += 50) {
      paced.ask();
      await pass(50);
    }
    expect(begun).toEqual([450]);
  });

  it('works one at a time: what is asked meanwhile waits for the end', async () => {
    const { paced, begun, ends } = runner();
    paced.ask();
    await pass(100);
    paced.ask();
    await pass(300);
    expect(begun).toEqual([100]);
    ends[0]?.well();
    await pass(99);
    expect(begun).toEqual([100]);
    await pass(1);
    expect(begun).toEqual([100, 500]);
  });

  it('begins soon after a long piece of work, for what has waited since', async () => {
    const { paced, begun, ends } = runner();
    paced.ask();
    await pass(100);
    paced.ask();
    await pass(440);
    ends[0]?.well();
    await pass(10);
    expect(begun).toEqual([100, 550]);
  });

  it('keeps two beginnings apart', async () => {
    const { paced, begun, ends } = runner({ pauseMs: 0, latestMs: 0, apartMs: 80 });
    paced.ask();
    await pass(0);
    ends[0]?.well();
    await pass(10);
    paced.ask();
    paced.ask();
    await pass(69);
    expect(begun).toEqual([0]);
    await pass(1);
    expect(begun).toEqual([0, 80]);
    ends[1]?.well();
    await pass(500);
    paced.ask();
    await pass(0);
    expect(begun).toEqual([0, 80, 580]);
  });

  it('works without a pause where it is told to, and resolves at the end', async () => {
    const { paced, begun, ends } = runner();
    paced.ask();
    let isOver = false;
    const over = paced.now().then((fault) => {
      isOver = true;
      return fault;
    });
    await pass(1_000);
    expect(begun).toEqual([0]);
    expect(isOver).toBe(false);
    ends[0]?.well();
    expect(await over).toBeNull();
    await pass(10_000);
    expect(begun, 'what was asked before is done with it').toEqual([0]);
  });

  it('told to work while it works, works once more before it resolves', async () => {
    const { paced, begun, ends } = runner();
    const first = paced.now();
    const second = paced.now();
    ends[0]?.well();
    await pass(0);
    expect(begun).toEqual([0, 0]);
    ends[1]?.well();
    expect(await Promise.all([first, second])).toEqual([null, null]);
    expect(begun).toEqual([0, 0]);
  });

  it('tells what broke the work off, and works again when asked', async () => {
    const { paced, begun, faults, ends } = runner();
    const over = paced.now();
    paced.ask();
    ends[0]?.broken(new Error('no disk'));
    expect((await over)?.message).toBe('no disk');
    expect(faults).toEqual(['no disk']);
    await pass(100);
    expect(begun).toEqual([0, 100]);
    ends[1]?.well();
    await pass(10_000);
    expect(begun).toEqual([0, 100]);
  });

  it('stops when the work in hand is over, and begins nothing after that', async () => {
    const { paced, begun, faults, ends } = runner();
    void paced.now();
    paced.ask();
    let isOver = false;
    const over = paced.stop().then(() => {
      isOver = true;
    });
    await pass(1_000);
    expect([isOver, paced.isStopped()]).toEqual([false, true]);
    ends[0]?.broken(new Error('closed'));
    await over;
    paced.ask();
    expect(await paced.now()).toBeNull();
    await pass(10_000);
    expect(begun).toEqual([0]);
    expect(faults, 'of no use to anybody any more').toEqual([]);
  });

  it('stops before the work that was asked for has begun', async () => {
    const { paced, begun } = runner();
    paced.ask();
    await paced.stop();
    await pass(10_000);
    expect(begun).toEqual([]);
  });
});
