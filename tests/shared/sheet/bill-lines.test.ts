// Lines of a bill of materials as they are read, one string each, and what is told of them, worked out by hand.

import { describe, expect, it } from 'vitest';
import { type BillOptions, readBill } from '../../../shared/sheet/bill.ts';
import { parseCellQuantity } from '../../../shared/sheet/bill-row.ts';
import { billRows } from '../../../shared/sheet/bill-rows.ts';
import type { SheetRows } from '../../../shared/sheet/headers.ts';

function read(given: readonly string[] | SheetRows, options: BillOptions = {}) {
  const isText = given.every((line) => typeof line === 'string');
  const rows = isText ? billRows(given.join('\n')).rows : (given as SheetRows); // rows where it is no text
  const { lines, problems, ignored, variants } = readBill(rows, options);
  return {
    lines: lines.map(({ row, part, designators, isFitted }) =>
      [row, part, designators.join('+'), ...(isFitted ? [] : ['out'])].join(' '),
    ),
    full: lines,
    told: problems.map(({ code, row, column }) =>
      [code, String(row), ...(column === null ? [] : [column])].join(' '),
    ),
    facts: problems.map(({ facts }) => facts),
    ignored,
    variants,
  };
}

describe('a row', () => {
  it('says part, makers, value, package, quantity and side; marks for nothing say nothing', () => {
    const { full, told } = read([
      'Part,Value,Qty,Ref,Package,Description,MPN,Side',
      'A,10k,2,"R1,R2",0603,Res,KP-1,top',
      '-,4k7,1 pcs,R3,n/a,-,"KP-2; KP-3; KP-2",b',
      ',,1,C1,,desc,,',
      ',,0,C2,,,,',
      'B,1u,x,C3,,,DNP; KP-9,',
    ]);
    const none = { package: '', description: '', side: null, isFitted: true, quantity: 1, value: '' };
    expect(full).toEqual([
      {
        row: 2,
        designators: ['R1', 'R2'],
        part: 'A',
        namedBy: 'part',
        supplierParts: ['KP-1'],
        value: '10k',
        package: '0603',
        description: 'Res',
        isFitted: true,
        side: 'top',
        quantity: 2,
      },
      {
        ...none,
        row: 3,
        designators: ['R3'],
        part: 'KP-2',
        namedBy: 'maker',
        supplierParts: ['KP-2', 'KP-3'],
        value: '4k7',
        side: 'bottom',
      },
      {
        ...none,
        row: 4,
        designators: ['C1'],
        part: 'desc',
        namedBy: 'value',
        supplierParts: [],
        description: 'desc',
      },
      {
        ...none,
        row: 5,
        designators: ['C2'],
        part: '',
        namedBy: 'value',
        supplierParts: [],
        isFitted: false,
        quantity: 0,
      },
      {
        ...none,
        row: 6,
        designators: ['C3'],
        part: 'B',
        namedBy: 'part',
        supplierParts: ['KP-9'],
        value: '1u',
        quantity: null,
      },
    ]);
    expect(told).toEqual([
      'billPartByOther 3 Part',
      'billPartByOther 4 Part',
      'quantityDiffers 5 Qty',
      'quantityUnreadable 6 Qty',
    ]);
  });

  it('without number and value is named by its library, an order number before that', () => {
    const { full } = read(['Value,Device,Ref,Order code', ',RES,R1,', '-,-,R2,OC-1', '1k,RES,R3,OC-2']);
    expect(full.map(({ part, namedBy, supplierParts }) => [part, namedBy, ...supplierParts])).toEqual([
      ['RES', 'value'],
      ['OC-1', 'order', 'OC-1'],
      ['OC-2', 'order', 'OC-2'],
    ]);
  });

  it('lists of several columns are one, each name once; a name twice within one of them is told', () => {
    const answer = read([
      ['Part', 'Ref top', 'Ref bottom'],
      ['A', 'R1\nR2', 'R2, R3'],
      ['B', 'C1, C1', 'DNP'],
      ['C', 'D1', 'D2'],
      ['D', 'E1', 'E2'],
    ]);
    expect(answer.lines).toEqual(['2 A R1+R2+R3', '3 B C1', '4 C D1+D2', '5 D E1+E2']);
    expect(answer.told).toEqual(['billDesignatorTwice 3 Ref top']);
  });

  it('with more filled cells than the header is told', () => {
    const answer = read(['Part,Ref', 'A,R1,x', 'B,R2,,']);
    expect([answer.told, answer.facts]).toEqual([['rowTooLong 2'], [{ found: 3, wanted: 2 }]]);
  });

  it.each<[text: string, count: number | null]>([
    ['12', 12],
    ['4,0', 4],
    ['4.00', 4],
    ['1.234', 1234],
    ['3 pcs', 3],
    ['3x', 3],
    ['3 Stück.', 3],
    ['x3', null],
    ['', null],
  ])('a quantity of %j is %s', (text, count) => {
    expect(parseCellQuantity(text)).toBe(count);
  });
});

