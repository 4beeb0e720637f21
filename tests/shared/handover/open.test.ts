// What is open at a handover is worked out of the log: each kind from a small story, the order and the bound of the list, and what closes each.

import { describe, expect, test } from 'vitest';
import { type HandedItem, type HandedKnown, mostHanded } from '../../../shared/floor/kinds-handover.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { openNow } from '../../../shared/handover/open.ts';
import { isOpenStill } from '../../../shared/handover/still-open.ts';
import { lineOutlook } from '../../../shared/outlook/line.ts';
import { payloadExamples } from '../floor/examples.ts';
import {
  beginStory,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from '../floor/story.ts';
import { comeBack } from '../verdict/gone-story.ts';

const HOUR_S = 3600;
const blankItem = { slot: null, reel: null, part: null, sinceMs: null, dueMs: null, count: null, why: null };

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

function open(floor: FloorState, atS: number) {
  const nowMs = startMs + atS * 1000;
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  return openNow(floor, { line: 'L1', nowMs, outlook });
}

/** The only thing open on the floor of a story. */
function only(story: Story, atS: number): HandedItem {
  const { items, more } = open(story.floor(), atS);
  expect({ kinds: items.map(({ what }) => what), more }).toEqual({ kinds: [items[0]?.what], more: 0 });
  return items[0] as HandedItem; // just counted
}

const isOpen = (story: Story, item: HandedItem, atS: number) =>
  isOpenStill(story.floor(), item, { line: 'L1', nowMs: startMs + atS * 1000 });

const tellHold = (story: Story, reel: string, at: number, tablet = 'T1') =>
  story.tell(
    'reel.verified',
    {
      ...verified('M1-F-001', 'R-100', { reel, quantity: null }),
      verdict: 'held',
      reasons: [{ code: 'no-quantity', facts: {} }],
    },
    { at, tablet },
  );

describe('openNow()', () => {
  test('lists nothing on a line where nothing happened', () => {
    expect(open(begun().floor(), 10)).toMatchObject({ items: [], more: 0, spliceMs: null });
  });

  test('lists a hold with its reason, until a lead decides', () => {
    const story = begun();
    const held = tellHold(story, 'K1', 100);
    const item = only(story, 200);
    expect(item).toMatchObject({
      what: 'hold',
      of: idOf(held),
      slot: 'M1-F-001',
      reel: 'K1',
      sinceMs: startMs + 100_000,
      why: 'no-quantity',
    });
    expect(isOpen(story, item, 200)).toBe(true);
    const { reason, by } = payloadExamples['hold.declined'];
    story.tell('hold.declined', { of: idOf(held), line: 'L1', slot: 'M1-F-001', reason, by });
    expect(isOpen(story, item, 300)).toBe(false);
    expect(open(story.floor(), 300).items).toEqual([]);
  });

  test('goes on from a hold to the next one of the same reel for the same slot', () => {
    const story = begun();
    tellHold(story, 'K1', 100);
    const item = only(story, 200);
    tellHold(story, 'K1', 250);
    expect(story.floor().holds.has(item.of)).toBe(false);
    expect(isOpen(story, item, 300)).toBe(true);
  });

  test('lists a blocked reel on its slot, until it is off', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'SK-1' }));
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'SK-1', part: null, reason: 'cracked' });
    const item = only(story, 100);
    expect(item).toMatchObject({ what: 'blocked', of: 'b', slot: 'M1-F-001', reel: 'K1', why: 'cracked' });
    story.tell('reel.unloaded', unloaded('M1-F-001'));
    expect(isOpen(story, item, 100)).toBe(false);
  });

  test('lists panels held, a changeover, a checklist and a silent station, until each is done', () => {
    const story = begun();
    story.tell('panels.contained', { ...payloadExamples['panels.contained'], containment: 'c1', line: 'L1' });
    story.tell('station.known', { ...payloadExamples['station.known'], station: 'S1', line: 'L1' });
    story.tell(
      'station.silent',
      { station: 'S1', line: 'L1', since: new Date(startMs + 60_000).toISOString(), told: 'link' },
      { at: 120 },
    );
    story.tell('changeover.began', { ...payloadExamples['changeover.began'], changeover: 'x', line: 'L1' });
    story.tell('checklist.opened', { ...payloadExamples['checklist.opened'], checklist: 'k', line: 'L1' });
    const { items } = open(story.floor(), 200);
    expect(items.map(({ what, of }) => [what, of])).toEqual([
      ['panels-held', 'c1'],
      ['station-silent', 'S1'],
      ['changeover', 'x'],
      ['checklist', 'k'],
    ]);
    expect(items[1]?.sinceMs).toBe(startMs + 60_000);
    story.tell('containment.signed', {
      containment: 'c1',
      line: 'L1',
      codes: null,
      by: 'lea',
      reason: 'ok',
      checked: 'tablet',
    });
    story.tell('station.counted', { ...payloadExamples['station.counted'], station: 'S1', line: 'L1' });
    story.tell('changeover.dropped', { changeover: 'x', line: 'L1', reason: 'no' });
    story.tell('checklist.closed', { checklist: 'k', line: 'L1', done: 0, asked: 0, note: '' });
    expect(items.map((item) => isOpen(story, item, 130))).toEqual([false, false, false, false]);
  });

  const DAY_S = 24 * HOUR_S;
  const changeover = 'x';
  const list = { ...payloadExamples['checklist.opened'], checklist: 'k', line: 'L1', changeover };
  const began = { line: 'L1', from: null, setup: 'brook-top-a', product: 'Brook', lastPanel: null };
  test.each<[string, (story: Story) => void, readonly string[]]>([
    [
      'released',
      (story) =>
        story.tell('changeover.released', { changeover, line: 'L1', by: 'lea', reason: '' }, { at: 100 }),
      [],
    ],
    [
      'cancelled',
      (story) => story.tell('changeover.dropped', { changeover, line: 'L1', reason: '' }, { at: 100 }),
      [],
    ],
    [
      'followed by another',
      (story) => story.tell('changeover.began', { ...began, changeover: 'y' }, { at: 100 }),
      ['changeover'],
    ],
  ])(
    'lists a checklist that nobody closed for a day after its changeover is %s, and until a handover was signed since',
    (_, end, others) => {
      const story = begun();
      story.tell('changeover.began', { ...began, changeover }, { at: 50 });
      story.tell('checklist.opened', list, { at: 60 });
      const kinds = (atS: number) => open(story.floor(), atS).items.map(({ what }) => what);
      expect(kinds(60 + 2 * DAY_S)).toEqual(['changeover', 'checklist']);
      end(story);
      const item = open(story.floor(), 200).items.find(({ what }) => what === 'checklist') as HandedItem; // listed
      expect(kinds(100 + 3 * DAY_S - 1)).toEqual([...others, 'checklist']);
      expect(isOpen(story, item, 100 + 3 * DAY_S)).toBe(true);
      const sign = (handover: string, at: number) =>
        story.tell('shift.handed', { ...payloadExamples['shift.handed'], line: 'L1', handover }, { at });
      sign('h1', 200);
      expect(kinds(100 + DAY_S - 1)).toEqual([...others, 'checklist']);
      expect(isOpen(story, item, 100 + DAY_S - 1)).toBe(true);
      expect(kinds(100 + DAY_S)).toEqual(others);
      expect(isOpen(story, item, 100 + DAY_S)).toBe(false);
    },
  );

  test('lists tablets that disagree about a slot', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }), { at: 50 });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K2' }), { at: 51, tablet: 'T2' });
    expect(only(story, 100)).toMatchObject({ what: 'conflict', slot: 'M1-F-001' });
  });

  test('lists a changeover that one tablet cancelled and another released, by its product', () => {
    const story = begun();
    const change = { changeover: 'x', line: 'L1' };
    const setup = { from: null, setup: 'brook-top-a', product: 'Brook', lastPanel: null };
    story.tell('changeover.began', { ...change, ...setup }, { at: 50 });
    story.tell('changeover.dropped', { ...change, reason: '' }, { at: 60 });
    story.tell('changeover.released', { ...change, by: 'lea', reason: '' }, { at: 62, tablet: 'T2' });
    const item = only(story, 100);
    expect(item).toMatchObject({ what: 'conflict', slot: null, why: 'Brook', sinceMs: startMs + 62_000 });
    expect(isOpen(story, item, 130)).toBe(true);
  });

  test('lists the splices of the coming hour and slots whose parts nobody knows, and says up to when', () => {
    const story = begun();
    // 2 a panel, 30 s a panel: 200 parts are 100 panels, 50 minutes; 4,000 at 4 a panel last longer than the run.
    const near = story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 200 }), {
      at: 1,
    });
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K2', quantity: 4000 }), { at: 2 });
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K3', quantity: null }), { at: 3 });
    story.tell('run.started', started('r1'), { at: 4 });
    const { items, spliceMs } = open(story.floor(), 5);
    expect(items.map(({ what, slot }) => [what, slot])).toEqual([
      ['splice', 'M1-F-001'],
      ['count-unknown', 'M1-F-002'],
    ]);
    expect(spliceMs).toBe(startMs + 5_000 + 3_600_000);
    const [due, unknown] = items as [HandedItem, HandedItem];
    expect(due.of).toBe(idOf(near));
    expect(Math.abs((due.dueMs ?? 0) - (startMs + 3_004_000))).toBeLessThan(600_000);
    story.tell('reel.verified', {
      ...verified('M1-F-001', 'R-100', { reel: 'K9', quantity: 5000, run: 'r1' }),
      act: 'splice',
    });
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K8', quantity: 900 }));
    expect([due, unknown].map((item) => isOpen(story, item, 20))).toEqual([false, false]);
  });

  test.each([
    ['tape', null],
    ['tray', 'exchange'],
    ['bulk', 'refill'],
  ] as const)('says what is due where %s feeds a slot', (comesIn, why) => {
    const story = begun();
    story.tell('reel.verified', { ...verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 200 }), comesIn });
    story.tell('run.started', started('r1'));
    const [due] = open(story.floor(), 5).items;
    expect(due).toMatchObject({ what: 'splice', slot: 'M1-F-001', why });
  });

  test('lists floor lives that end within eight hours, those that are over among them', () => {
    const story = begun();
    // Level 5a: 24 hours (J-STD-033, table of floor lives).
    story.tell('part.described', { ...payloadExamples['part.described'], part: 'U-300', msl: '5a' });
    story.tell('reel.verified', verified('M1-F-010', 'U-300', { reel: 'K1' }), { at: 10 });
    expect(open(story.floor(), 10 * HOUR_S).items).toEqual([]);
    const item = only(story, 17 * HOUR_S);
    expect(item).toMatchObject({ what: 'floor-life', slot: 'M1-F-010', reel: 'K1', part: 'U-300' });
    expect(item.dueMs).toBe(startMs + 24 * HOUR_S * 1000 + 10_000);
    expect(only(story, 25 * HOUR_S).what).toBe('floor-life');
    story.tell('reel.unloaded', unloaded('M1-F-010'), { at: 26 * HOUR_S });
    expect(isOpen(story, item, 26 * HOUR_S)).toBe(false);
  });

  test('lists the floor life of an alternate by its own package', () => {
    const story = begun();
    story.tell('part.described', { ...payloadExamples['part.described'], part: 'C-201', msl: '5a' });
    story.tell('reel.verified', verified('M1-F-002', 'C-201', { reel: 'K1' }), { at: 10 });
    const item = only(story, 17 * HOUR_S);
    expect(item).toMatchObject({ what: 'floor-life', slot: 'M1-F-002', reel: 'K1', part: 'C-201' });
    expect(item.dueMs).toBe(startMs + 24 * HOUR_S * 1000 + 10_000);
  });

  test('lists a floor life of a reel that was used up long ago: over since it was put on, or when it ends since its bake', () => {
    const putOnS = (40 * 24 + 30) * HOUR_S;
    const lifeAt = (story: Story, atS: number) =>
      open(story.floor(), atS).items.filter(({ what }) => what === 'floor-life');
    const unbaked = comeBack({ isBaked: false });
    const known = { slot: 'M1-F-001', reel: 'K1' };
    expect(lifeAt(unbaked, putOnS + HOUR_S)).toMatchObject([{ ...known, dueMs: startMs + putOnS * 1000 }]);
    const baked = comeBack({ isBaked: true });
    expect(lifeAt(baked, putOnS + HOUR_S)).toEqual([]);
    const dueMs = startMs + (putOnS + 168 * HOUR_S) * 1000;
    for (const hours of [167, 169])
      expect(lifeAt(baked, putOnS + hours * HOUR_S)).toMatchObject([{ ...known, dueMs }]);
  });

  test('cuts a list that is too long at its end, and counts what it left out', () => {
    const story = begun();
    for (let at = 0; at < mostHanded + 7; at += 1)
      story.tell('reel.verified', {
        ...verified('M1-F-001', 'R-100', { reel: `K${at}` }),
        verdict: 'held',
        reasons: [],
      });
    story.tell('checklist.opened', { ...payloadExamples['checklist.opened'], checklist: 'k', line: 'L1' });
    const { items, more } = open(story.floor(), 500);
    expect([items.length, more]).toEqual([mostHanded, 8]);
    expect(new Set(items.map(({ what }) => what))).toEqual(new Set(['hold']));
    expect(items[0]?.reel).toBe('K0');
  });

  test('leaves out at the takeover what stood open beyond the list then, and tells what came up since', () => {
    const story = begun();
    for (let at = 0; at < mostHanded + 3; at += 1) tellHold(story, `K${at}`, 100 + at);
    story.tell('checklist.opened', { ...payloadExamples['checklist.opened'], checklist: 'k', line: 'L1' });
    const then = open(story.floor(), 300);
    expect(then.more).toBe(4);
    const known = { ...payloadExamples['shift.handed'].known, atMs: startMs + 300_000 };
    const since = () =>
      openNow(
        story.floor(),
        { line: 'L1', nowMs: startMs + 400_000, outlook: null },
        { left: then.items, more: then.more, known },
      );
    expect(since()).toMatchObject({ items: [], more: 0 });
    tellHold(story, 'K-new', 350);
    // Of another tablet, from before the handover: that list would have had it before those that it had no room for.
    tellHold(story, 'K-unheard', 90, 'T2');
    expect(since().items.map(({ reel }) => reel)).toEqual(['K-unheard', 'K-new']);
  });

  test('leaves out splices, floor lives and unknown counts that stood beyond the list, unless they came within reach since', () => {
    const story = begun();
    story.tell('part.described', { ...payloadExamples['part.described'], part: 'U-300', msl: '5a' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 200 }), { at: 10 });
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K3', quantity: null }), { at: 11 });
    story.tell('reel.verified', verified('M1-F-010', 'U-300', { reel: 'K4', quantity: 90_000 }), { at: 12 });
    story.tell('run.started', started('r1'), { at: 13 });
    const nowMs = startMs + 20_000;
    const outlook = lineOutlook(story.floor(), 'L1', {
      nowMs,
      calendar: lineCalendar(story.floor(), 'L1', nowMs),
    });
    const reach = { spliceMs: nowMs + HOUR_S * 1000, lifeMs: startMs + 30 * HOUR_S * 1000 };
    const last: HandedItem = { ...blankItem, what: 'hold', of: 'T1/e/1', sinceMs: startMs };
    const kinds = (known: Partial<HandedKnown>, more = 9, at = nowMs) => {
      const listed = { ...payloadExamples['shift.handed'].known, atMs: nowMs, ...reach, ...known };
      // Eight hours before the end of the floor life, so that it is listed too.
      const asked = { line: 'L1', nowMs: at, outlook };
      return openNow(story.floor(), asked, { left: [last], more, known: listed }).items.map(
        ({ what }) => what,
      );
    };
    const late = startMs + 17 * HOUR_S * 1000;
    expect(kinds({}, 0, late)).toEqual(['splice', 'floor-life', 'count-unknown']);
    expect(kinds({}, 9, late)).toEqual([]);
    expect(kinds({ spliceMs: nowMs, lifeMs: nowMs }, 9, late)).toEqual(['splice', 'floor-life']);
    expect(kinds({ atMs: startMs + 5_000 }, 9, late)).toEqual(['splice', 'floor-life', 'count-unknown']);
  });

  test('knows a tape again on the slot that its feeder was moved to', () => {
    const story = begun();
    story.tell('part.described', { ...payloadExamples['part.described'], part: 'U-300', msl: '5a' });
    story.tell('reel.verified', verified('M1-F-010', 'U-300', { reel: 'K1', quantity: 4 }), { at: 10 });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K2', quantity: 20 }), { at: 11 });
    const block = { block: 'b', reel: 'K2', lot: null, part: null, reason: 'cracked' };
    story.tell('material.blocked', block);
    story.tell('run.started', started('r1'), { at: 12 });
    const at = 17 * HOUR_S;
    const listed = open(story.floor(), at).items.filter(({ what }) => what !== 'count-unknown');
    expect(listed.map(({ what, reel }) => [what, reel])).toEqual(
      expect.arrayContaining([
        ['blocked', 'K2'],
        ['splice', 'K2'],
        ['floor-life', 'K1'],
      ]),
    );
    const moved = { line: 'L1', run: 'r1', feeder: null, part: null, panels: 0, via: 'typed' } as const;
    story.tell('feeder.moved', { ...moved, reel: 'K1', from: 'M1-F-010', to: 'M1-F-012' }, { at });
    story.tell('feeder.moved', { ...moved, reel: 'K2', from: 'M1-F-001', to: 'M1-R-003' }, { at: at + 1 });
    expect(listed.map((item) => isOpen(story, item, at + 2))).toEqual(listed.map(() => true));
    const { known } = payloadExamples['shift.handed'];
    const nowMs = startMs + (at + 2) * 1000;
    const outlook = lineOutlook(story.floor(), 'L1', {
      nowMs,
      calendar: lineCalendar(story.floor(), 'L1', nowMs),
    });
    const came = openNow(story.floor(), { line: 'L1', nowMs, outlook }, { left: listed, more: 0, known });
    expect(came.items.filter(({ what }) => what !== 'count-unknown')).toEqual([]);
    story.tell('reel.unloaded', unloaded('M1-F-012', { reel: 'K1' }), { at: at + 3 });
    story.tell('reel.unloaded', unloaded('M1-R-003', { reel: 'K2' }), { at: at + 4 });
    expect(listed.map((item) => isOpen(story, item, at + 5))).toEqual(listed.map(() => false));
  });

  test('leaves out what was listed already, and what is of another line', () => {
    const story = begun();
    tellHold(story, 'K1', 100);
    tellHold(story, 'K2', 110);
    story.tell('reel.verified', { ...verified('M1-F-001', 'R-100', { line: 'L2' }), verdict: 'held' });
    const { items } = open(story.floor(), 200);
    expect(items.map(({ reel }) => reel)).toEqual(['K1', 'K2']);
    const asked = { line: 'L1', nowMs: startMs + 200_000, outlook: null };
    const { known } = payloadExamples['shift.handed'];
    expect(
      openNow(story.floor(), asked, { left: items.slice(0, 1), more: 0, known }).items.map(
        ({ reel }) => reel,
      ),
    ).toEqual(['K2']);
  });
});
