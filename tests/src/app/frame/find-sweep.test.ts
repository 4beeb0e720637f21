// A sweep by camera ticks a slot only by what was seen: slot and reel read, belonging together, twice, and as the log has it.

import { describe, expect, test } from 'vitest';
import type { ScannedCode } from '../../../../shared/labels/scan.ts';
import { passDrafts, sightedDraft, sweepDrafts } from '../../../../src/app/frame/find-drafts.ts';
import { type FindView, type FoundReel, foundThing } from '../../../../src/app/frame/find-model.ts';
import { slotsSeen, sweptSlot, type Votes, voteOn } from '../../../../src/app/frame/find-sweep.ts';
import type { SeenCode } from '../../../../src/app/scan/gather.ts';
import type { LabelInView } from '../../../../src/app/scan/pan.ts';
import { beginStory, type Story, startMs, tellPlant, verified } from '../../../shared/floor/story.ts';

const envelope = (...elements: string[]) => `[)>\x1e06\x1d${elements.join('\x1d')}\x1e\x04`;
const label = (part: string, id: string | null, lot = 'LOT7') =>
  envelope(`P${part}`, 'Q5000', `1T${lot}`, ...(id === null ? [] : [`3S${id}`]));
const code = (text: string): ScannedCode => ({ text, format: 'DataMatrix', symbologyId: null });

