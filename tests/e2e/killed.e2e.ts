// A browser killed in the middle of work loses nothing that was shown as done. SIGKILL takes the processes, not the disk's own
// cache: what a pulled battery does beyond that, no test on one machine can show.

import { afterAll, beforeAll, expect, it } from 'vitest';
import { seededChance } from '../../shared/kit/chance.ts';
import { type RunningDemo, startDemo } from './support/demo.ts';
import { killAgainAndAgain } from './support/kills.ts';

const KILLS = 5;
let demo: RunningDemo;

beforeAll(async () => {
  demo = await startDemo();
});
afterAll(async () => {
  await demo?.stop();
});

it('keeps every acknowledged entry and a whole chain through kills at chance moments', async () => {
  const report = await killAgainAndAgain(demo.url, {
    kills: KILLS,
    mostActs: 24,
    chance: seededChance(20),
  });
  expect(report).toMatchObject({ kills: KILLS, lost: 0, whole: true });
  expect(report.acknowledged).toBeGreaterThan(KILLS);
});
