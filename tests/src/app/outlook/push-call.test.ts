// What leads are told while their app is closed: the same thing by the same key on every tablet, and nothing that somebody answered.

import { describe, expect, it } from 'vitest';
import { laneLine } from '../../../../shared/floor/lanes.ts';
import type { Result } from '../../../../shared/kit/result.ts';
import { ESCALATE_MS } from '../../../../shared/outlook/unanswered.ts';
import { type PushNotice, type PushTold, pushNoticeSchema } from '../../../../shared/wire/messages-push.ts';
import { createTelling, openNotices } from '../../../../src/app/outlook/push-call.ts';
import {
  beginStory,
  brookSetup,
  counted,
  started,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../shared/floor/story.ts';

const due = '2026-03-02T06:10:00.000Z';

/** A line that runs, with a reel on a slot for which a warning was raised. */
function running() {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 4 }));
  story.tell('run.started', started('r1'));
  const [slot] = [...story.floor().slots.values()];
  const need = slot?.tapes.at(-1)?.entry ?? '';
  const raise = (level: 'due' | 'late') =>
    story.tell('warning.raised', { line: 'L1', slot: 'M1-F-001', need, level, due });
  raise('due');
  const atMs = story.entries.at(-1)?.hlc.ms ?? 0;
  const open = (afterMs: number, kind: string) =>
    openNotices(story.floor(), atMs + afterMs).filter((each) => each.kind === kind);
  return { story, need, raise, open };
}

describe('`openNotices()`', () => {
  it('tells a warning that nobody answered for a while, by line and slot, once a level', () => {
    const { story, need, raise, open } = running();
    expect(open(ESCALATE_MS - 1, 'warning')).toEqual([]);
    const [told] = open(ESCALATE_MS, 'warning');
    expect(told).toMatchObject({ line: 'L1', slot: 'M1-F-001' });
    expect(pushNoticeSchema.safeParse(told).success).toBe(true);
    raise('due'); // another tablet raised it too
    expect(open(2 * ESCALATE_MS, 'warning').map(({ key }) => key)).toEqual([told?.key]);
    raise('late');
    const [louder] = open(2 * ESCALATE_MS, 'warning');
    expect(louder?.key).not.toBe(told?.key);
    story.tell('warning.acknowledged', { line: 'L1', slot: 'M1-F-001', need, level: 'late' });
    expect(open(2 * ESCALATE_MS, 'warning')).toEqual([]);
  });

  it('tells a blocked reel in use at once, until somebody says that they go', () => {
    const { story, open } = running();
    story.tell('reel.verified', { ...verified('M1-R-003', 'R-100', { reel: 'K2', lot: 'LOT7' }) });
    story.tell('material.blocked', { block: 'b1', reel: null, lot: 'LOT7', part: null, reason: 'cracked' });
    expect(open(0, 'blocked')).toMatchObject([{ line: 'L1', slot: 'M1-R-003' }]);
    const answered = { line: 'L1', slot: 'M1-R-003', need: 'blocked b1', level: 'late' } as const;
    story.tell('warning.acknowledged', answered);
    expect(open(0, 'blocked')).toEqual([]);
  });

  it('tells a line that stands without a word, and not one that people stopped', () => {
    const { story, open } = running();
    expect(open(60_000, 'stood')).toEqual([]);
    const [told] = open(60 * 60_000, 'stood');
    expect(told).toMatchObject({ line: 'L1', slot: null });
    expect(open(61 * 60_000, 'stood').map(({ key }) => key)).toEqual([told?.key]);
    story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'other', note: '' });
    expect(open(60 * 60_000, 'stood')).toEqual([]);
  });
});

describe('`openNotices()` of a line of two lanes', () => {
  const lane2 = laneLine('L1', 2);

  it('tells a warning of the lane that runs, by one key whichever that is', () => {
    const { story, open } = running();
    const [told] = open(ESCALATE_MS, 'warning');
    story.tell('line.defined', { line: lane2, name: 'Line 1, lane 2', zone: 'UTC', machines: [] });
    story.tell('run.started', started('r2', { line: lane2 }));
    expect(open(ESCALATE_MS, 'warning')).toHaveLength(1);
    story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'other', note: '' });
    expect(open(ESCALATE_MS, 'warning')).toMatchObject([
      { key: told?.key, line: lane2, lineName: 'Line 1, lane 2' },
    ]);
  });
});

