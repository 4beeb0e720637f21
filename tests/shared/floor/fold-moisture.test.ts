// Packages, the plant's own moisture values and times on labels: the newest word holds whole, and one that is taken back is gone.

import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { bakeKey, lifeKey, MOISTURE_RULES } from '../../../shared/floor/moisture-rules.ts';
import { beginStory, idOf } from './story.ts';

const life = { class: 'C', level: '3', celsius: 30, humidity: 60, days: 5 } as const;
const bake = { body: 'thin', level: '3', celsius: 125, isLong: false, hours: 12 } as const;
const ruled = (more: Partial<PayloadOf<'moisture.ruled'>> = {}): PayloadOf<'moisture.ruled'> => ({
  edition: 'our copy',
  source: 'table 7-1',
  cabinetPauses: false,
  lives: [life],
  bakes: [bake],
  ...more,
});

describe('the plant’s own values', () => {
  test('are found by the name of their cell, with who entered them and when', () => {
    const story = beginStory();
    const entry = story.tell('moisture.ruled', ruled());
    const ruling = story.floor().moisture.get(MOISTURE_RULES);
    expect(ruling).toMatchObject({ entry: idOf(entry), by: 'ana', atMs: entry.hlc.ms, ruled: ruled() });
    expect([...(ruling?.lives ?? [])]).toEqual([[lifeKey(life), 5]]);
    expect([...(ruling?.bakes ?? [])]).toEqual([[bakeKey(bake), 12]]);
  });

  test('are those of the newest entry alone', () => {
    const story = beginStory();
    story.tell('moisture.ruled', ruled());
    story.tell('moisture.ruled', ruled({ lives: [], cabinetPauses: true }));
    const ruling = story.floor().moisture.get(MOISTURE_RULES);
    expect(ruling?.lives.size).toBe(0);
    expect(ruling?.ruled.cabinetPauses).toBe(true);
  });

  test('have a name for each cell: no two cells of the tables share one', () => {
    const cells = [
      lifeKey(life),
      lifeKey({ ...life, class: 'B' }),
      lifeKey({ ...life, level: '2a' }),
      lifeKey({ ...life, celsius: 25 }),
      lifeKey({ ...life, humidity: 50 }),
      bakeKey(bake),
      bakeKey({ ...bake, body: 'thick' }),
      bakeKey({ ...bake, level: '4' }),
      bakeKey({ ...bake, celsius: 90 }),
      bakeKey({ ...bake, isLong: true }),
    ];
    expect(new Set(cells).size).toBe(cells.length);
  });
});

test('a part’s package is as it was last described', () => {
  const story = beginStory();
  const facts = { family: 'qfn', pins: 24, bodyMm: 0.9, bodyXMm: 4, bodyYMm: 4, isStacked: false } as const;
  story.tell('part.described', { part: 'U-1', ...facts, msl: '3', source: '' });
  story.tell('part.described', { part: 'U-1', ...facts, pins: 32, msl: null, source: '' });
  expect(story.floor().parts.get('U-1')).toMatchObject({ pins: 32, msl: null });
});

test('the time on a label holds until its entry is taken back, and no other entry’s correction touches it', () => {
  const story = beginStory();
  const first = story.tell('reel.timed', { reel: 'K1', hours: 6 });
  const other = story.tell('reel.timed', { reel: 'K2', hours: 8 });
  const takeBack = (of: string) =>
    story.tell('entry.corrected', { of, line: null, slot: null, reason: 'other label' });
  takeBack(idOf(other));
  expect([...story.floor().labelTimes.keys()]).toEqual(['K1']);
  expect(story.floor().labelTimes.get('K1')).toEqual({ hours: 6, entry: idOf(first) });
  takeBack(idOf(first));
  expect(story.floor().labelTimes.size).toBe(0);
});
