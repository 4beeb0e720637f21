// A size of labels as it is typed: what is right is what the log takes, what is wrong is told at its own field.

import { expect, test } from 'vitest';
import { checkPayload } from '../../../../../shared/floor/kinds.ts';
import { FIRST_PAPER } from '../../../../../shared/labels/label-paper.ts';
import { fieldsFor, formOf, readSize } from '../../../../../src/app/screens/plant/print/size-form.ts';

const roll = { ...formOf(null), size: ' Shelf ' };
const sheet = {
  ...roll,
  paper: 'sheet' as const,
  widthMm: '63,5',
  heightMm: '38.1',
  columns: '3',
  rows: '7',
  leftMm: '7.2',
  topMm: '15.1',
  gapXMm: '2.5',
  gapYMm: '0',
};

test('a roll is asked for its label alone, whose size is the page’s', () => {
  expect(fieldsFor('roll')).toEqual(['widthMm', 'heightMm', 'marginMm', 'dpi']);
  // What was typed for a sheet before counts no more.
  const read = readSize({ ...sheet, paper: 'roll', size: 'Shelf' });
  expect(read).toEqual({
    ok: true,
    size: {
      ...FIRST_PAPER,
      size: 'Shelf',
      widthMm: 63.5,
      heightMm: 38.1,
      pageWidthMm: 63.5,
      pageHeightMm: 38.1,
    },
  });
});

test('a sheet of 21 as sold fits A4, and the log takes it', () => {
  const read = readSize(sheet);
  if (!read.ok) throw new Error(`Cannot test as the form must be right: current fault is ${read.wrong.code}`);
  expect(checkPayload('labels.sized', read.size)).toMatchObject({
    size: 'Shelf',
    widthMm: 63.5,
    pageHeightMm: 297,
  });
  expect(formOf(read.size)).toMatchObject({ size: 'Shelf', widthMm: '63.5', columns: '3' });
});

test.each([
  [{ ...sheet, columns: '4' }, 'columns', 'too-wide'],
  [{ ...sheet, rows: '8' }, 'rows', 'too-high'],
  [{ ...roll, marginMm: '19' }, 'marginMm', 'no-room'],
  [{ ...roll, widthMm: 'wide' }, 'widthMm', 'number'],
  [{ ...sheet, columns: '2.5' }, 'columns', 'number'],
  [{ ...roll, heightMm: '4' }, 'heightMm', 'range'],
  [{ ...roll, dpi: '3000' }, 'dpi', 'range'],
  [{ ...roll, size: '  ' }, 'size', 'name'],
] as const)('what is wrong is told at its field', (form, field, code) => {
  expect(readSize(form)).toMatchObject({ ok: false, wrong: { field, code } });
});
