// Which length of tape counts, and what a splice window makes of it. Figures by a ruler's example: 800 mm from hub to pick point at 4 mm are 200
// pockets; with a trailer of 160 mm behind the last part the tape's end leaves the hub when 160 parts are left, at 2 mm when 320 are.

import { describe, expect, test } from 'vitest';
import { typeMisfits } from '../../../shared/floor/feeder-misfits.ts';
import { tapeLengthsOf, windowLengthsOf } from '../../../shared/floor/feeder-types.ts';
import { windowOf } from '../../../shared/floor/remaining.ts';
import { forecastSlot } from '../../../shared/forecast/run-out.ts';
import { neverStopping } from '../../../shared/forecast/working-time.ts';
import { beginStory, brookSetup, type Story, tellPlant, wantedSlot } from './story.ts';

const none = { hubToPickMm: null, intakeToPickMm: null, trailerMm: null, leaderMm: null };

function plant(): Story {
  const story = beginStory();
  tellPlant(story, { rules: { hubToPickMm: 800, intakeToPickMm: 260 } });
  story.tell('feeder-type.known', {
    type: 'twin 8',
    lanes: 2,
    drive: null,
    pocketMm: null,
    ...none,
    hubToPickMm: 700,
    trailerMm: 60,
  });
  story.tell('feeder.typed', { feeder: 'F-1', type: 'twin 8', ...none, trailerMm: 50 });
  return story;
}

describe('tape lengths', () => {
  test('are the feeder’s own, else its type’s, else the line’s, each for itself; what nobody measured is not known', () => {
    const story = plant();
    expect(tapeLengthsOf(story.floor(), 'L1', 'F-1')).toEqual({
      hubToPickMm: { mm: 700, of: 'type' },
      intakeToPickMm: { mm: 260, of: 'line' },
      trailerMm: { mm: 50, of: 'feeder' },
      leaderMm: null,
    });
    expect(tapeLengthsOf(story.floor(), 'L1', null).trailerMm).toBeNull();
    story.tell('line.tape-ruled', { line: 'L1', trailerMm: 40, leaderMm: null });
    expect(tapeLengthsOf(story.floor(), 'L1', 'F-2').trailerMm).toEqual({ mm: 40, of: 'line' });
    story.tell('feeder-type.withdrawn', { type: 'twin 8', reason: '' });
    expect(tapeLengthsOf(story.floor(), 'L1', 'F-1').hubToPickMm).toEqual({ mm: 800, of: 'line' });
  });

  test('make a window only where hub, intake and trailer are known and in order', () => {
    const story = plant();
    expect(windowLengthsOf(story.floor(), 'L1', null)).toBeNull();
    expect(windowLengthsOf(story.floor(), 'L1', 'F-1')).toEqual({
      hubToPickMm: 700,
      intakeToPickMm: 260,
      trailerMm: 50,
    });
    story.tell('feeder.typed', { feeder: 'F-1', type: 'twin 8', ...none, hubToPickMm: 200 });
    expect(windowLengthsOf(story.floor(), 'L1', 'F-1')).toBeNull();
  });

  test('a splice of a tape whose trailer nobody measured is bounded by what holds for any', () => {
    const story = plant();
    const slot = { line: 'L1', slot: 'M1-F-001', feeder: null, tapes: [] };
    expect(windowOf(story.floor(), slot, brookSetup.setup)).toEqual({ opens: 200, closes: 0 });
    story.tell('line.tape-ruled', { line: 'L1', trailerMm: 160, leaderMm: null });
    expect(windowOf(story.floor(), slot, brookSetup.setup)).toEqual({ opens: 160, closes: 25 });
    story.tell('line.tape-ruled', { line: 'L1', trailerMm: 300, leaderMm: null });
    expect(windowOf(story.floor(), slot, brookSetup.setup)).toEqual({ opens: 125, closes: 0 });
  });
});

describe('the forecast’s window', () => {
  test.each([
    [4, 0, 200, 65],
    [4, 160, 160, 25],
    [2, 160, 320, 50],
    [4, 300, 125, 0],
  ])(
    'at %s mm with a trailer of %s mm opens at %s parts and closes at %s',
    (pitchMm, trailerMm, opens, closes) => {
      const pace = { nowMs: 0, panelSeconds: 10, panelsLeft: 1000, calendar: neverStopping };
      const load = { slot: 'M1-F-001', perPanel: 10, left: 1000, sd: 0, loss: 0 };
      const lengths = { hubToPickMm: 800, intakeToPickMm: 260, trailerMm };
      const { windowParts, windowMs } = forecastSlot(pace, { ...load, pitchMm, ...lengths });
      expect(windowParts).toEqual({ opens, closes });
      // A part a second.
      expect(windowMs).toEqual({ opens: (1000 - opens) * 1000, closes: (1000 - closes) * 1000 });
    },
  );
});

describe('what a feeder’s type lacks', () => {
  const misfits = (more: Parameters<typeof wantedSlot>[2], feeder = 'F-1') => {
    const story = beginStory();
    story.tell('feeder-type.known', { type: 'twin 8', lanes: 2, drive: 'air', pocketMm: 2.1, ...none });
    story.tell('feeder-type.known', { type: 'deep 8', lanes: 1, drive: null, pocketMm: null, ...none });
    story.tell('feeder.typed', { feeder: 'F-1', type: 'twin 8', ...none });
    story.tell('feeder.typed', { feeder: 'F-2', type: 'deep 8', ...none });
    return typeMisfits(story.floor(), feeder, wantedSlot('M1-F-001', 'R-100', more)).map(({ code }) => code);
  };

  test('is each thing that the slot wants and the type has not', () => {
    expect(misfits({ feederType: 'deep 8', drive: 'electric', pocketMm: 2.2 })).toEqual([
      'feeder-type',
      'feeder-drive',
      'feeder-height',
    ]);
    expect(misfits({ feederType: 'twin 8', drive: ' AIR ', pocketMm: 2.1 })).toEqual([]);
  });

  test('is nothing where nobody asked, where nobody described it, and of a feeder of no known type', () => {
    expect(misfits({})).toEqual([]);
    expect(misfits({ feederType: 'a word of the sheet' })).toEqual([]);
    expect(misfits({ drive: 'electric', pocketMm: 9 }, 'F-2')).toEqual([]);
    expect(misfits({ feederType: 'deep 8', drive: 'electric', pocketMm: 9 }, 'F-9')).toEqual([]);
  });
});