describe('rows that go on with the one above', () => {
  it('name more designators while its quantity is not reached, and have no number of their own', () => {
    const answer = read([
      'Item,Part,Qty,Ref',
      '1,A,5,"R1,R2"',
      ',,,"R3,R4"',
      ',,,R5',
      ',,,R6',
      '2,B,2,C1',
      '3,,,C2',
    ]);
    expect(answer.lines).toEqual(['2 A R1+R2+R3+R4+R5', '5  R6', '6 B C1', '7  C2']);
    expect(answer.told).toEqual([
      'billPartMissing 5 Part',
      'quantityDiffers 6 Qty',
      'billPartMissing 7 Part',
    ]);
  });

  it('name more makers, whatever the quantity', () => {
    const { full } = read(['Part,Qty,Ref,MPN', 'A,1,R1,KP-1', ',,,KP-2', ',,,KP-1', ',1k,,KP-3', 'B,1,C1,']);
    expect(full.map(({ part, supplierParts }) => [part, ...supplierParts])).toEqual([
      ['A', 'KP-1', 'KP-2'],
      ['B'],
    ]);
    const first = read(['Ref,MPN,Qty', 'R1,,1', ',KP-2,', 'C1,KP-3,1']).full[0];
    expect(first).toMatchObject({ part: 'KP-2', namedBy: 'maker' });
  });

  it('are empty throughout below their first: two of eight rows or more, where no quantities are', () => {
    const bill = (more: number) => [
      'Part,Ref',
      'A,R1',
      ',R2',
      ',R3',
      ...Array.from({ length: more }, (_, at) => `P-${at + 1},C${at + 1}`),
    ];
    expect(read(bill(5)).lines[0]).toBe('2 A R1+R2+R3');
    expect(read(bill(6)).lines.slice(0, 3)).toEqual(['2 A R1', '3  R2', '4  R3']);
    expect(read(['Part,Ref', 'A,R1', ',R2', 'B,C1']).lines[0]).toBe('2 A R1');
    expect(read(['Part,Ref,Qty', 'A,R1,1', ',R2,', ',R3,', 'B,C1,1']).lines[0]).toBe('2 A R1');
  });
});

