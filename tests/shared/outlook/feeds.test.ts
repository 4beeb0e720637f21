// What is foretold of a slot that no tape feeds: no splice window, no cost of a splice, and a pick list in its own words.

import { describe, expect, test } from 'vitest';
import type { PackageKind } from '../../../shared/floor/vocabulary.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { lineOutlook } from '../../../shared/outlook/line.ts';
import { supplyQuestionSteps, supplySteps } from '../../../shared/outlook/supply.ts';
import { toTheEnd } from '../../to-the-end.ts';
import { beginStory, type Story, started, startMs, tellPlant, verified } from '../floor/story.ts';

const slot = 'M1-F-001';

/** A line whose feeder lengths and splice costs are known, with this on its first slot. */
function running(kind: PackageKind): Story {
  const story = beginStory();
  tellPlant(story, { rules: { hubToPickMm: 800, intakeToPickMm: 100 } });
  story.tell('line.tape-ruled', { line: 'L1', trailerMm: 0, leaderMm: null });
  story.tell('line.splices-ruled', { line: 'L1', costs: [{ tapeWidthMm: null, parts: 7 }] });
  story.tell(
    'reel.verified',
    verified(slot, 'R-100', { reel: 'K1', quantity: 90, ...(kind === 'tape' ? {} : { comesIn: kind }) }),
  );
  story.tell('run.started', started('r1', { panelsWanted: 500 }), { at: 60 });
  return story;
}

function look(story: Story) {
  const nowMs = startMs + 70_000;
  const floor = story.floor();
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  const seen = outlook?.slots.find((each) => each.slot === slot);
  if (!outlook || !seen) throw new TypeError('The slot must be foretold');
  return { floor, outlook, seen };
}

describe('the forecast', () => {
  test('has a splice window for a tape, and for nothing else', () => {
    expect(look(running('tape')).seen.forecast.windowParts).toEqual({ opens: 200, closes: 25 });
    for (const kind of ['cut-tape', 'tray', 'tube', 'bulk'] as const) {
      const { seen } = look(running(kind));
      expect(seen.feeds).toBe(kind);
      expect(seen.forecast.windowMs, kind).toBeNull();
    }
  });

  test('takes a splice’s cost off where something is joined, not where it is exchanged or poured', () => {
    const costOf = (kind: PackageKind) => look(running(kind)).seen.estimate.splice.parts;
    expect([costOf('tape'), costOf('cut-tape'), costOf('tray'), costOf('tube'), costOf('bulk')]).toEqual([
      7, 7, 0, 0, 0,
    ]);
  });
});

test('the pick list brings stacks as full as the one that feeds', () => {
  const story = running('tray');
  story.tell('reel.packed', {
    reel: 'K1',
    part: 'R-100',
    comesIn: 'tray',
    tray: { rows: 6, columns: 15, trays: 2, first: 'top-left', along: 'rows', pin1: null },
    via: 'typed',
  });
  const { floor, outlook } = look(story);
  const { slots } = toTheEnd(supplyQuestionSteps(floor, outlook));
  const answer = slots.map(() => ({
    ends: [],
    lasts: false,
    bring: { parts: 200, byMs: 0 },
    takes: [],
  }));
  const pick = toTheEnd(supplySteps(floor, outlook, { answer, slots })).picks.find((each) =>
    each.slots.includes(slot),
  );
  // Two stacks of 180 pockets hold 200 parts.
  expect(pick).toMatchObject({ reels: 2, comesIn: 'tray' });
});
