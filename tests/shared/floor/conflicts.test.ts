// What contradicts: found whatever the order of arrival, shown until a lead settles it, and nothing else is touched by that.

import { describe, expect, test } from 'vitest';
import { type Conflict, type FloorState, slotKey } from '../../../shared/floor/state.ts';
import { beginStory, idOf, type Story, started, tellPlant, unloaded, verified } from './story.ts';

const load = (story: Story, slot: string, reel: string, more: Parameters<typeof verified>[2] = {}) =>
  story.tell('reel.verified', verified(slot, 'R-100', { reel, ...more }));
const fromOther = (story: Story, slot: string, reel: string, more: Parameters<typeof verified>[2] = {}) =>
  story.tell('reel.verified', verified(slot, 'R-100', { reel, ...more }), { tablet: 'T2', who: 'bo' });
const settle = (story: Story, conflict: string, keep: string | null) =>
  story.tell('conflict.settled', { conflict, line: 'L1', slot: null, keep, reason: 'seen', by: 'lea' });
const reelsOn = (floor: FloorState, slot: string, line = 'L1') =>
  floor.slots.get(slotKey(line, slot))?.tapes.map((tape) => tape.reel) ?? null;
const whereIs = (floor: FloorState, reel: string) => floor.reels.get(reel)?.at?.slot ?? null;

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

function onlyConflict(story: Story): Conflict {
  const [conflict, ...more] = story.floor().conflicts.values();
  if (!conflict || more.length > 0) throw new TypeError('Cannot go on as there must be one conflict');
  return conflict;
}

describe('a slot loaded twice', () => {
  test('shows both, and the later stands until a lead says which', () => {
    const story = begun();
    const one = load(story, 'M1-F-001', 'K1');
    const two = fromOther(story, 'M1-F-001', 'K2');
    expect(onlyConflict(story)).toMatchObject({
      kind: 'slot-loaded-twice',
      slots: ['M1-F-001'],
      lines: ['L1'],
      entries: [idOf(one), idOf(two)],
      choices: [{ tapes: [{ reel: 'K1' }] }, { tapes: [{ reel: 'K2' }] }],
    });
    expect(reelsOn(story.floor(), 'M1-F-001')).toEqual(['K2']);
    expect(whereIs(story.floor(), 'K1')).toBeNull();
  });

  test('keeps either reel as the lead says, and frees the other', () => {
    for (const keepsFirst of [true, false]) {
      const story = begun();
      const one = load(story, 'M1-F-001', 'K1');
      const two = fromOther(story, 'M1-F-001', 'K2');
      settle(story, onlyConflict(story).conflict, idOf(keepsFirst ? one : two));
      const floor = story.floor();
      expect(floor.conflicts.size).toBe(0);
      expect(reelsOn(floor, 'M1-F-001')).toEqual([keepsFirst ? 'K1' : 'K2']);
      expect([whereIs(floor, 'K1'), whereIs(floor, 'K2')]).toEqual(
        keepsFirst ? ['M1-F-001', null] : [null, 'M1-F-001'],
      );
    }
  });

  test('keeps a tape that was joined since, to whichever reel it is', () => {
    for (const keepsFirst of [true, false]) {
      const story = begun();
      const one = load(story, 'M1-F-001', 'K1');
      const two = fromOther(story, 'M1-F-001', 'K2');
      load(story, 'M1-F-001', 'K3', { act: 'splice' });
      settle(story, onlyConflict(story).conflict, idOf(keepsFirst ? one : two));
      const floor = story.floor();
      expect(reelsOn(floor, 'M1-F-001')).toEqual([keepsFirst ? 'K1' : 'K2', 'K3']);
      expect(whereIs(floor, 'K3')).toBe('M1-F-001');
    }
  });

  test('counts the use of the runs since for the reel kept', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    const one = load(story, 'M1-F-001', 'K1');
    fromOther(story, 'M1-F-001', 'K2');
    story.tell('panels.counted', {
      run: 'run-1',
      line: 'L1',
      add: 10,
      panels: 10,
      serial: null,
      via: 'typed',
    });
    story.tell('run.started', started('run-2'));
    settle(story, onlyConflict(story).conflict, idOf(one));
    expect(story.floor().slots.get('L1/M1-F-001')).toMatchObject({
      usedBefore: 20,
      sinceRun: 'run-2',
      sinceDone: 0,
    });
  });

  test('goes when one of the two is taken back: the other stands', () => {
    for (const takesFirst of [true, false]) {
      const story = begun();
      const one = load(story, 'M1-F-001', 'K1');
      const two = fromOther(story, 'M1-F-001', 'K2');
      const of = idOf(takesFirst ? one : two);
      story.tell('entry.corrected', { of, line: 'L1', slot: null, reason: 'slip' });
      const floor = story.floor();
      expect(floor.conflicts.size).toBe(0);
      expect(reelsOn(floor, 'M1-F-001')).toEqual([takesFirst ? 'K2' : 'K1']);
      expect(whereIs(floor, takesFirst ? 'K2' : 'K1')).toBe('M1-F-001');
      expect(whereIs(floor, takesFirst ? 'K1' : 'K2')).toBeNull();
    }
  });

  test('goes with an unload, and both reels are free', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    fromOther(story, 'M1-F-001', 'K2');
    story.tell('reel.unloaded', unloaded('M1-F-001'));
    const floor = story.floor();
    expect(floor.conflicts.size).toBe(0);
    expect([whereIs(floor, 'K1'), whereIs(floor, 'K2')]).toEqual([null, null]);
  });
});