describe('rows that are no lines', () => {
  it('headings say what is fitted below them', () => {
    const answer = read(['Part,Ref,Qty', 'A,R1,1', 'Not fitted,,', 'B,R2,1', 'Fitted,,', 'C,R3,1']);
    expect(answer.lines).toEqual(['2 A R1', '4 B R2 out', '6 C R3']);
    expect([answer.ignored, answer.told]).toEqual([2, []]);
  });

  it('assemblies stand over a deeper level; other rows without designators are told', () => {
    const levels = ['Level,Part,Ref,Qty', '0,ASM,,1', '1,A,R1,1', '1,B,,1', '1,C,R2,1', '1,D,,DNP'];
    const answer = read(levels);
    expect([answer.lines, answer.ignored, answer.told]).toEqual([
      ['3 A R1', '5 C R2'],
      3,
      ['billRowWithoutDesignators 4 Ref'],
    ]);
    expect(read(['Part,Ref,Qty', 'ASM,,1', 'A,R1,1']).told).toEqual(['billRowWithoutDesignators 2 Ref']);
  });

  it('totals, comments and the header again are left out', () => {
    const bill = ['Part,Ref,Qty', 'A,R1,1', 'Part,Ref,Qty', '# note,,', 'x,,Total', 'B,R2,1', 'Total 4,R3,1'];
    const answer = read(bill);
    expect([answer.lines, answer.ignored, answer.told]).toEqual([
      ['2 A R1', '6 B R2', '7 Total 4 R3'],
      3,
      [],
    ]);
  });

  it('another table ends the bill', () => {
    const bill = ['Part,Ref,Qty,Value', 'A,R1,1,10k', 'Part number,Reference,Quantity,', 'B,R2,1,1u'];
    const answer = read(bill);
    expect([answer.lines, answer.told]).toEqual([['2 A R1'], ['secondTable 3']]);
    expect(answer.facts).toEqual([{ headers: 'Part number, Reference, Quantity' }]);
  });
});

describe('what is not fitted', () => {
  it('is what a remark names, in two lines of one row', () => {
    const answer = read([
      'Part,Qty,Ref,Notes',
      'A,3,"R1,R2,R3","R3, R2: do not populate"',
      'B,1,C1,do not fit this one',
      'C,2,"C2,C3","C2 C3 not fitted"',
      'D 1 DNP,2,"D1,D2",',
      'E,2,"E1,E2",not fitted option',
    ]);
    expect(answer.lines).toEqual([
      '2 A R1',
      '2 A R2+R3 out',
      '3 B C1 out',
      '4 C C2+C3 out',
      '5 D 1 DNP D1+D2 out',
      '6 E E1+E2 out',
    ]);
    expect([answer.told, answer.facts]).toEqual([['markInRemark 6 Notes'], [{ found: 'not fitted option' }]]);
  });

  it('is what a flag says, either way round; a flag that is neither is told', () => {
    const bill = [
      'Part,Ref,Fitted,DNP',
      'A,R1,yes,',
      'B,R2,who,',
      'C,R3,no,',
      'D,R4,yes,x',
      'E,R5,yes,who',
      'F,,who,who',
      'G,R6,n/a,-',
    ];
    const answer = read(bill);
    expect(answer.lines).toEqual(['2 A R1', '3 B R2', '4 C R3 out', '5 D R4 out', '6 E R5', '8 G R6']);
    expect(answer.told.filter((each) => each.startsWith('flag'))).toEqual([
      'flagUnreadable 3 Fitted',
      'flagUnreadable 6 DNP',
    ]);
    expect(answer.facts[0]).toEqual({ found: 'who', taken: 'yes' });
  });

  it('is an empty cell in a column of crosses, counted', () => {
    const answer = read(['Part,Ref,Fitted', 'A,R1,x', 'B,R2,', 'C,R3,', ',,', 'D,,']);
    expect(answer.lines).toEqual(['2 A R1', '3 B R2 out', '4 C R3 out']);
    expect([answer.told[0], answer.facts[0]]).toEqual([
      'blankNotFitted 1 Fitted',
      { found: 'Fitted', count: 2 },
    ]);
  });
});

