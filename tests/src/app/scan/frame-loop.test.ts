import { describe, expect, it } from 'vitest';
import type { DecodeAnswer } from '../../../../src/app/scan/decoder.ts';
import { runFrameLoop } from '../../../../src/app/scan/frame-loop.ts';

const nothing: DecodeAnswer = { codes: [], width: 10, height: 10, spentMs: 1 };

/** A clock and a timer that only move when told to. */
function createStage(lookMs: number, look: () => Promise<DecodeAnswer | null> = async () => nothing) {
  let nowMs = 0;
  let inFlight = 0;
  let mostInFlight = 0;
  const starts: number[] = [];
  const events: string[] = [];
  let pending: { readonly atMs: number; readonly then: () => void } | null = null;
  const parts = {
    look: async () => {
      starts.push(nowMs);
      inFlight += 1;
      mostInFlight = Math.max(mostInFlight, inFlight);
      nowMs += lookMs;
      try {
        return await look();
      } finally {
        inFlight -= 1;
      }
    },
    tell: () => false,
    onIdle: () => events.push('idle'),
    onTrouble: (reason: unknown) => events.push(`trouble ${String(reason)}`),
    nowMs: () => nowMs,
    after: (ms: number, then: () => void) => {
      pending = { atMs: nowMs + ms, then };
      return () => {
        pending = null;
      };
    },
  };
  async function runUntil(ms: number) {
    for (let turns = 0; turns < 2000; turns++) {
      await new Promise((resolve) => setImmediate(resolve));
      if (pending === null || pending.atMs > ms) return;
      const { atMs, then } = pending;
      pending = null;
      nowMs = atMs;
      then();
    }
  }
  return { parts, starts, events, runUntil, most: () => mostInFlight };
}

describe('runFrameLoop()', () => {
  it('keeps the beat when looks are short, and one frame in flight', async () => {
    const stage = createStage(20);
    runFrameLoop({ ...stage.parts, beatMs: 140 });
    await stage.runUntil(700);
    expect(stage.starts).toEqual([0, 140, 280, 420, 560, 700]);
    expect(stage.most()).toBe(1);
  });

  it('does not pile up when looks take longer than the beat', async () => {
    const stage = createStage(400);
    runFrameLoop({ ...stage.parts, beatMs: 140 });
    await stage.runUntil(1300);
    expect(stage.starts).toEqual([0, 400, 800, 1200]);
  });

  it('stops by itself after 30 s without anything new', async () => {
    const stage = createStage(20);
    runFrameLoop(stage.parts);
    await stage.runUntil(60_000);
    expect(stage.events).toEqual(['idle']);
    expect(stage.starts.at(-1)).toBeLessThanOrEqual(30_000 + 140);
    expect(stage.starts.at(-1)).toBeGreaterThan(29_500);
  });

  it('stays on while something new comes', async () => {
    const stage = createStage(20);
    let told = 0;
    runFrameLoop({ ...stage.parts, idleMs: 1000, tell: () => ++told < 20 });
    await stage.runUntil(20_000);
    expect(stage.events).toEqual(['idle']);
    expect(stage.starts.length).toBeGreaterThan(25);
  });

  it('goes on after a hiccup and reports trouble after five failures in a row', async () => {
    let calls = 0;
    const stage = createStage(20, async () => {
      calls += 1;
      if (calls > 3) throw new Error('no picture');
      return nothing;
    });
    runFrameLoop(stage.parts);
    await stage.runUntil(5000);
    expect([calls, stage.events]).toEqual([8, ['trouble Error: no picture']]);
  });

  it('tells nothing after it was stopped', async () => {
    const stage = createStage(20);
    let told = 0;
    const stop = runFrameLoop({ ...stage.parts, tell: () => ++told > 0 });
    stop();
    await stage.runUntil(5000);
    expect(told).toBe(0);
  });
});
