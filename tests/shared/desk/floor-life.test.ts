// What the verdict hears of a reel's floor life at the scan, and what it answers.

import { expect, test } from 'vitest';
import { floorLifeOf, openedDrafts } from '../../../shared/desk/floor-life.ts';
import type { ReelInHand } from '../../../shared/desk/model.ts';
import { verifyReel } from '../../../shared/verdict/verify.ts';
import { beginStory, started, startMs, tellPlant } from '../floor/story.ts';

const hourMs = 3_600_000;

function answerAfter(hours: number, quantity: number) {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 100_000, panelSeconds: 30 }));
  story.tell('reel.aired', {
    reel: 'K1',
    part: 'R-100',
    supplierPart: null,
    quantity,
    lot: null,
    dateCode: null,
    via: 'typed',
    air: 'floor',
    from: new Date(startMs).toISOString(),
    celsius: null,
    humidity: null,
    msl: '3',
  });
  const floor = story.floor();
  const reel = {
    reel: 'K1',
    part: 'R-100',
    supplierPart: null,
    quantity,
    lot: null,
    msl: null,
  };
  const asked = { act: 'load', line: 'L1', setup: 'brook-top-a', slot: 'M1-F-001', reel } as const;
  const nowMs = startMs + hours * hourMs;
  return verifyReel(floor, {
    ...asked,
    feeder: null,
    today: '2026-03-02',
    floorLife: floorLifeOf(floor, asked, nowMs),
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

test.each([
  ['its own number', { part: 'C-201' }],
  ['its number without the dash', { part: 'C201' }],
  ['its maker’s number alone', { part: null, supplierPart: 'SUP-201' }],
])('an alternate known by %s has the limit of its own package', (_, label) => {
  const story = beginStory();
  const comparison = { ignoreCase: false, ignoreSpaces: false, ignoreDashes: true, packingSuffixes: [] };
  tellPlant(story, { rules: { comparison } });
  const body = { bodyMm: 0.9, bodyXMm: 4, bodyYMm: 4, isStacked: false };
  story.tell('part.described', { part: 'C-201', family: 'qfn', pins: 24, msl: '3', source: '', ...body });
  story.tell('supplier.approved', { supplierPart: 'SUP-201', part: 'C-201' });
  const reel = { reel: 'K2', quantity: 10, msl: null };
  const asked = { act: 'load', line: 'L1', setup: 'brook-top-a', slot: 'M1-F-002' } as const;
  const life = (more: object) =>
    floorLifeOf(story.floor(), { ...asked, reel: { ...reel, ...more } }, startMs);
  expect(life(label)?.leftSeconds).toBe(168 * 3600);
  expect(life({ part: 'C-200' }), 'the slot’s own part has none').toBeNull();
});

test('where only the label states a level, the opened bag is an entry beside the verdict, once', () => {
  const story = beginStory();
  tellPlant(story);
  const reel: ReelInHand = {
    codes: [],
    via: 'wedge',
    reel: 'K1',
    part: null,
    supplierPart: 'SUP-9',
    quantity: 10,
    msl: '3',
    labelQuantity: 10,
    basis: 'label',
    lot: 'L-7',
    dateCode: null,
    expires: null,
    questions: [],
  };
  const judged = { act: 'load', verdict: 'accepted', reel, part: 'R-100' } as const;
  const drafts = (more: Partial<Parameters<typeof openedDrafts>[1]> = {}) =>
    openedDrafts(story.floor(), { ...judged, ...more }, startMs);
  const [draft, ...others] = drafts();
  expect(others).toEqual([]);
  expect(draft).toMatchObject({
    kind: 'reel.aired',
    payload: { reel: 'K1', part: 'R-100', air: 'floor', msl: '3' },
  });
  expect(drafts({ verdict: 'held' })).toHaveLength(1);
  for (const none of [
    { verdict: 'refused' },
    { act: 'sweep' },
    { reel: { ...reel, msl: '1' } },
    { reel: { ...reel, reel: null } },
  ] as const)
    expect(drafts(none)).toEqual([]);
  if (draft?.kind === 'reel.aired') story.tell('reel.aired', draft.payload);
  expect(drafts()).toEqual([]);
});
