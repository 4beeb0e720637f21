// Runs: phases, panels of several tablets, and what the slots have used.

import { describe, expect, test } from 'vitest';
import { usedPlacements } from '../../../shared/floor/remaining.ts';
import { type FloorState, slotKey } from '../../../shared/floor/state.ts';
import { codeKey, tallyOf } from '../../../shared/floor/tally.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { beginStory, counted, type Story, started, startMs, tellPlant, verified } from './story.ts';

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

function usedOn(floor: FloorState, slot: string): number | null {
  const there = floor.slots.get(slotKey('L1', slot));
  return there ? usedPlacements(floor, there) : null;
}

describe('foldRun()', () => {
  test('starts, stops, resumes and ends a run, each stop with its ends', () => {
    const story = begun();
    story.tell('run.started', started('run-1'), { at: 100 });
    story.tell('run.stopped', { run: 'run-1', line: 'L1', reason: 'jam', note: '' }, { at: 200 });
    expect(story.floor().runs.get('run-1')).toMatchObject({
      phase: 'stopped',
      stopReason: 'jam',
      sinceMs: startMs + 200_000,
      stops: [[startMs + 200_000, null]],
    });
    story.tell('run.stopped', { run: 'run-1', line: 'L1', reason: 'break', note: '' }, { at: 210 });
    story.tell('run.resumed', { run: 'run-1', line: 'L1' }, { at: 260 });
    story.tell('run.resumed', { run: 'run-1', line: 'L1' }, { at: 270 });
    expect(story.floor().runs.get('run-1')).toMatchObject({
      phase: 'running',
      stopReason: null,
      sinceMs: startMs + 260_000,
      stops: [[startMs + 200_000, startMs + 260_000]],
    });
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 0, note: '' }, { at: 300 });
    expect(story.floor().runs.get('run-1')).toMatchObject({ phase: 'ended', sinceMs: startMs + 300_000 });
    expect(story.floor().current.size).toBe(0);
  });

  test('closes the stop in which a run ends', () => {
    const story = begun();
    story.tell('run.started', started('run-1'), { at: 100 });
    story.tell('run.stopped', { run: 'run-1', line: 'L1', reason: 'jam', note: '' }, { at: 200 });
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 0, note: '' }, { at: 300 });
    expect(story.floor().runs.get('run-1')?.stops).toEqual([[startMs + 200_000, startMs + 300_000]]);
  });

  test('lets a stop begin when the person said that the line stood, within what the log allows', () => {
    const stood = (stoodFrom: number | string) => {
      const story = begun();
      story.tell('run.started', started('run-1'), { at: 100 });
      story.tell('panels.counted', counted('run-1', 1), { at: 150 });
      const said =
        typeof stoodFrom === 'string' ? stoodFrom : new Date(startMs + stoodFrom * 1000).toISOString();
      const stop = { run: 'run-1', line: 'L1', reason: 'jam', note: '', stoodFrom: said } as const;
      story.tell('run.stopped', stop, { at: 900 });
      const run = story.floor().runs.get('run-1');
      return [run?.sinceMs, run?.stops[0]]
        .flat()
        .map((ms) => (typeof ms === 'number' ? (ms - startMs) / 1000 : ms));
    };
    expect(stood(180)).toEqual([180, 180, null, true]);
    expect(stood(20)).toEqual([150, 150, null, true]);
    expect(stood(5000)).toEqual([900, 900, null, true]);
    expect(stood('noon')).toEqual([900, 900, null]);
  });

  test('keeps what was said of a stop in which the run ends, and of a run ended while it went on', () => {
    const story = begun();
    const stoodFrom = new Date(startMs + 180_000).toISOString();
    story.tell('run.started', started('run-1'), { at: 100 });
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 0, note: '', stoodFrom }, { at: 300 });
    expect(story.floor().runs.get('run-1')?.stops).toEqual([[startMs + 180_000, startMs + 300_000, true]]);
  });

  test('adds the panels of several tablets, subtracts what was counted too much, never below none', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    story.tell('panels.counted', counted('run-1', 5, 'BW-5'));
    story.tell('panels.counted', counted('run-1', 3), { tablet: 'T2' });
    story.tell('panels.counted', counted('run-1', -2));
    expect(story.floor().runs.get('run-1')).toMatchObject({ done: 6, serials: 1, lastSerial: 'BW-5' });
    story.tell('panels.counted', counted('run-1', -100));
    expect(story.floor().runs.get('run-1')?.done).toBe(0);
  });

  test('starting the next run ends the one before and sums up what its slots used', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K3' }));
    story.tell('run.started', started('run-1'));
    story.tell('panels.counted', counted('run-1', 100));
    story.tell('run.started', started('run-2'));
    story.tell('panels.counted', counted('run-2', 10));
    const floor = story.floor();
    expect(floor.runs.get('run-1')?.phase).toBe('ended');
    expect(floor.current.get('L1')).toBe('run-2');
    expect([usedOn(floor, 'M1-F-001'), usedOn(floor, 'M1-R-003')]).toEqual([220, 440]);
  });

  test('uses from a slot between two runs only what is still counted of the one that ended', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
    story.tell('panels.counted', counted('run-1', 10));
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 10, note: '' });
    story.tell('panels.counted', counted('run-1', 10));
    const floor = story.floor();
    expect(floor.runs.get('run-1')?.done).toBe(20);
    expect(usedOn(floor, 'M1-F-001')).toBe(40);
    expect(floor.slots.get('L1/M1-F-001')).toMatchObject({ usedBefore: 40, sinceRun: null });
  });

  test('counts a reel that was loaded in the middle of a run from there', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    story.tell('panels.counted', counted('run-1', 50));
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K1' }));
    story.tell('panels.counted', counted('run-1', 7));
    expect(usedOn(story.floor(), 'M1-R-003')).toBe(28);
  });

  test('ignores a second start under the same name, a stranger’s end and counts of a run unknown', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    story.tell('run.started', started('run-1', { panelsWanted: 9 }));
    story.tell('run.ended', { run: 'run-0', line: 'L1', panels: 0, note: '' });
    story.tell('panels.counted', counted('run-0', 9));
    story.tell('run.stopped', { run: 'run-0', line: 'L1', reason: 'jam', note: '' });
    expect(story.floor().runs.get('run-1')).toMatchObject({ panelsWanted: 500, phase: 'running', done: 0 });
    expect(story.floor().runs.size).toBe(1);
  });

  test('counts a panel’s code once a run, on however many tablets it is scanned', () => {
    const story = begun();
    story.tell('run.started', started('r1'));
    story.tell('panels.counted', counted('r1', 1, 'PN1'), { at: 10 });
    story.tell('panels.counted', counted('r1', 1, 'PN1'), { at: 11 });
    story.tell('panels.counted', counted('r1', 1, 'PN1'), { tablet: 'T2', at: 12 });
    story.tell('panels.counted', counted('r1', 1, 'PN2'), { tablet: 'T2', at: 13 });
    expect(story.floor().runs.get('r1')).toMatchObject({ done: 2, serials: 2, lastSerial: 'PN2' });
    story.tell('run.started', started('r2'), { at: 20 });
    story.tell('panels.counted', counted('r2', 1, 'PN1'), { at: 30 });
    expect(story.floor().runs.get('r2')?.done, 'the other side, or built again').toBe(1);
    story.tell('panels.counted', counted('r1', 1, 'PN2'), { tablet: 'T3', at: 31 });
    expect(story.floor().runs.get('r1')?.done, 'a second scan after the end').toBe(2);
    expect(story.floor().runs.get('r2')?.done, 'nor does it count in the next').toBe(1);
  });

  test('counts a code again after its count was taken back, wherever in the run that was', () => {
    const story = begun();
    story.tell('run.started', started('r1'));
    const first = story.tell('panels.counted', counted('r1', 1, 'PN1'));
    story.tell('panels.counted', counted('r1', 1, 'PN2'));
    story.tell('entry.corrected', { of: entryId(first), line: 'L1', slot: null, reason: 'wrong code' });
    expect(story.floor().runs.get('r1')).toMatchObject({ done: 1, voids: [[0, 1]] });
    story.tell('panels.counted', counted('r1', 1, 'PN1'));
    const run = story.floor().runs.get('r1');
    expect(run).toMatchObject({ done: 2 });
    expect(run && tallyOf(run), 'no two panels share a place in the order').toBe(3);
    expect(story.floor().codes.get(codeKey('r1', 'PN1'))?.tally).toBe(3);
  });

  test('puts a count that arrives late into the run of its clock reading, also after that has ended', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100'), { at: 1 });
    story.tell('run.started', started('r1'), { at: 10 });
    story.tell('panels.counted', counted('r1', 5), { at: 20 });
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 5, note: '' }, { at: 30 });
    story.tell('panels.counted', counted('r1', 2), { tablet: 'T2', at: 25 });
    expect(story.floor().runs.get('r1')?.done, 'read before the end').toBe(7);
    const late = story.tell('panels.counted', counted('r1', 3), { tablet: 'T2', at: 40 });
    expect(story.floor().runs.get('r1')?.done, 'the last of the line, while nothing else runs').toBe(10);
    expect(usedOn(story.floor(), 'M1-F-001')).toBe(20);
    story.tell('entry.corrected', { of: entryId(late), line: 'L1', slot: null, reason: '' }, { at: 41 });
    expect(story.floor().runs.get('r1')?.done).toBe(7);
    expect(usedOn(story.floor(), 'M1-F-001')).toBe(14);
    story.tell('run.started', started('r2', { panelPrefix: 'B-' }), { at: 50 });
    story.tell('panels.counted', counted('r1', 1), { tablet: 'T2', at: 60 });
    expect(story.floor().runs.get('r2')?.done, 'another run was going on by then').toBe(1);
    expect(story.floor().runs.get('r1')?.done).toBe(7);
  });

  test('leaves a late panel in its own run where its code says so', () => {
    const story = begun();
    story.tell('run.started', started('r1', { panelPrefix: 'A-' }), { at: 10 });
    story.tell('run.started', started('r2', { panelPrefix: 'B-' }), { at: 50 });
    story.tell('panels.counted', counted('r1', 1, 'A-7'), { tablet: 'T2', at: 60 });
    expect([...story.floor().runs.values()].map(({ done }) => done)).toEqual([1, 0]);
  });
});
