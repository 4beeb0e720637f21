// A shift that cannot be played on, or kept: told once, and what was told before is served on. Hours that nobody asked for come in steps.

import Fastify from 'fastify';
import { expect, test, vi } from 'vitest';
import type { Playing } from '../../demo/playing.ts';
import { addDemoRoutes } from '../../demo/routes.ts';
import { emptyState } from '../../shared/floor/state.ts';

function playingBy(tell: Playing['tell']): Playing {
  return { told: [], state: emptyState(), plantMs: (realMs) => realMs, speed: 2, openedMs: 0, tell };
}

test('a play that breaks is told once and ends nothing', async () => {
  const app = Fastify();
  const failed = vi.spyOn(app.log, 'error');
  const tell = vi.fn(() => {
    throw new RangeError('no such reel');
  });
  const demo = { playing: playingBy(tell), appRoot: '', nowMs: () => 0, onTold: async () => undefined };
  addDemoRoutes(app as never, { ...demo, live: true });
  for (let times = 0; times < 2; times += 1) {
    const answer = await app.inject('/demo/log.ndjson');
    expect([answer.statusCode, answer.body]).toEqual([200, '']);
  }
  expect(tell).toHaveBeenCalledTimes(1);
  expect(failed).toHaveBeenCalledTimes(1);
  await app.close();
});

test('hours that nobody asked for are played in steps, and others are served in between', async () => {
  const app = Fastify();
  const turns: string[] = [];
  const tell = vi.fn((realMs: number) => {
    turns.push(`told ${realMs}`);
    setImmediate(() => turns.push('others'));
    return [];
  });
  const demo = { playing: playingBy(tell), appRoot: '', nowMs: () => 700_000, onTold: async () => undefined };
  addDemoRoutes(app as never, { ...demo, live: false });
  await app.inject('/demo/log.ndjson');
  expect(turns.slice(0, 5)).toEqual(['told 300000', 'others', 'told 600000', 'others', 'told 700000']);
  await app.close();
});
