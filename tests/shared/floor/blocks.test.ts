// A blocked lot that stands on a slot is found there at once, however the block arrives, till the reel is off or a lead lets it run.

import { describe, expect, test } from 'vitest';
import { blockedOn } from '../../../shared/floor/blocked-on.ts';
import { blockedTapes, blockOn, mayBeBlocked } from '../../../shared/floor/blocks.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import {
  beginStory,
  brookSetup,
  counted,
  idOf,
  type Story,
  started,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from './story.ts';

const block = (story: Story, more: { tablet?: string; at?: number } = {}, id = 'b1') =>
  story.tell('material.blocked', { block: id, reel: null, lot: 'LOT7', part: null, reason: 'cracked' }, more);

function running(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1'));
  story.tell('panels.counted', counted('run-1', 5));
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LOT7', run: 'run-1' }));
  story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K2', lot: 'LOT8', run: 'run-1' }));
  story.tell('panels.counted', counted('run-1', 20));
  return story;
}

describe('a lot that is blocked while it runs', () => {
  test('is named with its slot, and with the panels built since it was loaded and since the block', () => {
    const story = running();
    expect(blockedTapes(story.floor(), 'L1')).toEqual([]);
    block(story);
    expect(blockedTapes(story.floor(), 'L1')).toMatchObject([
      { slot: 'M1-F-001', tape: { reel: 'K1' }, sinceLoaded: 20, sinceBlocked: 0, wasThereBefore: false },
    ]);
    story.tell('panels.counted', counted('run-1', 7));
    expect(blockedTapes(story.floor(), 'L1')).toMatchObject([{ sinceLoaded: 27, sinceBlocked: 7 }]);
    expect(blockedTapes(story.floor(), 'L2')).toEqual([]);
  });

  test('is named once where a tablet serves both lanes of its line, by the lane that builds', () => {
    const story = running();
    const lane2 = laneLine('L1', 2);
    story.tell('line.defined', { line: lane2, name: 'Lane 2', zone: 'UTC', machines: [] });
    block(story);
    for (const lines of [[lane2, 'L1'], ['L1', lane2], ['L1']])
      expect(blockedOn(story.floor(), lines)).toMatchObject([{ line: 'L1', slot: 'M1-F-001', run: 'run-1' }]);
    expect(blockedOn(story.floor(), [lane2])).toMatchObject([{ line: lane2, run: 'run-1', sinceBlocked: 0 }]);
  });

  test('is told of the lanes that take from its slot, with the panels of all of them', () => {
    const lane2 = laneLine('L1', 2);
    const lines = ['L1', lane2];
    const begun = (slots: readonly string[]) => {
      const story = running();
      const setup = { line: lane2, setup: 'right' };
      story.tell('line.defined', { line: lane2, name: 'Lane 2', zone: 'UTC', machines: [] });
      const wanted = slots.map((slot) => wantedSlot(slot, 'R-100'));
      story.tell('setup.taken', { ...brookSetup, ...setup, slots: wanted });
      story.tell('run.started', started('r2', setup));
      story.tell('reel.verified', verified('M1-F-019', 'R-100', { ...setup, reel: 'K5', lot: 'LOT7' }));
      block(story);
      story.tell('panels.counted', { ...counted('r2', 4), line: lane2 });
      story.tell('panels.counted', counted('run-1', 3));
      const found = blockedOn(story.floor(), lines);
      return found.map(({ line, slot, sinceBlocked }) => [line, slot, sinceBlocked]);
    };
    expect(begun(['M1-F-019'])).toEqual([
      ['L1', 'M1-F-001', 3],
      [lane2, 'M1-F-019', 4],
    ]);
    expect(begun(['M1-F-001', 'M1-F-019'])).toEqual([
      ['L1', 'M1-F-001', 7],
      [lane2, 'M1-F-019', 4],
    ]);
  });

  test('is told with the panels of all lanes to a tablet that serves one of them', () => {
    const lane2 = laneLine('L1', 2);
    const story = running();
    const setup = { line: lane2, setup: 'right' };
    story.tell('line.defined', { line: lane2, name: 'Lane 2', zone: 'UTC', machines: [] });
    const taken = [wantedSlot('M1-F-001', 'R-100')];
    story.tell('setup.taken', { ...brookSetup, ...setup, slots: taken });
    story.tell('run.started', started('r2', setup));
    block(story);
    story.tell('panels.counted', counted('run-1', 7));
    story.tell('panels.counted', { ...counted('r2', 10), line: lane2 });
    const told = (lines: readonly string[]) =>
      blockedOn(story.floor(), lines).map(({ line, run, sinceBlocked }) => [line, run, sinceBlocked]);
    expect(told(['L1'])).toEqual([['L1', 'run-1', 17]]);
    expect(told([lane2])).toEqual([[lane2, 'r2', 17]]);
    expect(told([lane2, 'L1'])).toEqual([[lane2, 'r2', 17]]);
    story.tell('setup.taken', { ...brookSetup, ...setup, setup: 'other', slots: [] });
    story.tell('run.started', started('r3', { ...setup, setup: 'other' }));
    story.tell('panels.counted', { ...counted('r3', 10), line: lane2 });
    expect(told([lane2])).toEqual([[lane2, 'run-1', 7]]);
    // What lane 2 built of it before is in no run of now, and is told all the same.
    const wasThere = (lines: readonly string[]) =>
      blockedOn(story.floor(), lines).map(({ wasThereBefore }) => wasThereBefore);
    expect(wasThere([lane2])).toEqual([true]);
    expect(wasThere(['L1'])).toEqual([true]);
  });

  test('has no panels of a run that takes nothing from its slot', () => {
    const story = running();
    story.tell('setup.taken', { ...brookSetup, setup: 'other', slots: [] });
    story.tell('run.started', started('run-2', { setup: 'other' }));
    story.tell('panels.counted', counted('run-2', 30));
    block(story);
    const [told] = blockedOn(story.floor(), ['L1']);
    expect(told).toMatchObject({ run: 'run-2', sinceLoaded: 0, sinceBlocked: 0, wasThereBefore: true });
  });

  test('is found in a joined tape too, and where it stood there in an earlier run', () => {
    const story = running();
    const joined = { act: 'splice' as const, reel: 'K3', lot: 'LOT7', run: 'run-1' };
    story.tell('reel.verified', verified('M1-R-003', 'R-100', joined));
    story.tell('run.started', started('run-2'));
    story.tell('panels.counted', counted('run-2', 3));
    block(story);
    expect(blockedTapes(story.floor(), 'L1')).toMatchObject([
      { slot: 'M1-F-001', run: 'run-2', sinceLoaded: 3, sinceBlocked: 0, wasThereBefore: true },
      { slot: 'M1-R-003', tape: { reel: 'K3' }, sinceLoaded: 3, wasThereBefore: true },
    ]);
  });

  test('stays until the reel is off, the block is lifted, or a lead lets that reel run there', () => {
    for (const end of ['off', 'lifted', 'let run'] as const) {
      const story = running();
      block(story);
      const [found] = blockedTapes(story.floor(), 'L1');
      if (!found) throw new TypeError('Cannot go on as the reel must be found');
      if (end === 'off') story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K1' }));
      else if (end === 'lifted') story.tell('material.released', { block: 'b1', reason: 'fine', by: 'lea' });
      else {
        const facts = { block: 'b1', line: 'L1', slot: 'M1-F-001', of: found.tape.entry, reason: 'checked' };
        story.tell('blocked.let-run', { ...facts, by: 'lea', checked: 'tablet' });
      }
      expect(blockedTapes(story.floor(), 'L1'), end).toEqual([]);
      if (end !== 'let run') continue;
      // Put on again it is a new decision, and so is another block.
      story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K1' }));
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LOT7' }));
      expect(blockedTapes(story.floor(), 'L1')).toHaveLength(1);
    }
  });

  test.each(['alone', 'beside another lane'])(
    'is told with the panels counted since, also where counts before and after it were taken back: a line %s',
    (how) => {
      const story = beginStory();
      tellPlant(story);
      const line = story.floor().lines.get('L1');
      if (line && how !== 'alone') story.tell('line.defined', { ...line, line: laneLine('L1', 2) });
      story.tell('run.started', started('run-1'));
      const count = (panels: number) => idOf(story.tell('panels.counted', counted('run-1', panels)));
      const takeBack = (of: string) =>
        story.tell('entry.corrected', { of, line: 'L1', slot: null, reason: 'typed twice' });
      count(5);
      takeBack(count(100));
      const twice = count(5);
      count(2);
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LOT7', run: 'run-1' }));
      takeBack(twice);
      count(10);
      block(story);
      takeBack(count(7));
      count(4);
      expect(blockedTapes(story.floor(), 'L1')).toMatchObject([{ sinceLoaded: 14, sinceBlocked: 4 }]);
    },
  );

  test('is told with all panels since, also where those before it were taken back and no kept count reaches so far', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('run.started', started('run-1'));
    story.tell('panels.counted', counted('run-1', 100));
    story.tell('reel.verified', {
      ...verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LOT7', run: 'run-1' }),
      panels: 100,
    });
    block(story);
    story.tell('panels.corrected', { run: 'run-1', line: 'L1', panels: 70, reason: 'counted twice' });
    for (let at = 0; at < 201; at++) story.tell('panels.counted', counted('run-1', 1));
    expect(blockedTapes(story.floor(), 'L1')).toMatchObject([{ sinceLoaded: 201, sinceBlocked: 201 }]);
  });

  test('is found by a tablet that hears of the block late', () => {
    const story = running();
    const late = block(story, { tablet: 'T2', at: 100 });
    story.tell('panels.counted', counted('run-1', 4), { at: 200 });
    const replica = createReplica();
    foldIn(
      replica,
      story.entries.filter((entry) => entry !== late),
    );
    expect(blockedTapes(replica.state, 'L1')).toEqual([]);
    foldIn(replica, [late]);
    expect(blockedTapes(replica.state, 'L1')).toMatchObject([{ sinceLoaded: 24, sinceBlocked: 4 }]);
    expect(replica.state).toEqual(applyAll(emptyState(), [...story.entries].sort(compareEntries)));
    expect(idOf(late)).toContain('T2');
  });
});

