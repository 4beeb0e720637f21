// A floor life in words: closed, running, paused, short, over, in the oven.

import { expect, test } from 'vitest';
import type { Air } from '../../../../shared/floor/vocabulary.ts';
import { unknownPackage } from '../../../../shared/moisture/package.ts';
import { reelLife } from '../../../../shared/moisture/reel-life.ts';
import { lifeGrounds } from '../../../../src/app/frame/life-grounds.ts';
import { lifeText } from '../../../../src/app/words/life-text.ts';
import { formatSpan } from '../../../../src/app/words/words.ts';
import { beginStory, startMs, tellPlant } from '../../../shared/floor/story.ts';

function textAt(hours: number, periods: readonly (readonly [Air, number])[]) {
  const story = beginStory();
  tellPlant(story);
  for (const [air, hour] of periods) {
    story.tell(
      'reel.aired',
      {
        reel: 'K1',
        part: 'U-1',
        supplierPart: null,
        quantity: 9,
        lot: null,
        dateCode: null,
        msl: '3',
        air,
        from: new Date(startMs + hour * 3_600_000).toISOString(),
        via: 'typed',
        celsius: air === 'bake' ? 125 : null,
        humidity: air === 'dry' ? 5 : null,
      },
      { at: hour * 3600 },
    );
  }
  const floor = story.floor();
  const qfn = { ...unknownPackage, family: 'qfn' as const };
  const part = { level: '3', bodyMm: 1, package: qfn } as const;
  const life = reelLife(floor, 'K1', { line: 'L1', part, nowMs: startMs + hours * 3_600_000 });
  if (life === null) throw new TypeError('Cannot go on as level 3 has a limit');
  return lifeText(life, floor.exposures.get('K1'), 'UTC');
}

test('says what is left, and until when', () => {
  expect(textAt(0, [])).toEqual({
    text: 'MSL 3 · not opened yet: 168\u00a0h\u00a000 of floor life',
    tone: null,
  });
  expect(textAt(20, [['floor', 0]])).toEqual({
    text: 'MSL 3 · 148\u00a0h\u00a000 of floor life left, until 9 Mar, 06:00',
    tone: null,
  });
  const stored = textAt(30, [
    ['floor', 0],
    ['dry', 20],
  ]);
  expect(stored).toEqual({
    text: 'MSL 3 · 148\u00a0h\u00a000 of floor life left, in dry storage',
    tone: null,
  });
});

test('wants an eye where little is left or nothing', () => {
  expect(textAt(160, [['floor', 0]])).toMatchObject({ tone: 'care' });
  expect(textAt(170, [['floor', 0]])).toEqual({
    text: 'MSL 3 · floor life ended 9 Mar, 06:00',
    tone: 'stop',
  });
  const baked = textAt(175, [
    ['floor', 0],
    ['bake', 171],
  ]);
  expect(baked).toEqual({ text: 'MSL 3 · in the oven', tone: 'care' });
});

test('a bake shorter than J-STD-033 asks for gives no life back, and is said', () => {
  const after = (bakedHours: number) =>
    textAt(172 + bakedHours, [
      ['floor', 0],
      ['bake', 171],
      ['floor', 171 + bakedHours],
    ]);
  expect(after(1)).toMatchObject({
    tone: 'stop',
    text: expect.stringMatching(/floor life ended .*baked shorter/),
  });
  expect(after(60)).toMatchObject({ tone: null, text: expect.not.stringContaining('baked shorter') });
});

test('a level 6 reel is told once to be baked and timed: what it rests on says no such thing again', () => {
  const story = beginStory();
  tellPlant(story);
  const floor = story.floor();
  const part = { level: '6', bodyMm: 1 } as const;
  const life = reelLife(floor, 'K1', { line: 'L1', part, openedMs: startMs, nowMs: startMs + 3_600_000 });
  if (life === null) throw new TypeError('Cannot go on as level 6 has a limit');
  const { text } = lifeText(life, undefined, 'UTC');
  expect(text).toContain('enter the time on its label');
  expect(lifeGrounds(life, null).filter((ground) => text.includes(ground))).toEqual([]);
});

test('the hours and minutes of a length of time stay on one line', () => {
  expect(formatSpan(573 * 3600)).toBe('573\u00a0h\u00a000');
  expect(formatSpan(573 * 3600)).not.toMatch(/ /);
});