describe('a reel on two slots', () => {
  test('shows both places and keeps it where the lead says', () => {
    for (const keepsFirst of [true, false]) {
      const story = begun();
      const one = load(story, 'M1-F-001', 'K1');
      const two = fromOther(story, 'M1-R-003', 'K1');
      const conflict = onlyConflict(story);
      expect(conflict).toMatchObject({
        kind: 'reel-on-two-slots',
        reel: 'K1',
        slots: ['M1-F-001', 'M1-R-003'],
        lines: ['L1', 'L1'],
        entries: [idOf(one), idOf(two)],
      });
      settle(story, conflict.conflict, idOf(keepsFirst ? one : two));
      const floor = story.floor();
      expect(floor.conflicts.size).toBe(0);
      expect([reelsOn(floor, 'M1-F-001'), reelsOn(floor, 'M1-R-003')]).toEqual(
        keepsFirst ? [['K1'], null] : [null, ['K1']],
      );
      expect(whereIs(floor, 'K1')).toBe(keepsFirst ? 'M1-F-001' : 'M1-R-003');
    }
  });

  test('takes only that reel off the other slot, though both slots have changed since', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K5');
    const one = load(story, 'M1-F-001', 'K1', { act: 'splice' });
    const two = fromOther(story, 'M1-R-003', 'K1');
    const { conflict } = onlyConflict(story);
    load(story, 'M1-F-001', 'K6', { act: 'splice' });
    load(story, 'M1-R-003', 'K7', { act: 'splice' });
    const before = [...story.entries];
    settle(story, conflict, idOf(two));
    expect([reelsOn(story.floor(), 'M1-F-001'), reelsOn(story.floor(), 'M1-R-003')]).toEqual([
      ['K5', 'K6'],
      ['K1', 'K7'],
    ]);
    expect(before.length).toBe(story.entries.length - 1);
    expect(idOf(one)).not.toBe(idOf(two));
  });

  test('on two lines touches no slot of the same name', () => {
    const story = begun();
    story.tell('line.defined', { line: 'L2', name: 'two', zone: 'Europe/London', machines: [] });
    load(story, 'M1-F-001', 'K8');
    load(story, 'M1-F-001', 'K1', { line: 'L2' });
    const two = fromOther(story, 'M1-R-003', 'K1');
    const conflict = onlyConflict(story);
    expect(conflict).toMatchObject({ slots: ['M1-F-001', 'M1-R-003'], lines: ['L2', 'L1'] });
    settle(story, conflict.conflict, idOf(two));
    const floor = story.floor();
    expect(reelsOn(floor, 'M1-F-001', 'L1')).toEqual(['K8']);
    expect(reelsOn(floor, 'M1-F-001', 'L2')).toBeNull();
    expect(reelsOn(floor, 'M1-R-003', 'L1')).toEqual(['K1']);
  });

  test('taken back on one slot is on the other', () => {
    for (const takesFirst of [true, false]) {
      const story = begun();
      const one = load(story, 'M1-F-001', 'K1');
      const two = fromOther(story, 'M1-R-003', 'K1');
      story.tell('entry.corrected', {
        of: idOf(takesFirst ? one : two),
        line: 'L1',
        slot: null,
        reason: 'slip',
      });
      expect(story.floor().conflicts.size).toBe(0);
      expect(whereIs(story.floor(), 'K1')).toBe(takesFirst ? 'M1-R-003' : 'M1-F-001');
    }
  });

  test('is no conflict where the first slot no longer holds it', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    story.tell('reel.unloaded', unloaded('M1-F-001'));
    fromOther(story, 'M1-R-003', 'K1');
    expect(story.floor().conflicts.size).toBe(0);
  });

  test('an unload of the place where it is not any more leaves it where it was seen last', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    fromOther(story, 'M1-R-003', 'K1');
    story.tell('reel.unloaded', unloaded('M1-F-001'));
    expect(whereIs(story.floor(), 'K1')).toBe('M1-R-003');
  });
});

