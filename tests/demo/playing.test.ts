// The demo's shift on the clock: what is told does not hang on how far ahead it was played.

import { expect, it } from 'vitest';
import { openLinesPlay, simulateLines } from '../../demo/more-lines.ts';
import { openPlaying } from '../../demo/playing.ts';
import type { Entry } from '../../shared/log/entry.ts';

const HOUR_MS = 3_600_000;
const openedMs = Date.parse('2026-03-02T08:33:00Z');
const zone = 'Europe/London';

it.each([
  { lines: 1, lanes: false },
  { lines: 2, lanes: true },
])('tells in pieces what one long play has, with $lines lines', ({ lines, lanes }) => {
  const playing = openPlaying({ seed: 4, openedMs, speed: 60, zone, lines, lanes });
  const startMs = openedMs - 140 * 60_000;
  const whole = simulateLines({ seed: 4, startMs, zone, hours: 5, paste: true }, lines, { lanes });
  const pieces = [];
  // A minute of the clock is an hour of the shift: before, at and after the hours of each play.
  for (const minutes of [0, 0.5, 40 / 60, 2]) {
    pieces.push(...playing.tell(openedMs + minutes * 60_000));
    const until = whole.filter(({ hlc }) => hlc.ms <= openedMs + minutes * HOUR_MS);
    expect(pieces.map(({ hash }) => hash)).toEqual(until.map(({ hash }) => hash));
  }
  expect(playing.told).toEqual(pieces);
});

it('at each moment of a changeover all is told that happened, and nothing twice', () => {
  const startMs = openedMs;
  const settings = { seed: 4, startMs, zone };
  const whole = simulateLines({ ...settings, hours: 8.5 }, 2);
  const changes = whole.filter(({ kind, hlc }) => kind === 'setup.chosen' && hlc.ms > startMs);
  expect(changes).toHaveLength(2);
  const [first = startMs, last = startMs] = changes.map(({ hlc }) => hlc.ms);
  const playTo = openLinesPlay(settings, 2);
  const pieces = [...playTo(first)];
  const hashesTo = (entries: readonly Entry[], untilMs: number) =>
    new Set(entries.filter(({ hlc }) => hlc.ms < untilMs).map(({ hash }) => hash));
  for (let untilMs = first; untilMs < last + 45 * 60_000; untilMs += 47_000) {
    pieces.push(...playTo(untilMs));
    expect(hashesTo(pieces, untilMs)).toEqual(hashesTo(whole, untilMs));
  }
  expect(new Set(pieces).size).toBe(pieces.length);
});
