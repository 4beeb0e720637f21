// What the help of `company` says of its tables is what they are: the same columns in the same order.

import { expect, test } from 'vitest';
import { plantColumns, shiftColumns, whereColumns } from '../../src/cli/company-tables.ts';
import { call } from './call.ts';

test('`company --help` names every column of every table, in its order', async () => {
  const { code, out } = await call(['company', '--help']);
  expect(code).toBe(0);
  const [, columns = ''] = out.split('Columns, in their order');
  const [part = ''] = columns.split('\n\n');
  const told = part
    .split(/\n(?=plants|where|shifts)/)
    .slice(1)
    .map((table) =>
      table
        .replace(/^\w+/, '')
        .replaceAll(/\([^)]*\)/g, '')
        .split(',')
        .map((name) => name.trim()),
    );
  expect(told).toEqual([[...plantColumns], [...whereColumns], [...shiftColumns]]);
});
