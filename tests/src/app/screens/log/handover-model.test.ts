// What a handover's entry says of this tablet: in step only where it talks to the server and both have everything; and both signatures hold what is open then.

import { describe, expect, test } from 'vitest';
import { lastHandover } from '../../../../../shared/floor/held-at-handover.ts';
import type { HandedItem } from '../../../../../shared/floor/kinds-handover.ts';
import type { Handed } from '../../../../../shared/floor/state-handover.ts';
import { lineCalendar } from '../../../../../shared/forecast/line-calendar.ts';
import { lineOutlook } from '../../../../../shared/outlook/line.ts';
import {
  handedDraft,
  isUntaken,
  knownOf,
  lookOpen,
  lookOpenBy,
  stillOver,
  takenDraft,
} from '../../../../../src/app/screens/log/handover-model.ts';
import { handedLine, handedText, knownText } from '../../../../../src/app/screens/log/handover-text.ts';
import { noStatus, type SyncPhase } from '../../../../../src/app/sync/ports.ts';
import {
  beginStory,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
} from '../../../../shared/floor/story.ts';

const list = { items: [], more: 0, spliceMs: null, lifeMs: 9_000 };
const known = (phase: SyncPhase, backlog = 0, missing = 0, lastAnswerMs: number | null = 5_000) =>
  knownOf({ status: { ...noStatus, phase, backlog, lastAnswerMs }, missing }, list, 6_000);

describe('knownOf()', () => {
  test.each([
    ['live', 0, 0, 'in-step'],
    ['live', 1, 0, 'behind'],
    ['live', 0, 1, 'behind'],
    ['waiting', 0, 0, 'behind'],
    ['syncing', 0, 0, 'behind'],
    ['refused', 0, 0, 'behind'],
    ['follower', 0, 0, 'other-window'],
    ['alone', 0, 0, 'alone'],
  ] as const)('says of %s with %i to send and %i missing: %s', (phase, backlog, missing, sync) => {
    expect(known(phase, backlog, missing)).toMatchObject({ sync, heardMs: 5_000, toSend: backlog, missing });
  });

  test('is alone where nothing was heard of sync', () => {
    expect(knownOf({ status: null, missing: 0 }, list, 6_000)).toMatchObject({
      sync: 'alone',
      heardMs: null,
    });
  });
});

describe('knownText()', () => {
  const said = (...of: Parameters<typeof known>) => knownText(known(...of), (ms) => `[${ms}]`)[0];
  test('claims no more than this tablet knows', () => {
    expect(said('live')).toBe('Synced with the server at [5000].');
    expect(said('waiting')).toBe('As this tablet knows. The server last answered at [5000].');
    expect(said('waiting', 0, 0, null)).toBe('As this tablet knows. The server has not answered yet.');
    expect(knownText(known('waiting', 3, 2), String)).toEqual([
      'As this tablet knows. The server last answered at 5000.',
      '3 entries are not sent yet.',
      '2 entries have not come yet.',
      'No job is running: no splices listed. Floor life up to 9000.',
    ]);
  });
});

