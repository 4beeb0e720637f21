// Bills of materials as programs and people write them, laid over one placement file. All data is invented; where a layout follows a published
// description, its source stands beside it.

import { describe, expect, it } from 'vitest';
import { readBill } from '../../../shared/sheet/bill.ts';
import { billRows } from '../../../shared/sheet/bill-rows.ts';
import type { SheetRows } from '../../../shared/sheet/headers.ts';
import { joinBill } from '../../../shared/sheet/join.ts';
import { readPlacements } from '../../../shared/sheet/placements.ts';

const placed = (names: string) => {
  const rows = names
    .split(' ')
    .map((name, at) => `${name.replace('!', '')},${at},1,${name.endsWith('!') ? 'bottom' : 'top'}`);
  return readPlacements(`Ref,PosX,PosY,Side\n${rows.join('\n')}\n`, { hasBill: true });
};

function join(bill: string | SheetRows, names: string, options: { variant?: string; boards?: number } = {}) {
  const split = typeof bill === 'string' ? billRows(bill) : { rows: bill, problems: [] };
  const read = readBill(split.rows, {
    textProblems: split.problems,
    ...(options.variant === undefined ? {} : { variant: options.variant }),
  });
  const joined = joinBill(placed(names), read, { boardsPerPanel: options.boards ?? 1 });
  return {
    parts: joined.parts.map(
      ({ part, top, bottom, designators }) => `${part} ${top}/${bottom} ${designators.join(' ')}`,
    ),
    makers: joined.parts.map(({ supplierParts }) => supplierParts.join(' ')),
    notPlaced: joined.notPlaced.join(' '),
    problems: [
      ...read.problems.map(({ code, row }) => `bom ${code} ${row}`),
      ...joined.problems.map(({ file, code, row }) => `${file} ${code} ${row}`),
    ],
  };
}

