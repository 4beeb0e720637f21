// Lots poured over each other, against a feeder that is played: at each panel any part that was in it may come. Whatever was poured in since it was
// last emptied out must be possible on the panel; a lot may be sure only where nothing else can be in the feeder.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tracePanel } from '../../../shared/trace/ask.ts';
import { idOf, started, unloaded } from '../floor/story.ts';
import { begun, build, indexOf, load, placesOf, slot } from './line-story.ts';

const lotsOf = (index: ReturnType<typeof indexOf>, panel: number) =>
  tracePanel(index, String(panel), 'r1')?.slots.find((each) => each.slot === slot)?.lots ?? [];

test('before the refill one lot is sure, after it either is possible until the feeder is emptied out', () => {
  const story = begun();
  load(story, 'A', { comesIn: 'bulk', feeder: 'F1' });
  story.tell('run.started', started('r1'));
  build(story, 10);
  load(story, 'B', { act: 'refill', comesIn: 'bulk', feeder: 'F1', run: 'r1' });
  build(story, 10);
  story.tell('reel.unloaded', { ...unloaded(slot, { feeder: 'F1', reel: 'B', quantity: 0 }), purged: true });
  load(story, 'C', { comesIn: 'bulk', feeder: 'F1', run: 'r1' });
  build(story, 10);
  const index = indexOf(story);
  expect(lotsOf(index, 5)).toMatchObject([{ lot: 'LOT-A', sure: true }]);
  for (const panel of [12, 19])
    expect(lotsOf(index, panel)).toMatchObject([
      { lot: 'LOT-A', sure: false, mixed: true },
      { lot: 'LOT-B', sure: false, mixed: true },
    ]);
  expect(lotsOf(index, 28)).toMatchObject([{ lot: 'LOT-C', sure: true }]);
  expect(placesOf(story, 'A')[0]?.[2]).toEqual([1, 21]);
});

test('what was not emptied out is possible under the next lot, on a line that goes on too', () => {
  const story = begun();
  load(story, 'A', { comesIn: 'bulk', feeder: 'F1' });
  story.tell('run.started', started('r1'));
  build(story, 5);
  story.tell('reel.unloaded', unloaded(slot, { feeder: 'F1', reel: 'A', quantity: 0 }));
  load(story, 'B', { comesIn: 'bulk', feeder: 'F1', run: 'r1' });
  build(story, 5);
  const lots = lotsOf(indexOf(story), 9);
  expect(lots.map(({ lot, sure }) => [lot, sure]).sort()).toEqual([
    ['LOT-A', false],
    ['LOT-B', false],
  ]);
});

test('an exchange ends one tray and begins the next, as far as the panels between are known', () => {
  const story = begun();
  const first = load(story, 'A', { comesIn: 'tray' });
  story.tell('run.started', started('r1'));
  build(story, 10);
  load(story, 'B', { act: 'exchange', comesIn: 'tray', replaces: idOf(first), run: 'r1' });
  build(story, 10);
  // The panel at work may have got some of its parts before the exchange and some after.
  expect(placesOf(story, 'A')).toEqual([['r1', [1, 10], [1, 11]]]);
  expect(placesOf(story, 'B')).toEqual([['r1', [12, 20], [11, 20]]]);
});

const acts = fc.array(
  fc.oneof(
    {
      weight: 5,
      arbitrary: fc.record({ act: fc.constant('build' as const), panels: fc.integer({ min: 1, max: 6 }) }),
    },
    { weight: 3, arbitrary: fc.record({ act: fc.constant('pour' as const) }) },
    { weight: 2, arbitrary: fc.record({ act: fc.constant('off' as const), purged: fc.boolean() }) },
    { weight: 1, arbitrary: fc.record({ act: fc.constant('count' as const) }) },
    { weight: 1, arbitrary: fc.record({ act: fc.constant('run' as const) }) },
  ),
  { minLength: 1, maxLength: 18 },
);

test('in every history all that can be in the feeder is possible, and nothing of it told as sure', () => {
  fc.assert(
    fc.property(acts, (history) => {
      const story = begun();
      story.tell('run.started', started('r1'));
      /** What can be in the feeder, whether or not it stands on the slot. */
      let inside: string[] = [];
      let isOn = false;
      let poured = 0;
      let run = 1;
      const panels: { run: string; lots: readonly string[] }[] = [];
      for (const each of history) {
        if (each.act === 'pour') {
          const reel = `P${++poured}`;
          load(story, reel, { act: isOn ? 'refill' : 'load', comesIn: 'bulk', feeder: 'F1', run: `r${run}` });
          inside = [...inside, `LOT-${reel}`];
          isOn = true;
        } else if (each.act === 'off' && isOn) {
          const off = unloaded(slot, { feeder: 'F1', reel: null, quantity: 0 });
          story.tell('reel.unloaded', each.purged ? { ...off, purged: true } : off);
          if (each.purged) inside = [];
          isOn = false;
        } else if (each.act === 'count' && isOn) {
          const facts = { line: 'L1', slot, reel: null, part: 'R-100', lot: null, panels: 0 };
          story.tell('reel.counted', { ...facts, quantity: 700, sd: 5, basis: 'weighed' });
        } else if (each.act === 'run') {
          story.tell('run.ended', { run: `r${run}`, line: 'L1', panels: 0, note: '' });
          story.tell('run.started', started(`r${++run}`));
        } else if (each.act === 'build') {
          build(story, each.panels, `r${run}`);
          for (let panel = 0; panel < each.panels; panel++)
            panels.push({ run: `r${run}`, lots: isOn ? inside : [] });
        }
      }
      const index = indexOf(story);
      const at = new Map<string, number>();
      for (const { run: of, lots } of panels) {
        const number = (at.get(of) ?? 0) + 1;
        at.set(of, number);
        const told =
          tracePanel(index, String(number), of)?.slots.find((each) => each.slot === slot)?.lots ?? [];
        for (const lot of lots) expect(told.map((each) => each.lot)).toContain(lot);
        for (const { lot, sure } of told) if (sure) expect(lots).toEqual([lot]);
      }
    }),
    { numRuns: 150 },
  );
});
