// Two lanes of one conveyor feed from the same slots: what is left on a slot is what both have taken, in every history and order of arrival.

import { describe, expect, test } from 'vitest';
import { buildingOn } from '../../../shared/floor/building.ts';
import { feedersOf, laneLine, runsBuilding, sharesSlots } from '../../../shared/floor/lanes.ts';
import { leftAfterRun, slotLeft } from '../../../shared/floor/remaining.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import type { Entry } from '../../../shared/log/entry.ts';
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

const lane2 = laneLine('L1', 2);
const slot = 'M1-F-001';
/** Placements per panel of each lane's product from the slot. */
const perPanel = { L1: 2, [lane2]: 3 } as const;

/** The plant with a second lane that builds another product from the same slot. */
function twoLanes(): Story {
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  story.tell('line.defined', { ...line, line: lane2, name: 'Brae line 1, lane 2' });
  const slots = [wantedSlot(slot, 'R-100', { perPanel: perPanel[lane2] ?? 0 })];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: lane2, slots });
  story.tell('setup.chosen', { line: lane2, setup: 'fell-top-a' });
  return story;
}

const setupOf = (line: string) => (line === 'L1' ? 'brook-top-a' : 'fell-top-a');
const leftOn = (floor: ReturnType<Story['floor']>) => {
  const there = floor.slots.get(slotKey('L1', slot));
  // Without a loss: what the finished reels show of losses is no matter of lanes.
  return there ? slotLeft(floor, there, 0).parts : null;
};

describe('a lane', () => {
  test('feeds from its line’s slots, whoever asks', () => {
    expect(feedersOf(lane2)).toBe('L1');
    expect(feedersOf('L1')).toBe('L1');
    expect(laneLine(lane2, 3)).toBe(laneLine('L1', 3));
    expect(sharesSlots(lane2, 'L1')).toBe(true);
    expect(sharesSlots(lane2, 'L2')).toBe(false);
    expect(slotKey(lane2, slot)).toBe(slotKey('L1', slot));
  });

  test('has a run of its own, started and ended apart', () => {
    const story = twoLanes();
    story.tell('run.started', started('a'));
    story.tell('run.started', started('b', { line: lane2, setup: 'fell-top-a' }));
    expect(buildingOn(story.floor(), 'L1')?.run).toBe('a');
    expect(buildingOn(story.floor(), lane2)?.run).toBe('b');
    expect(runsBuilding(story.floor(), lane2).map(({ run }) => run)).toEqual(['a', 'b']);
    story.tell('run.ended', { run: 'a', line: 'L1', panels: 0, note: '' });
    expect(buildingOn(story.floor(), 'L1')).toBeNull();
    expect(buildingOn(story.floor(), lane2)?.run).toBe('b');
  });
});

/** One random history: which acts there were, and what the slot must have left by plain adding up. */
function history(seed: number) {
  const chance = seededChance(seed);
  const pick = (below: number) => chanceBelow(chance, below);
  const story = twoLanes();
  const runs = new Map<string, string>();
  let left: number | null = null;
  let names = 0;
  for (let act = 0; act < 40; act++) {
    const line = pick(2) === 0 ? 'L1' : lane2;
    const tablet = `T${1 + pick(3)}`;
    const last = story.entries.at(-1);
    const telling = last ? { tablet, seen: last } : { tablet };
    const run = runs.get(line);
    switch (pick(5)) {
      case 0: {
        names += 1;
        runs.set(line, `run-${names}`);
        story.tell('run.started', started(`run-${names}`, { line, setup: setupOf(line) }), telling);
        break;
      }
      case 1:
        if (run !== undefined) {
          story.tell('run.ended', { run, line, panels: 0, note: '' }, telling);
          runs.delete(line);
        }
        break;
      case 2: {
        const what = pick(5);
        if (left === null) {
          left = 5000;
          names += 1;
          const facts = { line, setup: setupOf(line), reel: `K${names}`, quantity: left };
          story.tell('reel.verified', verified(slot, 'R-100', facts), telling);
        } else if (what < 2) {
          names += 1;
          const facts = {
            act: 'splice' as const,
            line,
            setup: setupOf(line),
            reel: `K${names}`,
            quantity: 700,
          };
          story.tell('reel.verified', verified(slot, 'R-100', facts), telling);
          left += 700;
        } else if (what === 2) {
          story.tell('reel.unloaded', unloaded(slot, { line }), telling);
          left = null;
        }
        break;
      }
      default:
        if (run !== undefined) {
          const add = 1 + pick(9);
          story.tell('panels.counted', { run, line, add, panels: add, serial: null, via: 'typed' }, telling);
          if (left !== null) left -= add * (perPanel[line as keyof typeof perPanel] ?? 0);
        }
    }
  }
  return { story, left };
}

