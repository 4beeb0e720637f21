// A practice floor is the real one as it stands: checked by folding what is told and comparing it with the floor it was told of.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineId } from '../../../demo/setups.ts';
import { simulateShift } from '../../../demo/simulate.ts';
import { blockOn } from '../../../shared/floor/blocks.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { copyForPractice, inventPractice, type ToldEntry } from '../../../shared/floor/practice-copy.ts';
import { setupProgress } from '../../../shared/floor/progress.ts';
import { slotLeft } from '../../../shared/floor/remaining.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { beginStory, started, tellPlant, unloaded, verified } from './story.ts';

const startMs = 1_772_431_200_000;
const shift = simulateShift({ seed: 3, hours: 3, startMs }).entries;

function foldTold(told: readonly ToldEntry[]): FloorState {
  const story = beginStory();
  for (const { kind, payload } of told) story.tell(kind, payload as never, { who: null }); // the pair is kept together by its type
  return story.floor();
}

/** What is on the slots, and how much of it. */
function slotsOf(state: FloorState, line: string) {
  return [...state.slots.values()]
    .filter((slot) => slot.line === line)
    .map((slot) => {
      const left = slotLeft(state, slot, state.rules.get(line)?.loss ?? 0);
      const { part, lot, supplierPart } = slot.tapes.at(-1) ?? {};
      const parts = left.parts === null ? null : Math.round(left.parts);
      return { slot: slot.slot, feeder: slot.feeder, part, lot, supplierPart, parts };
    })
    .sort((a, b) => (a.slot < b.slot ? -1 : 1));
}

