import { describe, expect, test } from 'vitest';
import { formatEnvelope } from '../../../../../../shared/labels/envelope.ts';
import type { Scan } from '../../../../../../shared/labels/scan.ts';
import { verifyReel } from '../../../../../../shared/verdict/verify.ts';
import {
  approvedParts,
  approveObstacle,
  blockedSlots,
  blockObstacle,
  blockTarget,
  compareFeeders,
  feederMisfit,
  feederPlace,
  matches,
  readScan,
} from '../../../../../../src/app/screens/plant/parts/model.ts';
import { beginStory, tellPlant, verified } from '../../../../../shared/floor/story.ts';

const scanOf = (...texts: readonly string[]): Scan => ({
  codes: texts.map((text) => ({ text, format: null, symbologyId: null })),
  via: 'wedge',
  atMs: 0,
});
const label = (fields: Readonly<Record<string, string>>) =>
  formatEnvelope({ format: '06', fields: Object.entries(fields).map(([id, value]) => ({ id, value })) });

function begun() {
  const story = beginStory();
  tellPlant(story);
  return story;
}

describe('readScan()', () => {
  test('reads a label into its parts', () => {
    const thing = readScan(
      begun().floor(),
      'L1',
      scanOf(label({ P: 'R-100', '1P': 'SUP-1', '1T': 'LT-5', '3S': 'R-77' })),
    );
    expect(thing).toMatchObject({ part: 'R-100', supplierPart: 'SUP-1', lot: 'LT-5', reel: 'R-77' });
  });

  test('tells a bare code by what the plant knows', () => {
    const story = begun();
    story.tell('supplier.approved', { supplierPart: 'SUP-900', part: 'R-100' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'RL-5', lot: 'LT-5' }));
    const floor = story.floor();
    expect(readScan(floor, 'L1', scanOf('R-100'))).toMatchObject({ part: 'R-100', supplierPart: null });
    expect(readScan(floor, 'L1', scanOf('SUP-900'))).toMatchObject({ supplierPart: 'SUP-900' });
    expect(readScan(floor, 'L1', scanOf('RL-5'))).toMatchObject({ reel: 'RL-5', part: 'R-100', lot: 'LT-5' });
    expect(readScan(floor, 'L1', scanOf('nobody knows'))).toMatchObject({
      raw: 'nobody knows',
      part: null,
      reel: null,
    });
  });

  test('leaves badges to those who sign people in', () => {
    const story = begun();
    story.tell('person.added', { person: 'ana', name: 'Ana', role: 'lead', badge: 'BADGE-1', pin: null });
    expect(readScan(story.floor(), 'L1', scanOf('BADGE-1'))).toBeNull();
  });
});

test('`matches()` wants every word, in any text and case', () => {
  expect(matches('r-1 SUP', ['R-100', 'sup-1', null])).toBe(true);
  expect(matches('r-1 other', ['R-100', 'sup-1'])).toBe(false);
  expect(matches('  ', [null])).toBe(true);
});

describe('approvals', () => {
  test('every part that a setup wants is listed, with what stands for it', () => {
    const story = begun();
    story.tell('supplier.approved', { supplierPart: 'B-2', part: 'X-1' });
    story.tell('supplier.approved', { supplierPart: 'A-2', part: 'X-1' });
    const parts = approvedParts(story.floor());
    expect(parts.find(({ part }) => part === 'X-1')).toEqual({
      part: 'X-1',
      supplierParts: ['A-2', 'B-2'],
      slots: 0,
    });
    expect(parts.find(({ part }) => part === 'R-100')?.slots).toBeGreaterThan(0);
    expect(parts.map(({ part }) => part)).toEqual(parts.map(({ part }) => part).sort());
  });

  test.each([
    ['X-1', ' ', 'supplierMissing'],
    [' ', 'A-2', 'partMissing'],
    ['X-1', 'X-1', 'same'],
    ['X-1', ' A-2 ', 'already'],
    ['X-2', 'A-2', null],
  ])('%s with %s: %s', (part, supplierPart, wanted) => {
    const story = begun();
    story.tell('supplier.approved', { supplierPart: 'A-2', part: 'X-1' });
    expect(approveObstacle(story.floor(), part, supplierPart)).toBe(wanted);
  });
});

