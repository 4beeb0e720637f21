// Slots used in turn from which two lanes of one conveyor feed, played placement by placement: nothing is placed twice, and nothing is lost.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { usedPlacements } from '../../../shared/floor/remaining.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  started,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from './story.ts';

const lines = ['L1', laneLine('L1', 2)] as const;
const slots = ['M1-F-001', 'M1-F-002', 'M1-R-003'] as const;
/** Placements a panel of each lane. */
const perPanel = [2, 3] as const;

/** From which of the slots lane 2 takes: in turn as lane 1 does, from one alone, or from none. */
const ways: readonly { readonly how: string; readonly way: readonly number[] }[] = [
  { how: 'as lane 1 does', way: [0, 1, 2] },
  { how: 'the first alone', way: [0] },
  { how: 'the second alone', way: [1] },
  { how: 'none of them', way: [] },
];

const lane = fc.nat(1);
const at = fc.nat(2);
const parts = fc.integer({ min: 20, max: 90 });
const act = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ is: fc.constant('count'), lane, panels: fc.integer({ min: 1, max: 12 }) }),
  },
  { weight: 1, arbitrary: fc.record({ is: fc.constantFrom('load', 'splice', 'recount'), at, parts }) },
  { weight: 1, arbitrary: fc.record({ is: fc.constant('unload'), at }) },
  { weight: 1, arbitrary: fc.record({ is: fc.constant('run'), lane }) },
);
type Act = {
  readonly is: string;
  readonly lane?: number;
  readonly at?: number;
  readonly panels?: number;
  readonly parts?: number;
};

/** The slots as things: parts left on each that carries something; the last in turn goes below none, as its count is behind. */
class Slots {
  readonly left = new Map<string, number>();
  /** A lane that has one slot alone took more than was there: it would have stood. */
  ranDry = false;

  take(from: readonly string[], placements: number): void {
    for (let each = 0; each < placements; each++) {
      const loaded = from.filter((slot) => this.left.has(slot));
      const feeds = loaded.find((slot) => (this.left.get(slot) ?? 0) > 0) ?? loaded.at(-1);
      if (feeds === undefined) continue;
      const left = (this.left.get(feeds) ?? 0) - 1;
      this.left.set(feeds, left);
      if (from.length === 1 && left < 0) this.ranDry = true;
    }
  }
}

function begun(way: readonly number[]): Story {
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  story.tell('line.defined', { ...line, line: lines[1], name: 'Lane 2' });
  const inTurn = (lane: number, of: readonly number[]) =>
    of.map((at) => wantedSlot(slots[at] ?? '', 'R-100', { perPanel: perPanel[lane] ?? 0, turn: at + 1 }));
  const other = way.length === 0 ? [wantedSlot('M1-F-009', 'R-100')] : inTurn(1, way);
  for (const [lane, line] of lines.entries()) {
    const setup = `s${lane}`;
    const wanted = lane === 0 ? inTurn(0, [0, 1, 2]) : other;
    story.tell('setup.taken', { ...brookSetup, setup, line, slots: wanted });
    story.tell('run.started', started(`r${lane}`, { line, setup }));
  }
  return story;
}

/** Tells the acts and plays them. */
function played(way: readonly number[], acts: readonly Act[]) {
  const story = begun(way);
  const things = new Slots();
  const runs = ['r0', 'r1'];
  for (const [number, { is, ...of }] of acts.entries()) {
    const lane = of.lane ?? 0;
    const line = lines[lane] ?? '';
    const slot = slots[of.at ?? 0] ?? '';
    const quantity = of.parts ?? 0;
    const left = things.left.get(slot);
    const put = { reel: `K${number}`, quantity, setup: 's0' };
    if (is === 'count') {
      const panels = of.panels ?? 0;
      const run = runs[lane] ?? '';
      story.tell('panels.counted', { run, line, add: panels, panels, serial: null, via: 'typed' });
      const from = (lane === 0 ? [0, 1, 2] : way).map((at) => slots[at] ?? '');
      for (let panel = 0; panel < panels; panel++) things.take(from, perPanel[lane] ?? 0);
    } else if (is === 'run') {
      runs[lane] = `r${number + 2}`;
      story.tell('run.started', started(`r${number + 2}`, { line, setup: `s${lane}` }));
    } else if (is === 'load' || (left === undefined && is === 'splice')) {
      story.tell('reel.verified', verified(slot, 'R-100', put));
      things.left.set(slot, quantity);
    } else if (left === undefined) continue;
    else if (is === 'splice') {
      story.tell('reel.verified', verified(slot, 'R-100', { ...put, act: 'splice' }));
      things.left.set(slot, left + quantity);
    } else if (is === 'recount') {
      const there = story.floor().slots.get(slotKey('L1', slot));
      const last = there?.tapes.at(-1);
      const facts = { line: 'L1', slot, reel: last?.reel ?? null, part: 'R-100', lot: null };
      story.tell('reel.counted', { ...facts, quantity, sd: 0, basis: 'measured', panels: 0 });
      things.left.set(slot, quantity);
    } else {
      story.tell('reel.unloaded', unloaded(slot));
      things.left.delete(slot);
    }
  }
  return { floor: story.floor(), things };
}

test.each(ways)('what is left is what nobody took, where lane 2 takes from the slots: $how', ({ way }) => {
  fc.assert(
    fc.property(fc.array(act, { maxLength: 25 }), (acts) => {
      const { floor, things } = played(way, acts);
      fc.pre(!things.ranDry);
      const found = slots.map((slot) => {
        const there = floor.slots.get(slotKey('L1', slot));
        const parts = there?.tapes.reduce((sum, { count }) => sum + (count ?? 0), 0) ?? 0;
        return there ? parts - usedPlacements(floor, there) : null;
      });
      expect(found).toEqual(slots.map((slot) => things.left.get(slot) ?? null));
    }),
    { numRuns: 250 },
  );
});
