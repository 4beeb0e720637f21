import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { panelChecks } from '../../../shared/changeover/first-panel.ts';
import { judgeReading, limitsOf, uncertaintyOf } from '../../../shared/floor/measured.ts';
import type { Changeover, Setup } from '../../../shared/floor/state.ts';
import { brookSetup, wantedSlot } from '../floor/story.ts';

const limits = { least: 9.9, most: 10.1 };

describe('judgeReading()', () => {
  // ISO 14253-1, from memory: conformity is proven where the value and its whole uncertainty lie inside the specification,
  // non-conformity where they lie wholly outside, neither between.
  test.each([
    [10, 0.05, 'accepted', 'well inside'],
    [9.95, 0.05, 'accepted', 'the interval touches the limit'],
    [9.94, 0.05, 'held', 'the interval reaches over the limit though the reading is inside'],
    [9.86, 0.05, 'held', 'the interval reaches in though the reading is outside'],
    [9.84, 0.05, 'refused', 'wholly below'],
    [10.16, 0.05, 'refused', 'wholly above'],
    [10, 0.2, 'held', 'the meter is coarser than the limits'],
    [9.9, 0, 'accepted', 'on the limit without uncertainty'],
    [9.85, 0.05, 'held', 'the interval ends on the limit below'],
    [10.15, 0.05, 'held', 'the interval begins on the limit above'],
  ] as const)('judges %s ± %s as %s: %s', (value, uncertainty, verdict, _why) => {
    expect(judgeReading({ value, uncertainty }, limits)).toBe(verdict);
  });

  test('never turns a verdict round as the meter gets worse: it only ends in held', () => {
    const figure = fc.double({ min: -100, max: 100, noNaN: true });
    const half = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(figure, figure, half, half, half, (value, least, width, small, more) => {
        const band = { least, most: least + width };
        const better = judgeReading({ value, uncertainty: small }, band);
        const worse = judgeReading({ value, uncertainty: small + more }, band);
        expect([better, 'held']).toContain(worse);
      }),
    );
  });

  test('throws where limits are crossed or the uncertainty is none', () => {
    expect(() => judgeReading({ value: 1, uncertainty: 0 }, { least: 2, most: 1 })).toThrow(RangeError);
    expect(() => judgeReading({ value: 1, uncertainty: -1 }, limits)).toThrow(RangeError);
    expect(() => judgeReading({ value: 1, uncertainty: Number.NaN }, limits)).toThrow(RangeError);
  });
});

describe('uncertaintyOf() and limitsOf()', () => {
  test('add the share of the reading and the fixed part', () => {
    expect(uncertaintyOf(10, { percent: 0.5, fixed: 0.02 })).toBe(0.07);
    expect(uncertaintyOf(-10, { percent: 0.5, fixed: 0 })).toBe(0.05);
  });

  test('lie around the nominal value, one-sided where the letter says so', () => {
    expect(limitsOf(4.7, { plus: 5, minus: 5 })).toEqual({ least: 4.465, most: 4.935 });
    expect(limitsOf(100, { plus: 80, minus: 20 })).toEqual({ least: 80, most: 180 });
    expect(limitsOf(0, { plus: 5, minus: 5 })).toEqual({ least: 0, most: 0 });
  });
});

const setup: Setup = {
  ...brookSetup,
  takenMs: 0,
  slots: [
    wantedSlot('M1-F-010', 'U-1', { critical: true, polarity: 'Pin 1 up' }),
    wantedSlot('M1-F-002', 'R-4K7', { note: '4k7 ±1 %' }),
    wantedSlot('M1-F-001', 'X-1', { critical: true }),
    wantedSlot('M1-F-003', 'D-1', { polarity: 'Band up' }),
    wantedSlot('M1-F-004', 'R-1'),
    wantedSlot('M1-F-005', 'D-2', { polarity: 'Band up', perPanel: 0 }),
  ],
};

const look = (slot: string, right = true): Changeover['looked'][number] => ({
  changeover: 'x',
  line: 'L1',
  setup: 's',
  slot,
  part: 'p',
  right,
  note: '',
  atMs: 0,
  by: 'ana',
});
const measure = (slot: string, verdict: 'accepted' | 'held' | 'refused'): Changeover['measured'][number] => ({
  changeover: 'x',
  line: 'L1',
  setup: 's',
  slot,
  part: 'p',
  quantity: 1,
  unit: 'Ω',
  uncertainty: 0,
  least: 0,
  most: 2,
  verdict,
  atMs: 0,
  by: 'ana',
});

const statesOf = (done: Partial<Pick<Changeover, 'measured' | 'looked'>>) =>
  Object.fromEntries(
    panelChecks(setup, { measured: [], looked: [], ...done }).map((each) => [each.wanted.slot, each.state]),
  );

describe('panelChecks()', () => {
  test('asks for critical parts, stated values and polarities that are placed, in walking order', () => {
    const checks = panelChecks(setup, { measured: [], looked: [] });
    expect(checks.map((each) => each.wanted.slot)).toEqual(['M1-F-001', 'M1-F-002', 'M1-F-003', 'M1-F-010']);
    expect(checks.map((each) => each.isCritical)).toEqual([true, false, false, true]);
    expect(checks.every((each) => each.state === 'open')).toBe(true);
  });

  test('takes orientation seen and value measured as right, and nothing less', () => {
    expect(statesOf({ looked: [look('M1-F-001'), look('M1-F-002'), look('M1-F-003')] })).toMatchObject({
      'M1-F-001': 'accepted',
      'M1-F-002': 'open',
      'M1-F-003': 'accepted',
      'M1-F-010': 'open',
    });
    const measured = ['M1-F-001', 'M1-F-002', 'M1-F-010'].map((slot) => measure(slot, 'accepted'));
    expect(statesOf({ measured })).toMatchObject({
      'M1-F-001': 'accepted',
      'M1-F-002': 'accepted',
      'M1-F-010': 'open',
    });
  });

  test('keeps a wrong look or a refused value above everything', () => {
    expect(
      statesOf({ looked: [look('M1-F-010', false)], measured: [measure('M1-F-010', 'accepted')] }),
    ).toMatchObject({ 'M1-F-010': 'refused' });
    expect(
      statesOf({ measured: [measure('M1-F-002', 'refused'), measure('M1-F-001', 'held')] }),
    ).toMatchObject({
      'M1-F-002': 'refused',
      'M1-F-001': 'held',
    });
  });
});