describe('settling', () => {
  test('without a word what to keep, or by a name that is not in it, closes the conflict and changes nothing', () => {
    for (const keep of [null, 'T9/e/1']) {
      const story = begun();
      load(story, 'M1-F-001', 'K1');
      fromOther(story, 'M1-R-003', 'K1');
      const { slots } = story.floor();
      settle(story, onlyConflict(story).conflict, keep);
      expect(story.floor().conflicts.size).toBe(0);
      expect(story.floor().slots).toEqual(slots);
    }
  });

  test('of a conflict that is none changes nothing', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    const before = story.floor();
    settle(story, 'slot-loaded-twice:none', null);
    expect(story.floor()).toEqual(before);
  });
});

describe('a splice on a slot that another tablet unloaded', () => {
  const K1 = { reel: 'K1', lot: 'A', part: 'R-100' };
  for (const spliceFirst of [true, false]) {
    const order = spliceFirst ? 'splice first' : 'unload first';
    function apart(more: { readonly nameless?: boolean } = {}): Story {
      const story = begun();
      const id = more.nameless ? null : 'K1';
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: id, lot: 'A' }));
      const splice = () =>
        story.tell(
          'reel.verified',
          verified('M1-F-001', 'R-100', {
            act: 'splice',
            reel: more.nameless ? null : 'K2',
            lot: more.nameless ? 'A' : 'B',
          }),
          { at: spliceFirst ? 50 : 60 },
        );
      const off = () =>
        story.tell('reel.unloaded', unloaded('M1-F-001', { ...K1, reel: id }), {
          tablet: 'T2',
          at: spliceFirst ? 60 : 50,
        });
      if (spliceFirst) {
        splice();
        off();
      } else {
        off();
        splice();
      }
      return story;
    }

    test(`is shown, and a lead says which is true (${order})`, () => {
      for (const keep of ['splice', 'unload'] as const) {
        const story = apart();
        const conflict = onlyConflict(story);
        expect(conflict).toMatchObject({ kind: 'spliced-though-unloaded', slots: ['M1-F-001'] });
        const spliced = conflict.choices[0]?.tapes.at(-1)?.entry ?? '';
        expect(conflict.entries).toContain(spliced);
        const off = conflict.entries.find((entry) => entry !== spliced) ?? '';
        settle(story, conflict.conflict, keep === 'splice' ? spliced : off);
        expect(reelsOn(story.floor(), 'M1-F-001')?.at(-1) ?? null, keep).toBe(
          keep === 'splice' ? 'K2' : null,
        );
        expect(whereIs(story.floor(), 'K2'), keep).toBe(keep === 'splice' ? 'M1-F-001' : null);
        expect(story.floor().conflicts.size).toBe(0);
      }
    });

    test(`is forgotten once another reel is loaded there (${order})`, () => {
      const story = apart();
      if (!spliceFirst) story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K2' }), { at: 70 });
      load(story, 'M1-F-001', 'K5');
      expect(story.floor().conflicts.size).toBe(0);
    });
  }

  test('is shown too where the running reel itself was spliced to its own slot, without an id', () => {
    const story = begun();
    const label = { reel: null, lot: 'A' };
    story.tell('reel.verified', verified('M1-F-001', 'R-100', label));
    story.tell('reel.unloaded', unloaded('M1-F-001', { part: 'R-100', lot: 'A' }), { tablet: 'T2', at: 50 });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { ...label, act: 'splice' }), { at: 60 });
    expect(onlyConflict(story).kind).toBe('spliced-though-unloaded');
  });
});
