// Panels scanned before a machine and where they are counted: what lay between, told by hand.

import { describe, expect, test } from 'vitest';
import { seenInLine } from '../../../shared/floor/fold-seen.ts';
import { panelsInLine } from '../../../shared/floor/in-line.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { beginStory, counted, type Story, started, tellPlant } from './story.ts';

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('r1'));
  return story;
}
const see = (story: Story, serial: string, tablet = 'T1') =>
  story.tell('panel.seen', { line: 'L1', machine: 'M1', serial, via: 'wedge' }, { tablet });
const count = (story: Story, from: number, to: number) => {
  for (let at = from; at <= to; at++) story.tell('panels.counted', counted('r1', 1, `PN${at}`));
};
const seen = (story: Story) => seenInLine(story.floor(), 'L1', 'M1');

describe('panels in the line', () => {
  test('are what is counted from the scan before the machine up to that panel', () => {
    const story = begun();
    count(story, 1, 4);
    // PN5 to PN8 stand between when PN9 goes in: with it five.
    see(story, 'PN9');
    expect(seen(story)).toBeNull();
    count(story, 5, 9);
    expect(seen(story)).toEqual({ panels: 1, least: 0, most: 5 });
    see(story, 'PN11');
    count(story, 10, 11);
    expect(seen(story)).toEqual({ panels: 2, least: 0, most: 5 });
  });

  test('are counted before they reach the machine where its scan comes second', () => {
    const story = begun();
    count(story, 1, 6);
    // PN4 goes in; PN5 and PN6 are counted and wait behind it.
    see(story, 'PN4');
    expect(seen(story)).toEqual({ panels: 1, least: -3, most: 0 });
  });

  test('are told by a station’s count of its code as by a person’s, and not by a total that grew by more', () => {
    const station = { station: 'exit', line: 'L1' } as const;
    const link = { tablet: 'LINK', who: null };
    const story = beginStory();
    tellPlant(story);
    const known = { machine: null, at: 'out', means: 'counter', version: '0.1.0', address: '' } as const;
    story.tell('station.known', { ...station, ...known }, link);
    const say = (total: number, serial: string | null) =>
      story.tell('station.counted', { ...station, boot: 'a', total, serial, skipped: null }, link);
    say(100, null);
    story.tell('line.counted-by', { line: 'L1', station: 'exit' });
    story.tell('run.started', started('r1'));
    say(101, 'PN1');
    say(102, 'PN2');
    see(story, 'PN4');
    say(103, 'PN3');
    say(104, 'PN4');
    expect(seen(story)).toEqual({ panels: 1, least: 0, most: 2 });
    see(story, 'PN9');
    say(109, 'PN9');
    expect(seen(story)).toEqual({ panels: 1, least: 0, most: 2 });
  });

  test('are not told by counts of many at once, nor across runs, nor by a second scan', () => {
    const story = begun();
    see(story, 'PN3');
    see(story, 'PN3', 'T2');
    story.tell('panels.counted', counted('r1', 2));
    count(story, 3, 3);
    expect(seen(story)).toBeNull();
    see(story, 'PN9');
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 3, note: '' });
    story.tell('run.started', started('r2'));
    story.tell('panels.counted', counted('r2', 1, 'PN9'));
    expect(seen(story)).toBeNull();
  });

  test('are forgotten where either scan is taken back', () => {
    const story = begun();
    const before = see(story, 'PN2');
    count(story, 1, 2);
    const at = story.entries.at(-1);
    const back = (of: string) =>
      story.tell('entry.corrected', { of, line: 'L1', slot: null, reason: 'slip' }, { tablet: 'T1' });
    expect(seen(story)).toMatchObject({ panels: 1, most: 2 });
    const isLast = at ? entryId(at) : '';
    const other = begun();
    const waiting = see(other, 'PN1');
    other.tell('entry.corrected', { of: entryId(waiting), line: 'L1', slot: null, reason: 'slip' });
    count(other, 1, 1);
    expect(seen(other)).toBeNull();
    back(isLast);
    expect(seen(story)).toBeNull();
    expect(before.kind).toBe('panel.seen');
  });
});

describe('the range of a machine', () => {
  test('is widened by what scans showed beyond it, and never narrowed', () => {
    const story = begun();
    story.tell('line.panels-ruled', {
      line: 'L1',
      machines: [{ machine: 'M1', least: -1, most: 3 }],
      missed: 0,
    });
    const range = () => panelsInLine(story.floor(), 'L1', 'M1-F-001');
    expect(range()).toMatchObject({ least: -1, most: 3, isGuess: false });
    see(story, 'PN2');
    count(story, 1, 2);
    expect(range()).toMatchObject({ least: -1, most: 3 });
    see(story, 'PN9');
    count(story, 3, 9);
    expect(range()).toMatchObject({ least: -1, most: 7, isGuess: false });
  });

  test('stays the guess where nobody entered one, however little scans showed', () => {
    const story = begun();
    see(story, 'PN1');
    count(story, 1, 1);
    expect(panelsInLine(story.floor(), 'L1', 'M1-F-001')).toMatchObject({
      least: -3,
      most: 18,
      isGuess: true,
    });
  });
});
