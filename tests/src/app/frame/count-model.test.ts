// The count dialog's arithmetic against worked examples, and every figure that may be wrong.

import { describe, expect, test } from 'vitest';
import {
  type CountField,
  type CountForm,
  type CountWay,
  computeCount,
  emptyForm,
  printedSd,
  readFigure,
  startForm,
  waysFor,
  weigh,
} from '../../../../src/app/frame/count-model.ts';

const about = { part: 'R-100' };

function count(way: CountWay, form: Partial<CountForm>) {
  const answer = computeCount(way, { ...emptyForm, ...form }, about);
  if (!answer.ok) throw new TypeError(`Cannot go on as form must fit: ${JSON.stringify(answer.wrong)}`);
  return answer.value;
}

describe('computeCount()', () => {
  test('finds by wound tape what the tape’s area holds', () => {
    // Worked by hand: π (120² − 60²) / (4 · 0.95 · 4) = 2232 parts.
    const measured = { outerMm: '120', hubMm: '60', thicknessMm: '0,95', pitchMm: '4' };
    expect(count('measured', measured).count.parts).toBeCloseTo(2232, 0);
  });

  test('against a full reel needs no thickness, and remembers the full reel', () => {
    const measured = { outerMm: '105', hubMm: '60', pitchMm: '2', fullOuterMm: '137', fullParts: '10000' };
    const { count: found, calibration } = count('measured', measured);
    expect(found.parts).toBeCloseTo((10_000 * (105 ** 2 - 60 ** 2)) / (137 ** 2 - 60 ** 2), 6);
    expect(found.sd).toBeGreaterThan(50); // half a millimetre outside alone is some 70 parts
    expect(calibration).toEqual({
      part: 'R-100',
      parts: 10_000,
      outerMm: 137,
      hubMm: 60,
      massG: null,
      emptyG: null,
    });
  });

  test('by weight takes the share between the empty and the full reel', () => {
    const weighed = { massG: '90', emptyG: '30', fullMassG: '150', fullParts: '5000' };
    expect(count('weighed', weighed).count.parts).toBeCloseTo(2500, 9);
  });

  test('names the first figure that is missing or cannot be', () => {
    const tape = { outerMm: '120', hubMm: '60', pitchMm: '4', fullOuterMm: '137', fullParts: '10000' };
    const rows: readonly (readonly [CountWay, Partial<CountForm>, CountField, string, string])[] = [
      ['typed', {}, 'parts', 'missing', 'nothing typed'],
      ['typed', { parts: '12a' }, 'parts', 'notNumber', 'letters'],
      ['typed', { parts: '12.5' }, 'parts', 'notNumber', 'half a part'],
      ['measured', { ...tape, hubMm: '' }, 'hubMm', 'missing', 'no hub'],
      ['measured', { ...tape, outerMm: '50' }, 'outerMm', 'tooSmall', 'inside the hub'],
      ['measured', { ...tape, outerMm: '178' }, 'outerMm', 'tooLarge', 'the flange was measured'],
      ['measured', { ...tape, fullOuterMm: '55' }, 'fullOuterMm', 'tooSmall', 'full below hub'],
      ['measured', { ...tape, pitchMm: '0' }, 'pitchMm', 'tooSmall', 'no pitch'],
      [
        'weighed',
        { massG: '20', emptyG: '30', fullMassG: '150', fullParts: '1' },
        'massG',
        'tooSmall',
        'lighter than empty',
      ],
      [
        'weighed',
        { massG: '20', emptyG: '30', fullMassG: '30', fullParts: '1' },
        'fullMassG',
        'tooSmall',
        'full as light as empty',
      ],
    ];
    for (const [way, form, field, code, why] of rows) {
      expect(computeCount(way, { ...emptyForm, ...form }, about), why).toEqual({
        ok: false,
        wrong: { field, code },
      });
    }
  });

  test('an empty reel typed as 0 is certain', () => {
    expect(count('typed', { parts: '0' }).count).toMatchObject({ parts: 0, sd: 0 });
  });
});

test('a typed count has the spread of a printed one: 255 does not contradict 262 ± 2', () => {
  // A few parts on any reel, a few tenths of a percent on a full one: common practice.
  const typed = count('typed', { parts: '255' }).count;
  expect(typed.sd).toBe(3);
  expect(weigh({ parts: 262, sd: 2, basis: 'counted-down' }, typed).contradictions).toEqual([]);
  expect(weigh({ parts: 290, sd: 2, basis: 'counted-down' }, typed).contradictions).toEqual([[0, 1]]);
  expect(count('typed', { parts: '10000' }).count.sd).toBe(25);
  expect([printedSd(10_000, 0.01), printedSd(0, 0.01)]).toEqual([100, 0]);
});

test('`weigh()` joins what agrees by inverse variance and names what contradicts', () => {
  const before = { parts: 1000, sd: 30, basis: 'counted-down' } as const;
  const near = weigh(before, { parts: 1030, sd: 30, basis: 'measured' });
  expect(near).toMatchObject({ parts: 1015, basis: 'combined', contradictions: [] });
  expect(near.sd).toBeCloseTo(30 / Math.SQRT2, 9);
  expect(weigh(before, { parts: 2000, sd: 30, basis: 'measured' }).contradictions).toEqual([[0, 1]]);
  expect(weigh(null, { parts: 5, sd: 1, basis: 'machine' }).basis).toBe('machine');
});

test('`readFigure()` takes comma and point, and nothing else', () => {
  expect([
    readFigure('1 234,5'),
    readFigure('12.5'),
    readFigure(''),
    readFigure('-3'),
    readFigure('1e3'),
  ]).toEqual([1234.5, 12.5, null, null, null]);
});

test('`startForm()` fills in what was measured before', () => {
  const known = { part: 'R-100', measured: { parts: 10_000, outerMm: 137, hubMm: 60 }, weighed: null };
  expect(startForm(known, { pitchMm: 2, fullParts: null })).toMatchObject({
    fullOuterMm: '137',
    hubMm: '60',
    pitchMm: '2',
    fullParts: '10000',
    massG: '',
  });
});

test('only tape that is wound on a reel is offered to be measured', () => {
  expect(waysFor('tape')).toContain('measured');
  for (const kind of ['cut-tape', 'tray', 'tube', 'bulk'] as const)
    expect(waysFor(kind)).toEqual(['typed', 'machine', 'weighed']);
});
