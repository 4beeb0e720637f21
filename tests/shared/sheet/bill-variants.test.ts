// Which rows of a bill a variant builds, and how a bill's text is cut into cells.

import { describe, expect, it } from 'vitest';
import { readBill } from '../../../shared/sheet/bill.ts';
import { billRows } from '../../../shared/sheet/bill-rows.ts';
import { lookAt } from '../../../shared/sheet/column-look.ts';
import { looksLikeVariant } from '../../../shared/sheet/variants.ts';

describe('variants', () => {
  const built = (lines: readonly string[], variant?: string) => {
    const options = variant === undefined ? {} : { variant };
    const { lines: read, problems, variants } = readBill(billRows(lines.join('\n')).rows, options);
    const told = problems.map(
      ({ code, row, column }) => `${code} ${row}${column === null ? '' : ` ${column}`}`,
    );
    return [
      read
        .map(({ part, designators, isFitted }) => `${part} ${designators.join('+')}${isFitted ? '' : ' out'}`)
        .join(', '),
      told.join(),
      variants.join(),
    ];
  };
  const crosses = ['Part,Ref,Basic,Pro', 'A,R1,x,x', 'B,R2,,x', 'C,R3,x,', 'D,R4,DNP,DNP'];
  const named = [
    'Part,Ref,Variant',
    'A,R1,',
    'B,R2,Pro',
    'C,R3,Basic/Pro',
    'D,R4,all',
    'E,R5,DNP',
    'F,R6,Basic',
  ];

  it.each<[lines: readonly string[], variant: string | undefined, wanted: readonly string[]]>([
    [crosses, 'PRO', ['A R1, B R2, C R3 out, D R4 out', '', 'Basic,Pro']],
    [crosses, 'Variant Basic', ['A R1, B R2 out, C R3, D R4 out', '', 'Basic,Pro']],
    [
      crosses,
      undefined,
      ['A R1, B R2, C R3, D R4 out', 'variantOpen 3 Basic,variantOpen 4 Basic', 'Basic,Pro'],
    ],
    [crosses, 'Gold', ['A R1, B R2, C R3, D R4', 'variantNotFound 1', '']],
    [named, 'pro', ['A R1, B R2, C R3, D R4, E R5 out, F R6 out', '', 'Pro,Basic']],
    [named, 'Basic', ['A R1, B R2 out, C R3, D R4, E R5 out, F R6', '', 'Pro,Basic']],
    [
      named,
      undefined,
      ['A R1, B R2, C R3, D R4, E R5 out, F R6', 'variantOpen 3 Variant,variantOpen 7 Variant', 'Pro,Basic'],
    ],
    [named, 'Gold', ['A R1, B R2, C R3, D R4, E R5, F R6', 'variantNotFound 1', '']],
    [['Part,Ref,Lite', 'A,R1,no', 'B,R2,'], undefined, ['A R1 out, B R2', '', 'Lite']],
    [['Part,Ref,Variant', 'A,R1,Pro', 'B,R2,'], undefined, ['A R1, B R2', '', 'Pro']],
    [['Part,Ref,Variant', 'A,R1,', 'B,R2,'], undefined, ['A R1, B R2', '', '']],
  ])('%j for %s', (lines, variant, wanted) => {
    expect(built(lines, variant)).toEqual(wanted);
  });

  it('differ in rows that place something only', () => {
    const bill = ['Part,Ref,Basic,Pro', 'A,R1,x,x', 'B,,x,', 'C,R3,DNP,x', 'D DNP,R4,x,'];
    expect(built(bill)[1]).toBe('billRowWithoutDesignators 3 Ref,variantOpen 4 Basic,variantOpen 5 Basic');
  });

  it('are columns of crosses and marks under a header that is not known, not of numbers', () => {
    const look = (...cells: readonly string[]) =>
      looksLikeVariant(
        lookAt(
          cells.map((cell) => [cell, 'x']),
          0,
          0,
        ),
      );
    expect([look('x', '', 'DNP', 'fitted'), look('x', '1'), look('x', 'R1'), look('', '')]).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });
});

it('a bill’s text is cut by the separator that gives a header, else where its columns line up', () => {
  const second = (text: string) => billRows(text).rows[1];
  expect(second('Reference Value Quantity\nR1 10k 1\nC1 1u 1')).toEqual(['R1', '10k', '1']);
  expect(second('a,b\n1,2')).toEqual(['1', '2']);
  expect(second('Ref  Qty,1  Part\nR1   1      A')).toEqual(['R1', '1', 'A']);
  expect(second('Reference ; Value ; Quantity\nR1 R2 ; 10k ; 2')).toEqual(['R1 R2 ', ' 10k ', ' 2']);
  expect(second('Part,Ref\nA B,R1')).toEqual(['A B', 'R1']);
  const below = (blank: number) => second(`${'\n'.repeat(blank)}Part,Ref x\nA,R1  R2`);
  expect(below(0)).toEqual(['A', 'R1  R2']);
});