describe('a handover', () => {
  const standing = { status: null, missing: 0 };
  test('is signed and taken with tablets that disagree, whatever their names are', () => {
    const story = beginStory();
    // As real tablets, whose chains have names of 22 letters.
    const [one, other] = ['0GzXk3vQm9Tt5wLr7YbN2c', 'pD8sJf4HhVxUe6aRqZ1oWy'];
    tellPlant(story);
    const load = (slot: string, tablet: string, reel: string) =>
      story.tell('reel.verified', verified(slot, 'R-100', { reel }), { tablet });
    load('M1-F-001', one, 'K1');
    load('M1-F-001', other, 'K2');
    const asked = { line: 'L1', nowMs: startMs + 60_000, handover: 'h', note: '', standing };
    const handed = handedDraft(story.floor(), asked, { by: 'lea', checked: 'tablet' });
    const [item] = handed.payload.left;
    expect(item?.what).toBe('conflict');
    expect(item?.of.length).toBeGreaterThan(64);
    // Told as the app tells it: with its shape checked.
    story.tell('shift.handed', handed.payload);
    load('M1-R-003', one, 'K3');
    load('M1-R-003', other, 'K4');
    const last = lastHandover(story.floor(), 'L1');
    if (!last) throw new Error('Cannot go on as a handover must be there: current value is none');
    const nowMs = startMs + 90_000;
    const taken = takenDraft(
      story.floor(),
      { handed: last, nowMs, standing },
      { by: 'bo', checked: 'server' },
    );
    expect(taken.payload.came.map(({ what }) => what)).toEqual(['conflict']);
    story.tell('shift.taken', taken.payload);
    expect(lastHandover(story.floor(), 'L1')?.taken?.by).toBe('bo');
  });

  test('is signed over what is open then, and taken over what came up since', () => {
    const story = beginStory();
    tellPlant(story);
    const hold = (reel: string) =>
      story.tell('reel.verified', {
        ...verified('M1-F-001', 'R-100', { reel }),
        verdict: 'held',
        reasons: [{ code: 'quantity-unknown', facts: {} }],
      });
    hold('K1');
    const asked = { line: 'L1', nowMs: startMs + 60_000, handover: 'h', note: ' to repair ', standing };
    const handed = handedDraft(story.floor(), asked, { by: 'lea', checked: 'tablet' });
    expect(handed.payload).toMatchObject({ note: 'to repair', run: null, panels: null, more: 0 });
    expect(handed.payload.left.map(({ reel }) => reel)).toEqual(['K1']);
    story.tell('shift.handed', handed.payload);
    hold('K2');
    const last = lastHandover(story.floor(), 'L1');
    if (!last) throw new Error('Cannot go on as a handover must be there: current value is none');
    const taken = takenDraft(
      story.floor(),
      { handed: last, nowMs: startMs + 90_000, standing },
      { by: 'bo', checked: 'server' },
    );
    expect(taken.payload.came.map(({ reel }) => reel)).toEqual(['K2']);
    expect(isUntaken(story.floor(), last)).toBe(true);
    story.tell('shift.taken', taken.payload);
    expect(isUntaken(story.floor(), last)).toBe(false);
    const [item] = handed.payload.left;
    const text = item && handedText(item, story.floor(), { atMs: 0, moment: () => '06:00' });
    expect(text && handedLine(text)).toMatch(/^Reel held: M1-F-001 K1, .*since 06:00$/);
    const due = {
      ...item,
      what: 'splice',
      slot: 'M1-F-001',
      reel: 'K1',
      sinceMs: null,
      dueMs: 0,
    } as HandedItem;
    const lineOf = (why: string | null) =>
      handedLine(handedText({ ...due, why }, story.floor(), { atMs: 0, moment: () => '06:00' }));
    expect([null, 'exchange', 'refill'].map(lineOf)).toEqual([
      'Splice due: M1-F-001 K1, by 06:00',
      'Exchange due: M1-F-001 K1, by 06:00',
      'Refill due: M1-F-001 K1, by 06:00',
    ]);
  });
});

const signed = (story: Story, handover: string) =>
  handedDraft(
    story.floor(),
    { line: 'L1', nowMs: startMs, handover, note: '', standing: { status: null, missing: 0 } },
    { by: 'lea', checked: 'tablet' },
  ).payload;

describe('a dialog about a handover', () => {
  const handed = (handover: string): Handed => {
    const story = beginStory();
    tellPlant(story);
    story.tell('shift.handed', signed(story, handover));
    const last = lastHandover(story.floor(), 'L1');
    if (!last) throw new Error('Cannot go on as a handover must be there: current value is none');
    return last;
  };
  test('stays for the handover that it was opened for, and for no other', () => {
    const take = { does: 'take', handover: 'h1' } as const;
    expect(stillOver(take, handed('h1'))).toBe(take);
    expect(stillOver(take, null)).toBe(null); // taken over at another tablet
    expect(stillOver(take, handed('h2'))).toBe(null);
    const hand = { does: 'hand' } as const;
    expect([stillOver(hand, null), stillOver(hand, handed('h2'))]).toEqual([hand, hand]);
  });

  test('is about none any more once a newer one was signed', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('shift.handed', signed(story, 'h1'));
    expect(isUntaken(story.floor(), { line: 'L1', handover: 'h1' })).toBe(true);
    story.tell('shift.handed', signed(story, 'h2'));
    expect(isUntaken(story.floor(), { line: 'L1', handover: 'h1' })).toBe(false);
    expect(isUntaken(story.floor(), { line: 'L1', handover: 'h2' })).toBe(true);
  });
});

describe('lookOpenBy()', () => {
  const asked = { line: 'L1', nowMs: startMs + 60_000 };
  test('lists by the outlook of the watch, makes one of its own where that is of another run, and none where nothing is built', () => {
    const story = beginStory();
    tellPlant(story);
    const idle = story.floor();
    expect(lookOpenBy(idle, null, asked)).toEqual(lookOpen(idle, asked));
    expect(lookOpenBy(idle, null, asked).spliceMs).toBe(null);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 100 }));
    story.tell('run.started', started('r1'));
    const floor = story.floor();
    const own = lineOutlook(floor, 'L1', { ...asked, calendar: lineCalendar(floor, 'L1', asked.nowMs) });
    if (!own) throw new Error('Cannot go on as something must be built: current value is nothing');
    const whole = lookOpen(floor, asked);
    expect(whole.items.length).toBeGreaterThan(0);
    expect(lookOpenBy(floor, own, asked)).toEqual(whole);
    const known = { ...own, unknown: [], slots: [] };
    expect(lookOpenBy(floor, known, asked).items).toEqual([]); // the watch's, as it is
    for (const other of [{ ...known, line: 'L2' }, { ...known, run: { ...known.run, run: 'x' } }, null])
      expect(lookOpenBy(floor, other, asked)).toEqual(whole);
  });
});