describe('a lot that was told of a reel after it was cut or joined', () => {
  const label = { part: 'R-100', supplierPart: null, lot: null, dateCode: null, quantity: 100 } as const;
  const put = (story: Story, reel: string) =>
    story.tell('reel.put', { ...label, reel, place: 'A1', via: 'typed' });
  const merge = (story: Story, reel: string, from: string) => {
    const facts = {
      part: 'R-100',
      lot: null,
      quantity: 200,
      sd: 0,
      basis: 'combined',
      via: 'typed',
    } as const;
    story.tell('reel.merged', { ...facts, reel, from });
  };

  test('is under the block in a piece and in what it was joined with, whose own labels say none', () => {
    const story = beginStory();
    tellPlant(story);
    for (const reel of ['S', 'G', 'K']) put(story, reel);
    const cut = { reel: 'S', into: 'P', part: 'R-100', lot: null, quantity: 10, left: 90 } as const;
    story.tell('reel.split', { ...cut, via: 'typed' });
    merge(story, 'K', 'G');
    for (const reel of ['S', 'G']) {
      story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel, lot: 'LOT7' }));
      story.tell('reel.unloaded', unloaded('M1-R-003', { reel, lot: 'LOT7' }));
    }
    block(story);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'P' }));
    const floor = story.floor();
    const on = (reel: string) => blockOn(floor, { reel, lot: null, part: 'R-100' });
    expect(['P', 'K', 'X'].map(on)).toEqual(['b1', 'b1', null]);
    const { reels } = floor;
    const suspects = [...reels.values()].filter(mayBeBlocked(floor)).map(({ reel }) => reel);
    expect(suspects).toEqual(expect.arrayContaining(['S', 'G', 'P', 'K']));
    expect(blockedTapes(floor, 'L1')).toMatchObject([{ slot: 'M1-F-001', tape: { reel: 'P' } }]);
  });
});
