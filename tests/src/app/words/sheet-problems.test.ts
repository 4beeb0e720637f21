import { expect, test } from 'vitest';
import { sheetProblem, sheetProblemCodes } from '../../../../shared/sheet/problems.ts';
import { words as es } from '../../../../src/app/words/es/sheet-problems.ts';

const facts = {
  ...{
    row: 3,
    found: 'x',
    wanted: 'tape width',
    headers: 'A, B',
    field: 'part',
    used: 'A',
    part: 'P',
    most: 64,
  },
  ...{ slot: 'M1-F-001', first: 2, next: 'M1-F-002', nextRow: 4, width: 12, ratio: 2, taken: 'no', count: 5 },
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