describe('quantities', () => {
  const quantities = (...rows: readonly string[]) => read(['Part,Qty,Ref', ...rows]);
  it('that are all the same multiple, in three rows or more, are told once', () => {
    const { told, facts } = quantities('A,4,"R1,R2"', 'B,2,C1', 'C,2,C2');
    expect([told, facts]).toEqual([['quantityRatio null Qty'], [{ ratio: 2 }]]);
    expect(quantities('A,4,"R1,R2"', 'B,2,C1').told).toEqual([
      'quantityDiffers 2 Qty',
      'quantityDiffers 3 Qty',
    ]);
    expect(quantities('A,2,"R1,R2"', 'B,1,C1', 'C,1,C2').told).toEqual([]);
    expect(quantities('A,3,"R1,R2"', 'B,3,"C1,C2"', 'C,3,"D1,D2"').told).toHaveLength(3);
    expect(quantities('A,4,"R1,R2"', 'B,2,C1', 'C,3,C2').facts[2]).toEqual({ found: 1, wanted: 3 });
  });

  it('may state the whole part in each of its rows', () => {
    expect(quantities('A,3,R1', 'A,3,R2', 'A,3,R3', 'B,1,R4').told).toEqual([]);
    expect(quantities('A,2,R1', 'a,2,R2', 'B,1,R4').told).toEqual([]);
    expect(quantities('A,3,R1', 'A,2,R2', 'A,3,R3', 'B,1,R4').told).toEqual(['quantityDiffers 3 Qty']);
  });
});

it('of many problems the first 1000 are listed', () => {
  const rows = Array.from({ length: 1010 }, (_, at) => `A,R${at + 1},x`);
  const { told } = read(['Part,Ref,Qty', ...rows]);
  expect([told.length, told.at(-1)]).toEqual([1001, 'moreProblems null']);
});

describe('one against another', () => {
  it('a designator stays with its first row, a part has one value', () => {
    const bill = [
      'Part,Value,Ref',
      'A,10k,R1',
      'a,10K,R2',
      'A,4k7,R3',
      'B,1u,r1',
      'A,10k,"R1,R9"',
      ',10k,X1',
      'C,,Y1',
      'C,2u,Y2',
    ];
    const answer = read(bill);
    expect(answer.lines).toEqual([
      '2 A R1',
      '3 a R2',
      '4 A R3',
      '5 B ',
      '6 A R9',
      '7 10k X1',
      '8 C Y1',
      '9 C Y2',
    ]);
    expect(answer.told).toEqual([
      'partDescribedTwice 4 Value',
      'billDesignatorDiffers 5 Ref',
      'billDesignatorTwice 6 Ref',
      'billPartByOther 7 Part',
    ]);
    expect(answer.facts.slice(0, 3)).toEqual([
      { part: 'A', found: '4k7', wanted: '10k', first: 2 },
      { designator: 'r1', first: 2, found: 'B', wanted: 'A' },
      { designator: 'R1', first: 2 },
    ]);
  });

  it('a fitted row speaks before one that is not, whichever comes first', () => {
    expect(read(['Part,Ref,DNP', 'A,R1,x', 'B,R1,', 'C,R1,x']).told).toEqual([]);
    expect(read(['Part,Ref,DNP', 'A,R1,x', 'B,R1,', 'C,R1,']).told).toEqual(['billDesignatorDiffers 4 Ref']);
  });
});

describe('a bill that cannot be read', () => {
  it.each<[lines: readonly string[], options: BillOptions, told: readonly string[]]>([
    [[''], {}, ['columnMissing 1', 'columnMissing 1']],
    [['Part,Ref'], {}, ['noRows 1']],
    [['Part,Qty', 'A,1'], {}, ['columnMissing 1']],
    [['Part,Ref', 'A,R1'], { columns: { note: 'Moon' } }, ['columnNotFound 1']],
    [['Part,What', 'A,R1'], {}, ['columnByLook 1 What']],
    [['Part,Ref', 'A,R1'], { variant: 'Pro' }, ['variantNotFound 1']],
    [
      ['Part,Ref,Qty', 'A,R1,x', 'B,R2,y', 'C,R3,z'],
      { mostProblems: 1 },
      ['quantityUnreadable 2 Qty', 'moreProblems null'],
    ],
  ])('%j says so', (lines, options, told) => {
    const answer = read(lines, options);
    expect([answer.told, answer.ignored]).toEqual([told, 0]);
  });
});