describe('`openNotices()` of a blocked reel that two lanes build from', () => {
  it('tells it once', () => {
    const { story, open } = running();
    story.tell('line.defined', { line: laneLine('L1', 2), name: 'Lane 2', zone: 'UTC', machines: [] });
    story.tell('run.started', started('r2', { line: laneLine('L1', 2) }));
    story.tell('reel.verified', { ...verified('M1-R-003', 'R-100', { reel: 'K2', lot: 'LOT7' }) });
    story.tell('material.blocked', { block: 'b1', reel: null, lot: 'LOT7', part: null, reason: 'cracked' });
    expect(open(0, 'blocked')).toMatchObject([{ line: 'L1', slot: 'M1-R-003' }]);
  });

  it('tells it of the lane that takes from its slot', () => {
    const { story, open } = running();
    const lane = { line: laneLine('L1', 2), setup: 'right' };
    story.tell('line.defined', { line: lane.line, name: 'Lane 2', zone: 'UTC', machines: [] });
    story.tell('setup.taken', { ...brookSetup, ...lane, slots: [wantedSlot('M1-F-019', 'R-100')] });
    story.tell('run.started', started('r2', lane));
    story.tell('reel.verified', verified('M1-F-019', 'R-100', { ...lane, reel: 'K2', lot: 'LOT7' }));
    story.tell('material.blocked', { block: 'b1', reel: null, lot: 'LOT7', part: null, reason: 'cracked' });
    expect(open(0, 'blocked')).toMatchObject([{ line: lane.line, lineName: 'Lane 2', slot: 'M1-F-019' }]);
  });
});

describe('`openNotices()` of names that the wire does not take', () => {
  it.each([
    ['', ''],
    ['n'.repeat(200), 's'.repeat(200)],
  ])('cuts them, and calls a line without a name by its id', (name, slot) => {
    const { story, open } = running();
    const line = story.floor().lines.get('L1');
    story.tell('line.defined', { line: 'L1', name, zone: line?.zone ?? '', machines: [] });
    story.tell('reel.verified', { ...verified(slot, 'R-100', { reel: 'K2', lot: 'LOT7' }) });
    story.tell('material.blocked', { block: 'b1', reel: null, lot: 'LOT7', part: null, reason: 'cracked' });
    const [told] = open(0, 'blocked');
    expect(pushNoticeSchema.safeParse(told).error).toBeUndefined();
    expect(told?.lineName).toBe(name === '' ? 'L1' : `${'n'.repeat(119)}…`);
    expect(told?.slot).toBe(slot === '' ? null : `${'s'.repeat(63)}…`);
  });
});

describe('`openNotices()` of a line that stands', () => {
  it('has the same key when a count comes late and moves the pace, and another one after a newer count', () => {
    const { story, open } = running();
    for (let at = 60; at <= 600; at += 30) story.tell('panels.counted', counted('r1', 1), { at });
    const key = () => open(60 * 60_000, 'stood').map((each) => each.key);
    const [told] = key();
    expect(told).toBeDefined();
    for (let at = 75; at < 600; at += 30)
      story.tell('panels.counted', counted('r1', 1), { at, tablet: 'T2' });
    expect(key()).toEqual([told]);
    story.tell('panels.counted', counted('r1', 1), { at: 615 });
    expect(key()).toHaveLength(1);
    expect(key()).not.toEqual([told]);
  });
});

describe('`createTelling()`', () => {
  const notice = (key: string): PushNotice => ({
    key,
    kind: 'stood',
    line: 'L1',
    lineName: 'Line 1',
    slot: null,
  });
  /** A tablet that names `a` and `b` at each look, and a server with these answers. */
  function telling(...answers: readonly (Result<PushTold, { readonly code: string }> | null)[]) {
    const asked: string[] = [];
    const left = [...answers];
    let nowMs = 0;
    const tell = createTelling(
      async (notices) => {
        asked.push(notices.map(({ key }) => key).join(' '));
        return left.shift() ?? null;
      },
      () => nowMs,
    );
    const look = async (afterMs: number) => {
      nowMs += afterMs;
      await tell([notice('a'), notice('b')]);
    };
    return { asked, look };
  }
  const taken = (...keys: string[]): Result<PushTold, { readonly code: string }> => ({
    ok: true,
    value: { sent: keys.length, taken: keys },
  });

  it('names again what the server did not take, until it does', async () => {
    const { asked, look } = telling(taken(), taken('a'), taken('b'));
    for (let round = 0; round < 4; round += 1) await look(30_000);
    expect(asked).toEqual(['a b', 'a b', 'b']);
  });

  it('names all again where no answer came, and nothing where a server of before took all', async () => {
    const { asked, look } = telling(null, { ok: true, value: { sent: 0 } });
    for (let round = 0; round < 3; round += 1) await look(30_000);
    expect(asked).toEqual(['a b', 'a b']);
  });

  it('asks a server that knew no messages again after ten minutes', async () => {
    const { asked, look } = telling({ ok: false, error: { code: 'not-found' } }, taken('a', 'b'));
    await look(0);
    await look(10 * 60_000 - 1);
    expect(asked).toHaveLength(1);
    await look(1);
    expect(asked).toHaveLength(2);
  });
});