function loaded(): Story {
  const story = beginStory();
  tellPlant(story);
  const on = (slot: string, part: string, more: object) =>
    story.tell('reel.verified', verified(slot, part, { lot: 'LOT7', ...more }));
  story.tell('feeder.known', { feeder: 'FD-07', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  on('M1-F-001', 'R-100', { reel: 'K1', feeder: 'FD-07' });
  on('M1-F-002', 'C-200', { reel: null });
  on('M1-R-003', 'R-100', { reel: 'K3' });
  return story;
}

const viewOf = (story: Story): FindView => ({
  floor: story.floor(),
  line: 'L1',
  list: { setup: null, reels: new Map(), parts: new Map() },
  nowMs: startMs,
  lifeOf: () => null,
});

/** A label in the picture; its key is its text. */
function inView(text: string, x: number, y: number): LabelInView {
  const quad: SeenCode['quad'] = [
    { x: x - 40, y: y - 20 },
    { x: x + 40, y: y - 20 },
    { x: x + 40, y: y + 20 },
    { x: x - 40, y: y + 20 },
  ];
  return { key: text, quad, codes: [{ ...code(text), quad }] };
}

function votesAfter(view: FindView, looks: readonly (readonly LabelInView[])[]): Votes {
  const thingOf = (key: string) => foundThing([code(key)], view);
  return looks.reduce<Votes>((votes, each) => voteOn(votes, each, { view, thingOf }), new Map());
}

describe('slots that the camera sees with a reel', () => {
  const view = viewOf(loaded());
  const look = [
    inView('M1-F-001', 100, 100),
    inView('M1-F-002', 300, 100),
    inView(label('R-100', 'K1'), 100, 260),
    inView(label('C-200', null), 300, 260),
  ];

  test('count from the second look on, each with the label that says so', () => {
    expect(slotsSeen(votesAfter(view, [look]))).toEqual([]);
    const vote = { looks: 2, by: 'nearest-below', feeder: null };
    expect(slotsSeen(votesAfter(view, [look, look]))).toEqual([
      { is: 'one', slot: 'M1-F-001', reel: label('R-100', 'K1'), vote },
      { is: 'one', slot: 'M1-F-002', reel: label('C-200', null), vote },
    ]);
  });

  test('are known by the feeder that the log has on them', () => {
    const byFeeder = [inView('FD-07', 100, 100), inView(label('R-100', 'K1'), 100, 260)];
    expect(slotsSeen(votesAfter(view, [byFeeder, byFeeder]))).toEqual([
      {
        is: 'one',
        slot: 'M1-F-001',
        reel: label('R-100', 'K1'),
        vote: { looks: 2, by: 'nearest-below', feeder: 'FD-07' },
      },
    ]);
  });

  test('are asked where more than one reel was seen in their column, or one reel in two', () => {
    const moved = [...look.slice(0, 2), inView(label('R-100', 'K3'), 100, 260)];
    expect(slotsSeen(votesAfter(view, [look, look, moved, moved]))[0]).toEqual({
      is: 'several',
      slot: 'M1-F-001',
      reels: [label('R-100', 'K1'), label('R-100', 'K3')],
    });
    const beside = [...look.slice(0, 2), inView(label('R-100', 'K1'), 300, 260)];
    expect(slotsSeen(votesAfter(view, [look, look, beside, beside])).map(({ is }) => is)).toEqual([
      'several',
      'several',
    ]);
  });

  test('say nothing by a label that is in the picture twice, or alone', () => {
    const twice = [
      inView('M1-F-001', 100, 100),
      inView('M1-F-002', 300, 100),
      inView(label('C-200', null), 100, 260),
      inView(label('C-200', null), 300, 260),
    ];
    expect(slotsSeen(votesAfter(view, [twice, twice]))).toEqual([]);
    const alone = look.slice(2);
    expect(slotsSeen(votesAfter(view, [alone, alone]))).toEqual([]);
  });
});

describe('a slot seen with its reel', () => {
  const story = loaded();
  const view = viewOf(story);
  const swept = (slot: string, text: string) => sweptSlot(view, { slot, codes: [code(text)] }, startMs);

  test('is ticked where the log has that reel there, by its id or by part and lot', () => {
    for (const [slot, text] of [
      ['M1-F-001', label('R-100', 'K1')],
      ['M1-F-002', label('C-200', null)],
    ] as const) {
      const answer = swept(slot, text);
      expect(answer.is).toBe('ticked');
      const [verdict] = answer.is === 'ticked' ? answer.drafts : [];
      expect(verdict).toMatchObject({
        kind: 'reel.verified',
        payload: { act: 'sweep', slot, verdict: 'accepted', via: 'camera' },
      });
    }
  });

  test('is asked where the slot takes the part, but the label does not say which reel it is', () => {
    expect(swept('M1-F-001', label('R-100', null)).is).toBe('unsure');
    expect(swept('M1-F-002', label('C-200', 'K9')).is).toBe('unsure');
    expect(swept('M1-F-002', envelope('PC-200', 'Q5000')).is).toBe('unsure');
  });

  test.each([
    ['M1-F-001', label('R-100', 'K5')],
    ['M1-F-001', label('R-100', 'K3')],
    ['M1-F-002', label('C-200', null, 'LOT8')],
  ])('is told on %s where the log has another reel there: %j', (slot, text) => {
    expect(swept(slot, text)).toMatchObject({ is: 'against', why: { code: 'not-the-loaded-reel' } });
  });

  test('is told where the part is wrong, and nothing is written of it', () => {
    const answer = swept('M1-F-001', label('C-200', 'K9'));
    expect(answer).toMatchObject({ is: 'against', why: { code: 'wrong-part' } });
    expect(answer).not.toHaveProperty('drafts');
  });

  test('says nothing by a label that names no reel', () => {
    expect(swept('M1-F-001', 'WH|77').is).toBe('not-read');
  });
});

describe('what the log is told of a pass', () => {
  test('is what a sweep that goes on has not seen yet, and nothing once it has ended', () => {
    const story = loaded();
    story.tell('sweep.started', { line: 'L1', sweep: 's1' });
    const key = label('R-100', 'K1');
    const codes = [code(key)];
    const told = () => {
      const view = viewOf(story);
      const vote = { looks: 3, by: 'nearest-below', feeder: null } as const;
      return sweepDrafts(view, [{ is: 'one', slot: 'M1-F-001', reel: key, vote }], ({ slot }) => ({
        swept: sweptSlot(view, { slot, codes }, startMs),
        label: { key, codes, looks: 3, copies: 1, firstMs: 0 },
      }));
    };
    const [tick, sighting] = told();
    expect(tick).toMatchObject({ kind: 'reel.verified', payload: { act: 'sweep', slot: 'M1-F-001' } });
    expect(typeof sighting === 'function' && sighting(['T1.1.9'], 'T1')).toMatchObject({
      kind: 'reel.sighted',
      payload: { slot: 'M1-F-001', of: 'T1.1.9' },
    });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { act: 'sweep', reel: 'K1', lot: 'LOT7' }));
    expect(told()).toEqual([]);
    story.tell('sweep.started', { line: 'L1', sweep: 's2' });
    expect(told()).toHaveLength(2);
    story.tell('sweep.ended', { line: 'L1', sweep: 's2', seen: 0, missing: [] });
    expect(told()).toEqual([]);
  });

  test('is one entry a label, with how it was seen', () => {
    const view = viewOf(loaded());
    const key = label('R-100', 'K1');
    const thing = foundThing([code(key)], view) as FoundReel; // a reel's label
    const seen = { key, codes: [code(key)], looks: 7, copies: 1, firstMs: 0 };
    const drafts = passDrafts('L1', [seen, { ...seen, key: 'unknown' }], (each) =>
      each === key ? thing : null,
    );
    expect(drafts).toMatchObject([
      {
        kind: 'reel.sighted',
        payload: { reel: 'K1', looks: 7, belongs: null, slot: null, of: null, reasons: [] },
      },
    ]);
    const hung = { slot: 'M1-F-001', vote: { looks: 3, by: 'nearest-below', feeder: 'FD-07' } } as const;
    const told = sightedDraft(seen, { line: 'L1', reel: thing.reel, why: 'expired', hung, of: 'T1.1.7' });
    expect(told.payload).toMatchObject({
      slot: 'M1-F-001',
      feeder: 'FD-07',
      belongs: 'nearest-below',
      of: 'T1.1.7',
      reasons: [{ code: 'expired' }],
    });
  });
});
