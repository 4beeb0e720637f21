import { expect, test } from 'vitest';
import { sheetProblem, sheetProblemCodes } from '../../../../shared/sheet/problems.ts';
import { words as en } from '../../../../src/app/words/en/sheet-problems.ts';
import { words as es } from '../../../../src/app/words/es/sheet-problems.ts';

const facts = {
  row: 3,
  found: 'x',
  wanted: 'tape width',
  headers: 'A, B',
  field: 'part',
  used: 'A',
  part: 'P',
  most: 64,
  slot: 'M1-F-001',
  first: 2,
  next: 'M1-F-002',
  nextRow: 4,
  width: 12,
  ratio: 2,
  taken: 'no',
  count: 5,
  designator: 'R1',
};

test.each(sheetProblemCodes)('%s has a Spanish sentence from the same facts', (code) => {
  const problem = sheetProblem(code, { row: 3 }, facts);
  const spanish = es.say(problem);
  expect(spanish).not.toMatch(/undefined|null|NaN/);
  expect(spanish).not.toBe(problem.message);
  expect(spanish.length).toBeGreaterThan(12);
});

test('a fact that names a field is said in Spanish', () => {
  const problem = sheetProblem('columnAbsent', { row: 1 }, facts);
  expect(es.say(problem)).toContain('ancho de cinta');
});

/** Our own choice: what a person reads in one go. */
const MOST_WORDS = 20;

test.each([
  ['en', en],
  ['es', es],
] as const)('no sentence in %s is longer than what is read in one go', (_, words) => {
  for (const code of sheetProblemCodes) {
    const said = words.say(sheetProblem(code, { row: 3 }, facts));
    for (const sentence of said.split(/(?<=[.:;?]) /))
      expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(MOST_WORDS);
  }
});

test('what is to be chosen is said as the screen offers it', () => {
  const said = (code: (typeof sheetProblemCodes)[number]) => sheetProblem(code, { row: 1 }, facts).message;
  expect(said('columnMissing')).toContain('Choose the column by hand.');
  expect(said('columnNotFound')).toContain('Choose the column again.');
  expect(said('slotUnclear')).toBe(
    'Slot "x" is not written like M1-F-014, so its neighbours cannot be checked. It is taken as written.',
  );
});
