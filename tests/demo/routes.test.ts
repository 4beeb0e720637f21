// A shift that cannot be played on, or kept: told once, and what was told before is served on.

import Fastify from 'fastify';
import { expect, test, vi } from 'vitest';
import type { Playing } from '../../demo/playing.ts';
import { addDemoRoutes } from '../../demo/routes.ts';
import { emptyState } from '../../shared/floor/state.ts';

test('a play that breaks is told once and ends nothing', async () => {
  const app = Fastify();
  const failed = vi.spyOn(app.log, 'error');
  const tell = vi.fn(() => {
    throw new RangeError('no such reel');
  });
  const playing: Playing = {
    told: [],
    state: emptyState(),
    plantMs: (realMs) => realMs,
    speed: 1,
    openedMs: 0,
    tell,
  };
  const onTold = async () => undefined;
  addDemoRoutes(app as never, { playing, appRoot: '', nowMs: () => 0, onTold, live: true });
  for (let times = 0; times < 2; times += 1) {
    const answer = await app.inject('/demo/log.ndjson');
    expect([answer.statusCode, answer.body]).toEqual([200, '']);
  }
  expect(tell).toHaveBeenCalledTimes(1);
  expect(failed).toHaveBeenCalledTimes(1);
  await app.close();
});