describe('copyForPractice()', () => {
  test('is the line of any moment of a shift: people, rules, setups, reels with what they have left', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: shift.length }), (length) => {
        const real = applyAll(emptyState(), shift.slice(0, length));
        const copy = foldTold(copyForPractice(real, lineId));
        if (!real.lines.has(lineId)) {
          expect(copy.lines.size).toBe(0);
          return;
        }
        for (const part of ['people', 'feeders', 'approvals', 'templates', 'fullReels'] as const)
          expect(new Map<unknown, unknown>(copy[part])).toEqual(new Map<unknown, unknown>(real[part]));
        // When a block was made, and what was built by then, is the real floor's.
        const blocked = (state: FloorState) =>
          [...state.blocks.values()].map(({ block, reel, lot, part, reason }) => [
            block,
            reel,
            lot,
            part,
            reason,
          ]);
        expect(blocked(copy)).toEqual(blocked(real));
        expect(copy.rules.get(lineId)).toEqual(real.rules.get(lineId));
        expect(copy.chosen.get(lineId)).toBe(real.chosen.get(lineId));
        expect(slotsOf(copy, lineId)).toEqual(slotsOf(real, lineId));
        const run = real.runs.get(real.current.get(lineId) ?? '');
        const practised = copy.runs.get(copy.current.get(lineId) ?? '');
        expect(practised?.panelsWanted).toBe(run && Math.max(1, run.panelsWanted - run.done));
        expect(practised?.run).not.toBe(run?.run ?? '');
      }),
      { numRuns: 25, seed: 7 },
    );
  });

  test('names no entry of the real log, and changes nothing of the real state', () => {
    const real = applyAll(emptyState(), shift);
    const before = JSON.stringify([...real.slots, ...real.reels, ...real.runs]);
    const told = copyForPractice(real, lineId);
    expect(JSON.stringify([...real.slots, ...real.reels, ...real.runs])).toBe(before);
    const text = JSON.stringify(told);
    for (const { hash, tablet, epoch, seq } of shift) {
      expect(text).not.toContain(hash);
      expect(text).not.toContain(`${tablet}/${epoch}/${seq}`);
    }
  });

  test('knows which feeders are set aside, when they are due for care, and what packages are', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('feeder.known', { feeder: 'F-1', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
    story.tell('feeder.set-aside', { feeder: 'F-1', reason: 'spring' });
    story.tell('feeder.care-ruled', { type: null, placements: 500_000 });
    story.tell('reel.packed', { reel: 'K-1', part: 'R-100', comesIn: 'cut-tape', via: 'typed' });
    const real = story.floor();
    const copy = foldTold(copyForPractice(real, 'L1'));
    expect(copy.setAside.get('F-1')?.reason).toBe('spring');
    expect(copy.careRules).toEqual(real.careRules);
    expect(copy.packs).toEqual(real.packs);
  });

  test('holds back what was cut off from a blocked reel before the block, as it is held back at work', () => {
    const story = beginStory();
    tellPlant(story);
    const cut = { reel: 'K-1', part: 'R-100', lot: null, quantity: 10, left: 90, via: 'typed' } as const;
    story.tell('reel.split', { ...cut, into: 'K-2' });
    story.tell('material.blocked', { block: 'b', reel: 'K-1', lot: null, part: null, reason: 'cracked' });
    const copy = foldTold(copyForPractice(story.floor(), 'L1'));
    const isBlocked = (reel: string) => blockOn(copy, { reel, lot: null, part: 'R-100' }) !== null;
    expect(['K-1', 'K-2', 'K-3'].map(isBlocked)).toEqual([true, true, false]);
  });

  test('holds back a piece of a blocked lot whose own label says none', () => {
    const story = beginStory();
    tellPlant(story);
    const cut = { reel: 'K-1', part: 'R-100', lot: null, quantity: 10, left: 90, via: 'typed' } as const;
    story.tell('reel.split', { ...cut, into: 'K-2' });
    const label = { part: 'R-100', supplierPart: null, lot: 'LOT7', dateCode: null, quantity: 90 } as const;
    story.tell('reel.put', { ...label, reel: 'K-1', place: 'A1', via: 'typed' });
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'LOT7', part: null, reason: 'cracked' });
    const copy = foldTold(copyForPractice(story.floor(), 'L1'));
    const isBlocked = (reel: string) => blockOn(copy, { reel, lot: null, part: 'R-100' }) !== null;
    expect(['K-2', 'K-3'].map(isBlocked)).toEqual([true, false]);
  });

  test('blocks once what is blocked by its own name, or by a lot that practice knows of it: lifting that sets it free', () => {
    const story = beginStory();
    tellPlant(story);
    const label = { part: 'R-100', supplierPart: null, dateCode: null, quantity: 90 } as const;
    const cut = { part: 'R-100', lot: null, quantity: 10, left: 90, via: 'typed' } as const;
    // K-3 and K-4 lie in the store with their lot; where K-5 and K-6 lie nobody said, so that they are not copied.
    story.tell('reel.put', { ...label, lot: 'LOT7', reel: 'K-3', place: 'A1', via: 'typed' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K-5', lot: 'LOT7' }));
    story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K-5' }));
    story.tell('reel.split', { ...cut, reel: 'K-1', into: 'K-2' });
    story.tell('reel.split', { ...cut, lot: 'LOT7', reel: 'K-3', into: 'K-4' });
    story.tell('reel.split', { ...cut, lot: 'LOT7', reel: 'K-5', into: 'K-6' });
    const of = { reel: null, lot: null, part: null, reason: 'cracked' } as const;
    story.tell('material.blocked', { ...of, block: 'b1', reel: 'K-1' });
    story.tell('material.blocked', { ...of, block: 'b2', lot: 'LOT7' });
    const copy = foldTold(copyForPractice(story.floor(), 'L1'));
    expect([...copy.blocks.keys()].sort()).toEqual(['K-2', 'K-5', 'K-6', 'b1', 'b2']);
    copy.blocks.delete('b1');
    copy.blocks.delete('b2');
    const lotOf = (reel: string) => copy.reels.get(reel)?.lot ?? null;
    const isBlocked = (reel: string) => blockOn(copy, { reel, lot: lotOf(reel), part: 'R-100' }) !== null;
    expect(['K-1', 'K-3', 'K-4'].map(isBlocked)).toEqual([false, false, false]);
  });

  test('answers nothing for a line that nobody knows', () => {
    expect(copyForPractice(emptyState(), 'L9')).toEqual([]);
  });
});

describe('inventPractice()', () => {
  test('is a line to load, with something on it already', () => {
    const names = { line: 'Practice line', machine: 'first', bank: 'front', product: 'Practice board' };
    const floor = foldTold(inventPractice(names, 'Europe/London'));
    const progress = setupProgress(floor, 'practice');
    expect(progress.slots).toHaveLength(6);
    expect(progress.verified).toBe(2);
    expect(progress.next?.slot).toBe('M1-F-003');
  });
});

test('of a lane that builds nothing while its line does has reels of no run', () => {
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  story.tell('line.defined', { ...line, line: 'L1~lane2', name: 'Lane 2' });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  story.tell('run.started', started('a'));
  const runs = (of: string) =>
    copyForPractice(story.floor(), of).flatMap((told) =>
      told.kind === 'reel.verified' ? [told.payload.run] : [],
    );
  expect(runs('L1')).toEqual(['practice-run']);
  expect(runs('L1~lane2')).toEqual([null]);
});