describe('readBill() and joinBill()', () => {
  it('joins grouped rows by designator: sides, makers, what is never placed', () => {
    const bill = [
      'Part No;Qty;RefDes;Description;MPN',
      'BW-10023;3;R1-R3;Resistor 10k;KP-R0603-103 | SR-0603-103',
      'BW-10107;2;C1, C2;Capacitor;KP-C0402-104',
      'BW-30001;1;U1;Controller;',
    ].join('\n');
    expect(join(bill, 'R1 R2! R3 C1 C2 U1 FID1 H1 TP1')).toEqual({
      parts: ['BW-10023 2/1 R1 R2 R3', 'BW-10107 2/0 C1 C2', 'BW-30001 1/0 U1'],
      makers: ['KP-R0603-103 SR-0603-103', 'KP-C0402-104', ''],
      notPlaced: 'FID1 H1 TP1',
      problems: [],
    });
  });

  it('counts a panel of several boards, the designators once', () => {
    expect(join('Part,Ref\nA,"R1,R2"\n', 'R1 R2!', { boards: 4 }).parts).toEqual(['A 4/4 R1 R2']);
  });

  it.each([
    ['R1-R4', 'R1 R2 R3 R4'],
    ['R1–R4', 'R1 R2 R3 R4'],
    ['R1..R4', 'R1 R2 R3 R4'],
    ['R1...R4', 'R1 R2 R3 R4'],
    ['R1 - R4', 'R1 R2 R3 R4'],
    ['R1 to R4', 'R1 R2 R3 R4'],
    ['R1-4', 'R1 R2 R3 R4'],
    ['R1~R4', 'R1 R2 R3 R4'],
    ['R1; R2; R3; R4', 'R1 R2 R3 R4'],
    ['R1 R2 R3 R4', 'R1 R2 R3 R4'],
    ['R1/R2/R3/R4', 'R1 R2 R3 R4'],
    ['R1|R2+R3&R4', 'R1 R2 R3 R4'],
    ['R1, 2, 3-4', 'R1 R2 R3 R4'],
    ['R1,R2,,R3,R4,', 'R1 R2 R3 R4'],
    ['R1\nR2\r\nR3 R4', 'R1 R2 R3 R4'],
  ])('opens the list %j', (text, wanted) => {
    const rows = [
      ['Part', 'Designators'],
      ['A', text],
      ['B', 'C1'],
    ];
    expect(join(rows, 'R1 R2 R3 R4 C1').parts).toEqual([`A 4/0 ${wanted}`, 'B 1/0 C1']);
  });

  it('joins rows of one designator each, the quantity of the whole part in each of them', () => {
    const bill = 'Reference;Part Number;Quantity\nR1;BW-1;2\nR2;BW-1;2\nC1;BW-2;1\n';
    expect(join(bill, 'R1 R2! C1')).toMatchObject({ parts: ['BW-1 1/1 R1 R2', 'BW-2 1/0 C1'], problems: [] });
  });

  it('goes on with a list that is wrapped into rows of its own', () => {
    // Item, Quantity, Reference, Part in aligned text with wrapped references: common practice.
    const bill = [
      'Heather board  Revised: Tuesday, May 05, 2026',
      'Bill Of Materials          May 05,2026      14:00:00\tPage1',
      '',
      'Item\tQuantity\tReference\tPart',
      '______________________________________________',
      '',
      '1\t5\tR1,R2,R3,\t10k',
      '\t\tR4,R5',
      '2\t1\tC1\t0.1uF',
    ].join('\n');
    expect(join(bill, 'R1 R2 R3 R4 R5 C1')).toMatchObject({
      parts: ['10k 5/0 R1 R2 R3 R4 R5', '0.1uF 1/0 C1'],
      problems: [],
    });
  });

  it('reads aligned text whose header holds two words, though lists make as many words of a row as of the header', () => {
    const bill = [
      'Reference  Value  Qty  Part number',
      'R1 R2      10k      2  BW-1',
      'C1         100n     1  BW-2',
      'C2 C3      1u       2  BW-3',
    ];
    expect(join(bill.join('\n'), 'R1 R2 C1 C2 C3')).toMatchObject({
      parts: ['BW-1 2/0 R1 R2', 'BW-2 1/0 C1', 'BW-3 2/0 C2 C3'],
      problems: [],
    });
    // Each row of as many words as the header: nothing may shift by a column.
    expect(join(bill.filter((_, at) => at !== 2).join('\n'), 'R1 R2 C2 C3')).toMatchObject({
      parts: ['BW-1 2/0 R1 R2', 'BW-3 2/0 C2 C3'],
      problems: [],
    });
  });

  it('reads a bill below lines about it, with totals, rows of levels and more makers below a part', () => {
    const bill = [
      'Source:,heather',
      'Component Count:,5',
      '',
      'Level,Part Number,Qty,Ref Des,Description,AML',
      '0,ASM-1,1,,Assembly,',
      '1,BW-10023,3,R1-R3,Resistor,KP-R0603-103',
      ',,,,,SR-0603-103',
      '1,BW-10107,2,C1;C2,Capacitor,KP-C0603-104',
      'Total,,5,,,',
    ].join('\n');
    expect(join(bill, 'R1 R2 R3 C1 C2')).toMatchObject({
      parts: ['BW-10023 3/0 R1 R2 R3', 'BW-10107 2/0 C1 C2'],
      makers: ['KP-R0603-103 SR-0603-103', 'KP-C0603-104'],
      problems: [],
    });
  });

  it('reads German headers, a total further right and a remark that says not fitted', () => {
    const bill = [
      'Pos.;Menge;Sachnummer;Benennung;Bauform;Einbauplatz;Hersteller;Hersteller-Nr.;Bemerkung',
      '1;3;BW-10023;Widerstand 10k;0603;R1..R3;Kestrel;KP-R0603-103;',
      '2;1;BW-30001;Controller;QFN32;U1;Heron;HS-M100;nicht bestückt',
      ';4;;Summe;;;;;',
    ].join('\n');
    expect(join(bill, 'R1 R2 R3 U1')).toEqual({
      parts: ['BW-10023 3/0 R1 R2 R3'],
      makers: ['KP-R0603-103'],
      notPlaced: 'U1',
      problems: [],
    });
  });

  it.each([
    ['Part,Ref,DNP\nA,"R1,R2",\nA,R3,x\n', 'R3'],
    ['Part,Ref,Fitted\nA,"R1,R2",yes\nA,R3,no\n', 'R3'],
    ['Part,Ref,Value\nA,"R1,R2",10k\nA,R3,DNI\n', 'R3'],
    ['Part,Ref,Notes\nA,"R1,R2",\nA,R3,"Do not fit, option"\n', 'R3'],
    ['Part,Ref,Qty\nA,"R1,R2",2\nA,R3,DNP\n', 'R3'],
    ['Part,Ref,Populate\nA,"R1,R2",1\nA,R3,0\n', 'R3'],
    ['Part,Ref,No montar\nA,"R1,R2",\nA,R3,sí\n', 'R3'],
    ['Part,Ref\nA,"R1,R2"\nNot fitted,\nA,R3\n', 'R3'],
  ])('leaves out what the bill marks as not fitted: %j', (bill, notPlaced) => {
    const answer = join(bill, 'R1 R2 R3');
    expect(answer).toMatchObject({ parts: ['A 2/0 R1 R2'], notPlaced });
    expect(answer.problems.filter((problem) => problem.includes('placements'))).toEqual([]);
  });

  it('takes out only the designators that a remark names, and tells a remark that names none', () => {
    const named = 'Part,Qty,Ref,Notes\nA,3,R1-R3,R3: do not populate\nB,1,C1,\n';
    expect(join(named, 'R1 R2 R3 C1')).toMatchObject({
      parts: ['A 2/0 R1 R2', 'B 1/0 C1'],
      notPlaced: 'R3',
      problems: [],
    });
    expect(join('Part,Ref,Notes\nA,"R1,R2",option (DNP)\nB,C1,\n', 'R1 R2 C1')).toMatchObject({
      parts: ['B 1/0 C1'],
      problems: ['bom markInRemark 2'],
    });
  });

  it('tells a flag that is neither yes nor no', () => {
    expect(join('Part,Ref,DNP\nA,R1,\nB,C1,perhaps\n', 'R1 C1')).toMatchObject({
      parts: ['A 1/0 R1', 'B 1/0 C1'],
      problems: ['bom flagUnreadable 3'],
    });
  });

  it('reads two columns of designators, and variants that are written out', () => {
    const bill = 'Part,Designators Top,Designators Bottom\nA,"R1,R2",R3\nB,C1,\n';
    expect(join(bill, 'R1 R2 R3! C1').parts).toEqual(['A 2/1 R1 R2 R3', 'B 1/0 C1']);
    const variants = 'Part,Ref,Variant A,Variant B\nA,R1,Fitted,Fitted\nA,R2,Fitted,Not Fitted\n';
    expect(join(variants, 'R1 R2').problems).toEqual(['bom variantOpen 3']);
    expect(join(variants, 'R1 R2', { variant: 'B' })).toMatchObject({
      parts: ['A 1/0 R1'],
      notPlaced: 'R2',
      problems: [],
    });
  });

  it('takes empty cells of a column of crosses for not fitted, and says so', () => {
    expect(join('Ref,Part,Fitted\nR1,A,x\nR2,A,\nR3,B,x\n', 'R1 R2 R3')).toMatchObject({
      parts: ['A 1/0 R1', 'B 1/0 R3'],
      notPlaced: 'R2',
      problems: ['bom blankNotFitted 1'],
    });
  });

  it('builds the variant asked for, and asks where nobody says which', () => {
    const bill = 'Part,Ref,Basic,Pro\nA,"R1,R2",X,X\nB,C1,,X\n';
    expect(join(bill, 'R1 R2 C1', { variant: 'basic' })).toMatchObject({
      parts: ['A 2/0 R1 R2'],
      notPlaced: 'C1',
      problems: [],
    });
    expect(join(bill, 'R1 R2 C1', { variant: 'Pro' }).parts).toEqual(['A 2/0 R1 R2', 'B 1/0 C1']);
    expect(join(bill, 'R1 R2 C1').problems).toEqual(['bom variantOpen 3']);
    expect(join(bill, 'R1 R2 C1', { variant: 'Gold' }).problems).toContain('bom variantNotFound 1');
    const named = 'Part,Ref,Variant\nA,"R1,R2",\nB,C1,Pro\nC,C2,"Basic, Pro"\n';
    expect(join(named, 'R1 R2 C1 C2', { variant: 'Basic' }).parts).toEqual(['A 2/0 R1 R2', 'C 1/0 C2']);
    expect(join(named, 'R1 R2 C1 C2').problems).toEqual(['bom variantOpen 3']);
  });

  it('compares both ways: in the file only, in the bill only, quantity and designators', () => {
    const answer = join('Part,Qty,Ref\nA,3,"R1,R2"\nB,1,C9\n', 'R1 R2 R7');
    expect(answer).toMatchObject({ parts: ['A 2/0 R1 R2'], notPlaced: 'R7 C9' });
    expect(answer.problems).toEqual([
      'bom quantityDiffers 2',
      'placements designatorNotInBill 4',
      'bom designatorNotPlaced 3',
    ]);
  });

  it('tells one designator in two rows: the same part once, another part as an error', () => {
    expect(join('Part,Ref\nA,"R1,R2"\nA,R2\n', 'R1 R2')).toMatchObject({
      parts: ['A 2/0 R1 R2'],
      problems: ['bom billDesignatorTwice 3'],
    });
    const other = join('Part,Ref\nA,"R1,R2"\nB,R2\n', 'R1 R2');
    expect(other).toMatchObject({ parts: ['A 2/0 R1 R2'], problems: ['bom billDesignatorDiffers 3'] });
  });

  it('tells a designator that one row names twice', () => {
    expect(join('Part,Ref\nA,"R1,R2,R1"\n', 'R1 R2')).toMatchObject({
      parts: ['A 2/0 R1 R2'],
      problems: ['bom billDesignatorTwice 2'],
    });
  });

  it('lets the fitted row speak where a designator is in two rows and one is not fitted', () => {
    const answer = join('Part,Ref,DNP\nA,R1,x\nB,R1,\n', 'R1');
    expect(answer).toMatchObject({ parts: ['B 1/0 R1'], notPlaced: '', problems: [] });
  });

  it('names parts by the maker where there are no part numbers, by value and package where there is neither', () => {
    const maker =
      'Comment,Designator,Footprint,Manufacturer Part Number 1,Supplier Part Number 1\n100nF,"C1, C2",0402,KP-104,MS-1\n';
    expect(join(maker, 'C1 C2')).toMatchObject({
      parts: ['KP-104 2/0 C1 C2'],
      makers: ['KP-104'],
      problems: [],
    });
    const value = 'Value,Footprint,Ref\n10k,0603,"R1,R2"\n10k,0805,R3\n';
    expect(join(value, 'R1 R2 R3')).toMatchObject({
      parts: ['10k 0603 2/0 R1 R2', '10k 0805 1/0 R3'],
      problems: ['bom valueInPackages 3'],
    });
  });

  it('finds designators under headers that mean other things elsewhere', () => {
    expect(join('Part;Value;Device\nC1;100n;C-EU\nC2;100n;C-EU\nR1;10k;R-EU\n', 'C1 C2 R1').parts).toEqual([
      '100n 2/0 C1 C2',
      '10k 1/0 R1',
    ]);
    expect(join('Qty;Value;Parts\n2;100n;C1, C2\n1;10k;R1\n', 'C1 C2 R1').parts).toEqual([
      '100n 2/0 C1 C2',
      '10k 1/0 R1',
    ]);
    expect(join('Référence;Qté;Repère\nBW-1;2;C1 C2\nBW-2;1;R1\n', 'C1 C2 R1').parts).toEqual([
      'BW-1 2/0 C1 C2',
      'BW-2 1/0 R1',
    ]);
  });

  it('takes the values where the column of parts has one name for several of them', () => {
    const bill = 'Part,Value,Ref\nRES,10k,R1\nRES,4k7,R2\nCAP,100n,C1\nCAP,1u,C2\n';
    expect(join(bill, 'R1 R2 C1 C2')).toMatchObject({
      parts: ['10k 1/0 R1', '4k7 1/0 R2', '100n 1/0 C1', '1u 1/0 C2'],
      problems: ['bom genericParts 1'],
    });
  });

  it('lists a fiducial and a hole that the bill names by value, and places a test point that is bought', () => {
    const bill = 'Ref,Value,Part Number\nR1,10k,BW-1\nFID1,Fiducial,\nH1,MountingHole,\nTP1,Test pad,BW-9\n';
    expect(join(bill, 'R1 FID1 H1 TP1')).toMatchObject({
      parts: ['BW-1 1/0 R1', 'BW-9 1/0 TP1'],
      notPlaced: 'FID1 H1',
    });
    expect(join(bill, 'R1 FID1 H1 TP1').problems).toContain('bom oddPlaced 5');
  });

  it('says where a row names no part and where the placement file names another', () => {
    expect(join('Part,Value,Ref\nA,10k,R1\n,,R2\n', 'R1 R2').problems).toContain('bom billPartMissing 3');
    const file = readPlacements('Ref,Part,Value,Side\nR1,A,10k,T\nR2,B,10k,T\nR3,A,4k7,T\n', {
      hasBill: true,
    });
    const bill = readBill(billRows('Part,Value,Ref\nA,10k,"R1,R2,R3"\n').rows);
    expect(joinBill(file, bill).problems.map(({ code, row }) => `${code} ${row}`)).toEqual([
      'partOfFileDiffers 3',
      'valueOfFileDiffers 4',
    ]);
  });

  it('refuses a bill without designators or without parts, naming its headers', () => {
    expect(join('Part,Qty\nA,3\n', 'R1').problems).toContain('bom columnMissing 1');
    expect(
      readBill([
        ['Ref', 'Qty'],
        ['R1', 1],
      ]).problems,
    ).toMatchObject([{ code: 'columnMissing', facts: { wanted: 'part' } }]);
  });
});
