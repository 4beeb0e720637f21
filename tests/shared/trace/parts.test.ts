// The index in parts: a copy goes on by itself, and what was put away and brought back answers as if it had never been away.

import { describe, expect, test } from 'vitest';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePlaces } from '../../../shared/trace/ask.ts';
import { addSettled, copyTrace, takeSettled } from '../../../shared/trace/parts.ts';
import { type TraceIndex, traceEntry, traceLog } from '../../../shared/trace/stretches.ts';
import { beginStory, counted, started, tellPlant, unloaded, verified } from '../floor/story.ts';

/** Two runs with a change of reels in each; the log is cut in the middle of the second. */
function told() {
  const story = beginStory();
  tellPlant(story);
  const load = (slot: string, lot: string, act: 'load' | 'splice' = 'load') =>
    story.tell('reel.verified', verified(slot, 'R-100', { act, reel: `K-${lot}`, lot, quantity: 40 }));
  const scan = (run: string, from: number, to: number) => {
    for (let panel = from; panel <= to; panel++)
      story.tell('panels.counted', counted(run, 1, `${run}-${panel}`));
  };
  load('M1-F-001', 'LA');
  load('M1-R-003', 'LB');
  story.tell('run.started', started('r1'));
  scan('r1', 1, 8);
  load('M1-F-001', 'LC', 'splice');
  scan('r1', 9, 16);
  story.tell('run.ended', { run: 'r1', line: 'L1', panels: 16, note: '' });
  story.tell('reel.unloaded', unloaded('M1-R-003', { reel: 'K-LB', part: 'R-100', lot: 'LB' }));
  load('M1-R-003', 'LD');
  story.tell('run.started', started('r2'));
  scan('r2', 1, 8);
  const half = story.entries.length;
  load('M1-F-001', 'LE', 'splice');
  scan('r2', 9, 12);
  return { entries: [...story.entries].sort(compareEntries), half };
}

const { entries, half } = told();
const goOn = (index: TraceIndex) => {
  for (const entry of entries.slice(half)) traceEntry(index, entry);
  return index;
};
const whole = traceLog(entries);
/** Where each lot is, in an order of its own: putting away changes none but that. */
const answers = (index: TraceIndex) =>
  ['LA', 'LB', 'LC', 'LD', 'LE'].map((lot) =>
    tracePlaces(index, { lot })
      .map((place) => JSON.stringify(place))
      .sort(),
  );

describe('copyTrace()', () => {
  test('goes on by itself, and leaves what it was copied from as it was', () => {
    const index = traceLog(entries.slice(0, half));
    const before = answers(index);
    const serials = index.serials.size;
    const copy = copyTrace(index);
    goOn(copy);
    expect(answers(copy)).toEqual(answers(whole));
    expect(copy.serials.size).toBe(whole.serials.size);
    expect(answers(index)).toEqual(before);
    expect(index.serials.size).toBe(serials);
    goOn(index);
    expect(answers(index)).toEqual(answers(whole));
  });
});

describe('takeSettled()', () => {
  test('takes out what nothing to come changes, once, and what is left goes on as before', () => {
    const index = traceLog(entries.slice(0, half));
    const all = index.stretches.length;
    const settled = takeSettled(index);
    expect(settled.stretches.length).toBeGreaterThan(0);
    expect(settled.stretches.length + index.stretches.length).toBe(all);
    expect(index.stretches.length).toBe([...index.open.values()].reduce((sum, open) => sum + open.size, 0));
    expect(index.serials.size).toBe(0);
    expect(index.serialByPanel.size).toBe(0);
    goOn(index);
    const more = takeSettled(index);
    expect(more.stretches.some((stretch) => settled.stretches.includes(stretch))).toBe(false);
    addSettled(index, settled);
    addSettled(index, more);
    expect(answers(index)).toEqual(answers(whole));
    expect([...index.serials.keys()].sort()).toEqual([...whole.serials.keys()].sort());
  });
});