describe('what is left on a slot that two lanes feed from', () => {
  test('is what neither has taken, in 300 histories', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const { story, left } = history(seed);
      expect(leftOn(story.floor()), `seed ${seed}`).toBe(left);
    }
  });

  test('is the same in whatever order a tablet hears of the entries', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { story, left } = history(seed);
      const chance = seededChance(seed + 7919);
      const shuffled = [...story.entries]
        .map((entry) => ({ entry, at: chance() }))
        .sort((a, b) => a.at - b.at)
        .map(({ entry }) => entry);
      let replica = createReplica();
      for (const [at, entry] of shuffled.entries()) {
        if (foldIn(replica, [entry])) continue;
        replica = createReplica(); // as a tablet does with what is older than all that it kept
        foldIn(replica, shuffled.slice(0, at + 1));
      }
      expect(leftOn(replica.state), `seed ${seed}`).toBe(left);
    }
  });
});

/** Two tablets that hear nothing of each other after the first load, one a lane: what the slot must have left is a sum, whoever folds first. */
function apart(seed: number) {
  const chance = seededChance(seed);
  const pick = (below: number) => chanceBelow(chance, below);
  const story = twoLanes();
  const load = verified(slot, 'R-100', { reel: 'K0', quantity: 5000 });
  const seen = new Map<string, Entry>();
  const common = story.tell('reel.verified', load, { tablet: 'T1' });
  let left = 5000;
  let names = 0;
  const tablets = [
    { tablet: 'T2', line: 'L1', run: null as string | null },
    { tablet: 'T3', line: lane2, run: null as string | null },
  ];
  for (let act = 0; act < 40; act++) {
    const at = tablets[pick(2)];
    if (!at) continue;
    const { line, tablet } = at;
    const telling = { tablet, seen: seen.get(tablet) ?? common };
    const kind = pick(6);
    if (at.run === null || kind === 0) {
      names += 1;
      at.run = `run-${names}`;
      seen.set(tablet, story.tell('run.started', started(at.run, { line, setup: setupOf(line) }), telling));
    } else if (kind === 1) {
      names += 1;
      const facts = { act: 'splice' as const, line, setup: setupOf(line), reel: `K${names}`, quantity: 700 };
      seen.set(tablet, story.tell('reel.verified', verified(slot, 'R-100', facts), telling));
      left += 700;
    } else {
      const add = 1 + pick(9);
      const facts = { run: at.run, line, add, panels: add, serial: null, via: 'typed' as const };
      seen.set(tablet, story.tell('panels.counted', facts, telling));
      left -= add * (perPanel[line as keyof typeof perPanel] ?? 0);
    }
  }
  return { story, left };
}

test('two tablets without a network, one a lane, come to what neither lane has taken, in 150 histories', () => {
  for (let seed = 1; seed <= 150; seed++) {
    const { story, left } = apart(seed);
    expect(leftOn(story.floor()), `seed ${seed}`).toBe(left);
  }
});

test('what will be left once both runs are done is less what both still take', () => {
  const story = twoLanes();
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', quantity: 5000 }));
  story.tell('run.started', started('a', { panelsWanted: 400 }));
  const after = () => {
    const floor = story.floor();
    const there = floor.slots.get(slotKey('L1', slot));
    return (there && leftAfterRun(floor, there)?.parts) ?? Number.NaN;
  };
  expect(after()).toBeCloseTo(5000 - 400 * 2, -2);
  story.tell('run.started', started('b', { line: lane2, setup: 'fell-top-a', panelsWanted: 300 }));
  expect(after()).toBeCloseTo(5000 - 400 * 2 - 300 * 3, -2);
});