describe('feeders', () => {
  test('a list is told apart into new, changed and unchanged', () => {
    const story = begun();
    story.tell('feeder.known', { feeder: 'F-91', tapeWidthMm: 8, pitchesMm: [2, 4], positions: 1 });
    story.tell('feeder.known', { feeder: 'F-92', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
    const compared = compareFeeders(story.floor(), [
      { feeder: 'F-91', tapeWidthMm: 8, pitchesMm: [4, 2], positions: 1 },
      { feeder: 'F-92', tapeWidthMm: 12, pitchesMm: [4], positions: 2 },
      { feeder: 'F-93', tapeWidthMm: 8, pitchesMm: [], positions: 1 },
    ]);
    expect(compared.same).toBe(1);
    expect(compared.changed.map(({ feeder }) => feeder)).toEqual(['F-92']);
    expect(compared.fresh.map(({ feeder }) => feeder)).toEqual(['F-93']);
  });

  test('where a feeder is, while it is on a slot', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { feeder: 'F-91' }));
    expect(feederPlace(story.floor(), 'F-91')).toMatchObject({ line: 'L1', slot: 'M1-F-001', cart: null });
    expect(feederPlace(story.floor(), 'F-92')).toBeNull();
  });

  test('what a loaded feeder would no longer fit: its tape, its neighbours; nothing of one that lies about', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { feeder: 'F-91', reel: 'K1' }));
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { feeder: 'F-92' }));
    const wide = { feeder: 'F-91', tapeWidthMm: 24, pitchesMm: [], positions: 3 };
    expect(feederMisfit(story.floor(), wide)).toMatchObject({
      place: { slot: 'M1-F-001', reel: 'K1' },
      wantsMm: 8,
      neighbours: ['M1-F-002'],
    });
    expect(feederMisfit(story.floor(), { ...wide, tapeWidthMm: 8, positions: 1 })).toBeNull();
    expect(feederMisfit(story.floor(), { ...wide, feeder: 'F-93' })).toBeNull();
  });
});

describe('blocks', () => {
  test('name what is loaded of the blocked material', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'RL-5', lot: 'LT-5' }));
    const floor = story.floor();
    const block = { block: 'b', reel: null, lot: null, part: null, reason: 'x' };
    expect(blockedSlots(floor, { ...block, lot: 'LT-5' })).toEqual(['M1-F-001']);
    expect(blockedSlots(floor, { ...block, reel: 'RL-5' })).toEqual(['M1-F-001']);
    expect(blockedSlots(floor, { ...block, part: 'R-100' })).toEqual(['M1-F-001']);
    expect(blockedSlots(floor, { ...block, lot: 'LT-6' })).toEqual([]);
    for (const slot of ['F10', 'F2']) story.tell('reel.verified', verified(slot, 'X-1', { reel: slot }));
    expect(blockedSlots(story.floor(), { ...block, part: 'X-1' }), 'in walking order').toEqual(['F2', 'F10']);
    expect(blockTarget({ ...block, lot: 'LT-5' })).toEqual({ kind: 'lot', value: 'LT-5' });
  });

  test.each([
    ['lot', ' ', 'why', 'valueMissing'],
    ['lot', 'LT-9', 'why', 'already'],
    ['part', 'LT-9', ' ', 'reasonMissing'],
    ['part', 'LT-9', 'why', null],
  ] as const)('%s %s: %s', (kind, value, reason, wanted) => {
    const story = begun();
    story.tell('material.blocked', { block: 'b1', reel: null, lot: 'LT-9', part: null, reason: 'recall' });
    expect(blockObstacle(story.floor(), kind, { value, reason })).toBe(wanted);
  });

  test('a block written here refuses the reel, and lifting it lets the reel in again', () => {
    const story = begun();
    const judge = () =>
      verifyReel(story.floor(), {
        act: 'load',
        line: 'L1',
        setup: [...story.floor().setups.keys()][0] ?? '',
        slot: 'M1-F-001',
        feeder: null,
        today: '2026-03-02',
        reel: {
          reel: null,
          part: 'R-100',
          supplierPart: null,
          quantity: 100,
          lot: 'LT-9',
          dateCode: null,
          expires: null,
        },
      }).reasons.map(({ code }) => code);
    story.tell('material.blocked', { block: 'b1', reel: null, lot: 'LT-9', part: null, reason: 'recall' });
    expect(judge()).toContain('reel-blocked');
    story.tell('material.released', { block: 'b1', reason: 'checked', by: 'ana' });
    expect(judge()).not.toContain('reel-blocked');
  });
});
