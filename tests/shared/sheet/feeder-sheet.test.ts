import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isFeeder, parseFeeder, parsePitches, readFeederRows } from '../../../shared/sheet/feeder-sheet.ts';
import { tapeWidthsMm } from '../../../shared/sheet/tapes.ts';

test.each([
  ['one', '4', [4]],
  ['a slash', '2/4', [2, 4]],
  ['semicolons and units, out of order', '8 mm; 4 mm', [4, 8]],
  ['commas with blanks', '2, 4', [2, 4]],
  ['a decimal comma', '2,0', [2]],
  ['the same twice', '4 4', [4]],
  ['nothing: any', ' ', []],
  ['a word', 'four', null],
  ['zero', '0', null],
])('`parsePitches()` reads %s', (_, text, wanted) => {
  expect(parsePitches(text)).toEqual(wanted);
});

describe('parseFeeder()', () => {
  const good = { feeder: 'F-1', tapeWidth: '12 mm', pitches: '4/8', positions: '' };

  test('takes positions from the tape width where none are given', () => {
    expect(parseFeeder(good)).toEqual({ feeder: 'F-1', tapeWidthMm: 12, pitchesMm: [4, 8], positions: 2 });
    expect(parseFeeder({ ...good, positions: 3 })).toMatchObject({ positions: 3 });
  });

  test.each([
    ['id-missing', { feeder: ' ' }],
    ['id-long', { feeder: 'F'.repeat(65) }],
    ['width-wrong', { tapeWidth: '9' }],
    ['width-wrong', { tapeWidth: '' }],
    ['pitch-wrong', { pitches: 'x' }],
    ['positions-wrong', { positions: '0' }],
    ['positions-wrong', { positions: '61' }],
  ])('says %s', (code, changed) => {
    expect(parseFeeder({ ...good, ...changed })).toMatchObject({ code });
  });
});

describe('readFeederRows()', () => {
  test('reads columns by their headers, in any order and language', () => {
    const text = 'Ancho de cinta;Alimentador;Paso\n8;F-1;2/4\n12;F-2;4\n';
    expect(readFeederRows(text)).toEqual({
      feeders: [
        { feeder: 'F-1', tapeWidthMm: 8, pitchesMm: [2, 4], positions: 1 },
        { feeder: 'F-2', tapeWidthMm: 12, pitchesMm: [4], positions: 2 },
      ],
      problems: [],
    });
  });

  test('reads rows without a header as id, width, pitches, positions', () => {
    const { feeders, problems } = readFeederRows('F-1\t8\t4\t1\n\nF-2\t24\t12\t4\n');
    expect(problems).toEqual([]);
    expect(feeders.map(({ feeder, positions }) => [feeder, positions])).toEqual([
      ['F-1', 1],
      ['F-2', 4],
    ]);
  });

  test('names every row that is no feeder, and takes the others', () => {
    const { feeders, problems } = readFeederRows('Feeder,Width\nF-1,8\nF-2,9\n,8\nF-1,12\n');
    expect(feeders.map(({ feeder }) => feeder)).toEqual(['F-1']);
    expect(problems).toEqual([
      { row: 3, code: 'width-wrong', found: '9' },
      { row: 4, code: 'id-missing', found: '' },
      { row: 5, code: 'id-twice', found: 'F-1' },
    ]);
  });

  test('gives back what was written, whatever the feeders', () => {
    const feeder = fc.record({
      feeder: fc.stringMatching(/^F-[0-9]{1,5}$/),
      tapeWidthMm: fc.constantFrom(...tapeWidthsMm),
      pitchesMm: fc
        .uniqueArray(fc.constantFrom(2, 4, 8, 12), { minLength: 1 })
        .map((all) => all.sort((a, b) => a - b)),
      positions: fc.integer({ min: 1, max: 60 }),
    });
    fc.assert(
      fc.property(fc.uniqueArray(feeder, { selector: (each) => each.feeder, minLength: 1 }), (feeders) => {
        const rows = feeders.map((each) =>
          [each.feeder, each.tapeWidthMm, each.pitchesMm.join('/'), each.positions].join('\t'),
        );
        expect(readFeederRows(`Feeder\tTape width\tPitch\tPositions\n${rows.join('\n')}`)).toEqual({
          feeders,
          problems: [],
        });
      }),
    );
  });

  test('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        for (const feeder of readFeederRows(text).feeders) expect(isFeeder(feeder)).toBe(true);
      }),
    );
  });
});
