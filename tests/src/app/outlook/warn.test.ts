// A warning that nobody has taken note of calls again, the sooner the graver it is; one that somebody answered does not.

import { expect, test } from 'vitest';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { lineOutlook, type Outlook } from '../../../../shared/outlook/line.ts';
import type { App } from '../../../../src/app/app.ts';
import { callForOpen, createWarner } from '../../../../src/app/outlook/warn.ts';
import { beginStory, started, startMs, tellPlant, verified } from '../../../shared/floor/story.ts';

const nowMs = startMs + 180_000;

type Level = 'soon' | 'due' | 'late';

/** What a line with one short reel looks like, its warning set to a level; `acknowledged`: what somebody took note of. */
function outlookAt(level: Level, acknowledged: Level | null = null): Outlook {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 5000, panelSeconds: 60 }));
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 8, run: 'run-1' }));
  const floor = story.floor();
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  const short = outlook?.slots.find(({ slot }) => slot === 'M1-F-001');
  if (!outlook || !short)
    throw new TypeError('Cannot look at the line as it must run: current value is null');
  return { ...outlook, slots: [{ ...short, acknowledged, warning: { ...short.warning, level } }] };
}

/** Looks every second for as long; the seconds at which it called. */
function heardOver(
  seconds: number,
  at: (second: number) => Outlook,
): readonly [second: number, level: string][] {
  const heard: [number, string][] = [];
  let second = 0;
  const alarm = { call: (level: string) => void heard.push([second, level]) } as never; // all that is asked of an alarm
  const warner = createWarner({} as App, alarm); // it asks nothing of the app to call
  for (; second < seconds; second += 1) callForOpen(warner, at(second), nowMs + second * 1000);
  return heard;
}

test.each([
  ['soon', 120],
  ['due', 45],
  ['late', 15],
] as const)('%s calls at once and every %d s', (level, every) => {
  const outlook = outlookAt(level);
  const heard = heardOver(3 * every, () => outlook);
  expect(heard).toEqual([0, every, 2 * every].map((second) => [second, level]));
});

test('a graver level calls at once, whenever the one before did', () => {
  const [due, late] = [outlookAt('due'), outlookAt('late')];
  expect(heardOver(30, (second) => (second < 10 ? due : late))).toEqual([
    [0, 'due'],
    [10, 'late'],
    [25, 'late'],
  ]);
});

test('what somebody took note of calls no more, until it is graver', () => {
  const [open, noted, graver] = [outlookAt('due'), outlookAt('due', 'due'), outlookAt('late', 'due')];
  const at = (second: number) => (second < 5 ? open : second < 200 ? noted : graver);
  expect(heardOver(210, at)).toEqual([
    [0, 'due'],
    [200, 'late'],
  ]);
});

test('a clock that is set back an hour makes nobody wait for an hour', () => {
  const outlook = outlookAt('soon');
  const heard: string[] = [];
  const warner = createWarner({} as App, { call: (level: string) => void heard.push(level) } as never); // as above
  callForOpen(warner, outlook, nowMs);
  callForOpen(warner, outlook, nowMs - 3_600_000);
  expect(heard).toEqual(['soon', 'soon']);
});
