// Which reels of a running line outlast their floor life.

import { expect, test } from 'vitest';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { lineOutlook } from '../../../../shared/outlook/line.ts';
import { lifeEnds } from '../../../../src/app/outlook/life-ends.ts';
import {
  beginStory,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
} from '../../../shared/floor/story.ts';
import { comeBack } from '../../../shared/verdict/gone-story.ts';

const hourMs = 3_600_000;

function endsAfter(hours: number, panelsWanted: number) {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted, panelSeconds: 60 }));
  const load = (slot: string, reel: string) =>
    story.tell(
      'reel.verified',
      verified(slot, slot === 'M1-F-001' ? 'R-100' : 'U-300', { reel, quantity: 30_000, run: 'run-1' }),
      { at: 60 },
    );
  load('M1-F-001', 'K1');
  load('M1-F-010', 'K2');
  // Only its label states a level.
  story.tell(
    'reel.aired',
    {
      reel: 'K1',
      part: 'R-100',
      supplierPart: null,
      quantity: null,
      lot: null,
      dateCode: null,
      air: 'floor',
      from: new Date(startMs + 60_000).toISOString(),
      celsius: null,
      humidity: null,
      msl: '3',
      via: 'wedge',
    },
    { at: 60 },
  );
  story.tell('panels.counted', counted('run-1', 1), { at: 120 });
  return endsAt(story, hours);
}

function endsAt(story: Story, hours: number) {
  const floor = story.floor();
  const nowMs = startMs + hours * hourMs;
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  if (!outlook) throw new TypeError('Cannot go on as the line must run');
  return lifeEnds(floor, outlook);
}

test('a reel that lasts 250 h with 168 h of floor life is named with both moments; one without a level never', () => {
  const [end, ...more] = endsAfter(0.1, 50_000);
  expect(more).toEqual([]);
  expect(end).toMatchObject({ slot: 'M1-F-001', reel: 'K1', isOver: false });
  expect(end?.endsMs).toBe(startMs + 60_000 + 168 * hourMs);
  expect(((end?.lastsMs ?? 0) - startMs) / hourMs).toBeCloseTo(250, -1);
});

test('an alternate ends by its own package, though the slot’s own part has no limit', () => {
  const story = beginStory();
  tellPlant(story);
  const body = { bodyMm: 0.9, bodyXMm: 4, bodyYMm: 4, isStacked: false };
  story.tell('part.described', { part: 'C-201', family: 'qfn', pins: 24, msl: '3', source: '', ...body });
  story.tell('run.started', started('run-1', { panelsWanted: 50_000, panelSeconds: 60 }));
  const facts = { reel: 'K1', quantity: 30_000, run: 'run-1' };
  story.tell('reel.verified', verified('M1-F-002', 'C-201', facts), { at: 60 });
  story.tell('panels.counted', counted('run-1', 1), { at: 120 });
  const [end] = endsAt(story, 1);
  expect(end).toMatchObject({ slot: 'M1-F-002', reel: 'K1', part: 'C-201', isOver: false });
  expect(end?.endsMs).toBe(startMs + 60_000 + 168 * hourMs);
});

test('a run that ends before says nothing', () => {
  expect(endsAfter(0.1, 600)).toEqual([]);
});

test('once it is over it is said, whatever the run has left', () => {
  expect(endsAfter(170, 600)).toMatchObject([{ slot: 'M1-F-001', isOver: true }]);
});

test('one that was used up long ago is over since it was put on; baked before, it ends as any other', () => {
  const putOn = 40 * 24 + 30;
  const over = { slot: 'M1-F-001', reel: 'K1', isOver: true };
  const unbaked = comeBack({ isBaked: false });
  expect(endsAt(unbaked, putOn + 1)).toMatchObject([{ ...over, endsMs: startMs + putOn * hourMs }]);
  const baked = comeBack({ isBaked: true });
  expect(endsAt(baked, putOn + 1)).toMatchObject([]);
  expect(endsAt(baked, putOn + 169)).toMatchObject([{ ...over, endsMs: startMs + (putOn + 168) * hourMs }]);
});
