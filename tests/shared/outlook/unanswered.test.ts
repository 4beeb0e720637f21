// A warning that nobody takes note of is told to leads elsewhere: only where its line runs, its tape still stands, and for as long.

import { describe, expect, test } from 'vitest';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { ESCALATE_MS, unanswered } from '../../../shared/outlook/unanswered.ts';
import { beginStory, started, tellPlant, verified } from '../floor/story.ts';

const due = '2026-03-02T06:10:00.000Z';

/** A line that runs, with a reel on a slot for which a warning was raised. */
function warned(level: 'soon' | 'due' | 'late') {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 4 }));
  story.tell('run.started', started('r1'));
  const [slot] = [...story.floor().slots.values()];
  const need = slot?.tapes.at(-1)?.entry ?? '';
  const raise = (next: 'soon' | 'due' | 'late') =>
    story.tell('warning.raised', { line: 'L1', slot: 'M1-F-001', need, level: next, due });
  raise(level);
  const atMs = story.entries.at(-1)?.hlc.ms ?? 0;
  const open = (afterMs: number) => unanswered(story.floor(), atMs + afterMs).map((each) => each.level);
  return { story, need, raise, atMs, open };
}

test('waits for the people of the line first', () => {
  const { open } = warned('due');
  expect(open(ESCALATE_MS - 1)).toEqual([]);
  expect(open(ESCALATE_MS)).toEqual(['due']);
});

test('does not tell others of one that only says to bring a reel', () => {
  expect(warned('soon').open(10 * ESCALATE_MS)).toEqual([]);
});

test('is over once somebody goes, and begins anew where it becomes louder', () => {
  const { story, need, raise, open } = warned('due');
  story.tell('warning.acknowledged', { line: 'L1', slot: 'M1-F-001', need, level: 'due' });
  expect(open(2 * ESCALATE_MS)).toEqual([]);
  raise('late');
  expect(open(2 * ESCALATE_MS)).toEqual(['late']);
});

test('is over once another reel is spliced on, whoever did it', () => {
  const { story, open } = warned('late');
  story.tell('reel.verified', { ...verified('M1-F-001', 'R-100', { reel: 'K2' }), act: 'splice' });
  expect(open(2 * ESCALATE_MS)).toEqual([]);
});

test('is over once a count shows that there is enough, though nobody went', () => {
  const { story, open } = warned('late');
  expect(open(2 * ESCALATE_MS)).toEqual(['late']);
  const facts = { line: 'L1', slot: 'M1-F-001', reel: 'K1', part: 'R-100', lot: null, panels: 0 };
  story.tell('reel.counted', { ...facts, quantity: 5000, sd: 0, basis: 'machine' });
  expect(open(2 * ESCALATE_MS)).toEqual([]);
});

test('computes nothing of a line that is left out', () => {
  const { story, atMs } = warned('late');
  const asked: string[] = [];
  class Told<V> extends Map<string, V> {
    override get(line: string): V | undefined {
      asked.push(line);
      return super.get(line);
    }
  }
  const floor = story.floor();
  const heard = { ...floor, current: new Told(floor.current), calendars: new Told(floor.calendars) };
  expect(unanswered(heard, atMs + ESCALATE_MS, ['L1'])).toEqual([]);
  expect(asked).toEqual([]);
  expect(unanswered(heard, atMs + ESCALATE_MS, ['L2'])).toHaveLength(1);
  expect(asked).toContain('L1');
});

test('asks nobody to hurry for a line that stands', () => {
  const { story, open } = warned('late');
  story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'other', note: '' });
  expect(open(2 * ESCALATE_MS)).toEqual([]);
});

describe('a line of two lanes', () => {
  const lane2 = laneLine('L1', 2);
  /** Lane 2 runs, and where asked lane 1 too, with a reel that is short on a slot of both. */
  function lanes({ both }: { readonly both: boolean }) {
    const story = beginStory();
    tellPlant(story);
    story.tell('line.defined', { line: lane2, name: 'Line 1, lane 2', zone: 'UTC', machines: [] });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 4 }));
    story.tell('run.started', started('r2', { line: lane2 }));
    if (both) story.tell('run.started', started('r1'));
    const need = [...story.floor().slots.values()][0]?.tapes.at(-1)?.entry ?? '';
    const warning = { line: lane2, slot: 'M1-F-001', need, level: 'due' } as const;
    story.tell('warning.raised', { ...warning, due });
    const atMs = story.entries.at(-1)?.hlc.ms ?? 0;
    const open = (...without: readonly string[]) =>
      unanswered(story.floor(), atMs + 240_000, without).map(({ line, level }) => [line, level]);
    return { story, warning, open };
  }

  test('tells a warning of the lane that runs alone, also beside a tablet of the other lane', () => {
    const { story, warning, open } = lanes({ both: false });
    expect(open()).toEqual([[lane2, 'due']]);
    expect(open('L1')).toEqual([[lane2, 'due']]);
    expect(open(lane2)).toEqual([]);
    story.tell('warning.acknowledged', { ...warning, line: 'L1' });
    expect(open()).toEqual([]);
  });

  test('tells once what both lanes give, and nothing where the tablet watches one of them', () => {
    const { open } = lanes({ both: true });
    expect(open()).toHaveLength(1);
    expect(open('L1')).toEqual([]);
    expect(open(lane2)).toEqual([]);
    expect(open('L2')).toHaveLength(1);
  });
});
