// What the verdict hears of a reel's floor life at the scan, and what it answers.

import { expect, test } from 'vitest';
import { verifyReel } from '../../../../shared/verdict/verify.ts';
import { floorLifeOf } from '../../../../src/app/desk/floor-life.ts';
import { beginStory, started, startMs, tellPlant } from '../../../shared/setup/story.ts';

const hourMs = 3_600_000;

function answerAfter(hours: number, quantity: number) {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 100_000, panelSeconds: 30 }));
  story.tell('reel.aired', {
    ...{ reel: 'K1', part: 'R-100', supplierPart: null, quantity, lot: null, dateCode: null, via: 'typed' },
    ...{ air: 'floor', from: new Date(startMs).toISOString(), celsius: null, humidity: null, msl: '3' },
  });
  const floor = story.floor();
  const reel = {
    ...{ reel: 'K1', part: 'R-100', supplierPart: null, quantity, lot: null, msl: null },
  };
  const asked = { act: 'load', line: 'L1', setup: 'brook-top-a', slot: 'M1-F-001', reel } as const;
  const nowMs = startMs + hours * hourMs;
  return verifyReel(floor, {
    ...{ ...asked, feeder: null, today: '2026-03-02', floorLife: floorLifeOf(floor, asked, nowMs) },
  });
}

test('with time enough nothing is said', () => {
  expect(answerAfter(1, 4000)).toMatchObject({ verdict: 'accepted', reasons: [] });
});

test('held where it ends before the reel does: 160 h gone, 8 h left, 2000 panels of 30 s need 16 h 40', () => {
  const { verdict, reasons } = answerAfter(160, 4000);
  expect(verdict).toBe('held');
  expect(reasons).toHaveLength(1);
  expect(reasons[0]).toMatchObject({ code: 'floor-life-short', leftSeconds: 8 * 3600 });
  expect(reasons[0]?.code === 'floor-life-short' && reasons[0].neededSeconds).toBeCloseTo(2000 * 30, 3);
});

test('refused once it is over', () => {
  expect(answerAfter(169, 100)).toMatchObject({ verdict: 'refused', reasons: [{ code: 'floor-life-over' }] });
});

test('a part that bears any time out of the bag has none', () => {
  const story = beginStory();
  tellPlant(story);
  const reel = { reel: 'K2', quantity: 10, msl: '1' };
  const asked = { act: 'load', line: 'L1', setup: 'brook-top-a', slot: 'M1-F-001', reel } as const;
  expect(floorLifeOf(story.floor(), asked, startMs)).toBeNull();
});
