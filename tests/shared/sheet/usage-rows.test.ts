// Placements per panel by row of a sheet, out of placement files written by hand; sharing, feeders, packages and differences.

import { describe, expect, it } from 'vitest';
import type { PartFacts } from '../../../shared/floor/moisture-rules.ts';
import { diffSheets } from '../../../shared/sheet/diff.ts';
import { parseFeeder, parsePitches, readFeederRows } from '../../../shared/sheet/feeder-sheet.ts';
import { parseBodySize, parsePackageText } from '../../../shared/sheet/package-text.ts';
import { readPlacements } from '../../../shared/sheet/placements.ts';
import { readSheet, type SheetOptions } from '../../../shared/sheet/read.ts';
import { statedUsage } from '../../../shared/sheet/sharing.ts';
import type { SheetSlot } from '../../../shared/sheet/slot.ts';
import { toSetupSlots } from '../../../shared/sheet/taken.ts';
import { describedParts } from '../../../shared/sheet/taken-parts.ts';
import {
  isTapeWidth,
  listedPitchesMm,
  positionsForWidth,
  tapeWidthsMm,
} from '../../../shared/sheet/tapes.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

/** "R1 A t" places part A at R1 on the top. */
const file = (...rows: readonly string[]) =>
  readPlacements(
    [
      'Ref,Part,X,Y,Side',
      ...rows.map((row, at) => row.replace(/ /, ',').replace(/ (?=[tb]$)/, `,${at},1,`)),
    ].join('\n'),
  );
function read(
  header: string,
  rows: readonly string[],
  placements: ReturnType<typeof file>,
  options: SheetOptions = {},
) {
  const text = [`Slot,${header}`, ...rows.map((row, at) => `F-${at * 9 + 1},${row}`)].join('\n');
  const { slots, problems, placementScope } = readSheet(textToRows(text).rows, { placements, ...options });
  const own = problems.filter(({ code }) => !/^(?:columnAbsent|noApprovedReels)$/.test(code));
  return {
    usage: slots.map(({ perPanel }) => perPanel).join(' '),
    told: own.map(({ code, row, column }) => `${code} ${row} ${column}`),
    facts: own.map(({ facts }) => facts),
    scope: placementScope,
  };
}

describe('usage by part', () => {
  const ab = file('R1 A t', 'R2 a t', 'R3 A b', 'C1 B b', 'C2 B b');

  it('counts an alternate without a slot of its own for the part it stands in for', () => {
    const both = read('Part,Alternates', ['A,', 'C,b'], ab);
    expect([both.usage, both.told, both.scope]).toEqual(['3 2', [], 'both']);
    const own = read('Part,Alternates', ['A,b', 'B,'], ab);
    expect(own.usage).toBe('3 2');
  });

  it.each<
    [
      what: string,
      header: string,
      rows: readonly string[],
      options: SheetOptions,
      usage: string,
      scope: string,
    ]
  >([
    ['the side asked for', 'Part', ['A', 'B'], { side: 'bottom' }, '1 2', 'bottom'],
    ['the side that all rows state', 'Part,Side', ['A,top', 'B,top'], {}, '2 ', 'top'],
    ['both where rows differ', 'Part,Side', ['A,top', 'B,bottom'], {}, '3 2', 'both'],
    ['both where some rows state none', 'Part,Side', ['A,top', 'B,'], {}, '3 2', 'both'],
    ['the side that agrees with most', 'Part,Qty', ['A,2', 'B,'], {}, '2 ', 'top'],
    ['both where it agrees as well', 'Part,Qty', ['A,', 'B,2'], {}, '3 2', 'both'],
    ['boards of a panel', 'Part', ['A', 'B'], { boardsPerPanel: 4 }, '12 8', 'both'],
  ])('is for %s', (_, header, rows, options, usage, scope) => {
    const answer = read(header, rows, ab, options);
    expect([answer.usage, answer.scope]).toEqual([usage, scope]);
  });

  it('tells a placed part without a slot with its first row, and a part that is not placed', () => {
    const answer = read('Part,Qty', ['A,3', 'C,1'], ab, { side: 'both' });
    expect(answer.told).toEqual(['partNotPlaced 3 Qty', 'partWithoutSlot null null']);
    expect(answer.facts).toEqual([{ part: 'C' }, { part: 'B', found: 2, first: 5 }]);
    expect(read('Part,Qty', ['A,3', 'B,2', 'C,0'], ab, { side: 'both' }).told).toEqual(['usageZero 4 Qty']);
    expect(read('Part,Qty', ['A,2', 'C,'], ab, { side: 'top' }).told).toEqual(['partNotPlaced 3 Qty']);
  });

  it.each<[rows: readonly string[], usage: string, told: readonly string[], fact: unknown]>([
    [['A,1', 'A,', 'B,2'], '1 2 2', [], undefined],
    [['A,3', 'A,', 'B,2'], '3  2', ['usageDisagrees 2 Qty'], { part: 'A', found: 3, wanted: 3 }],
    [['A,4', 'B,2'], '4 2', ['usageDisagrees 2 Qty'], { part: 'A', found: 4, wanted: 3 }],
    [['A,', 'A,', 'A,1', 'B,2'], '  1 2', ['usageSplitUnknown 2 Qty'], { part: 'A', wanted: 2, found: 2 }],
    [['A,', 'A,', 'A,3', 'B,2'], '  3 2', ['usageDisagrees 2 Qty'], { part: 'A', found: 3, wanted: 3 }],
  ])('%j is filled to %s', (rows, usage, told, fact) => {
    const answer = read('Part,Qty', rows, ab, { side: 'both' });
    expect([answer.usage, answer.told, answer.facts[0]]).toEqual([usage, told, fact]);
  });

  it('of several boards is told where three parts or more have the same whole multiple', () => {
    const abc = file('R1 A t', 'C1 B t', 'L1 C t');
    const ratio = (...rows: readonly string[]) => {
      const { told, facts } = read('Part,Qty', rows, abc);
      const at = told.indexOf('usageRatio null Qty');
      return at < 0 ? null : facts[at]?.['ratio'];
    };
    expect(ratio('A,2', 'B,2', 'C,2')).toBe(2);
    expect(ratio('A,3', 'B,3', 'C,3')).toBe(3);
    expect(ratio('A,2', 'B,2', 'C,3')).toBeNull();
    expect(ratio('A,1', 'B,1', 'C,1')).toBeNull();
    expect(ratio('A,2', 'B,2', 'C,')).toBeNull();
    expect(ratio('A,2', 'B,2', 'C,2', 'D,2')).toBeNull();
    expect(ratio('A,2', 'B,2')).toBeNull();
  });
});

describe('usage by designator', () => {
  const places = file('R1 A t', 'R2 A t', 'R3 A b', 'C1 B t', 'L1 C t', 'L2 C b');
  const header = 'Part,Qty,RefDes,Alternates,Sharing';

  it('counts each row’s places on the side, tells what only one names, and leaves the rest to the parts', () => {
    const answer = read(header, ['A,,"R1,R2,R3",,', 'B,2,"C1,C9",,', 'C,,,,'], places);
    expect([answer.usage, answer.scope]).toEqual(['3 2 2', 'both']);
    expect(answer.told).toEqual(['sheetDesignatorNotPlaced 3 RefDes', 'usageDisagrees 3 Qty']);
    expect(answer.facts).toEqual([{ designator: 'C9' }, { part: 'B', found: 2, wanted: 1 }]);
  });

  it('takes the side on which all its places are, or the one asked for', () => {
    expect(read(header, ['A,3,"R1,R2,R3",,', 'B,1,C1,,', 'C,2,,,'], places).told).toEqual([]);
    const top = read(header, ['A,,"R1,R2",,', 'C,,,,'], places);
    expect([top.usage, top.scope, top.told]).toEqual(['2 1', 'top', ['designatorWithoutSlot null null']]);
    expect(top.facts).toEqual([{ designator: 'C1', first: 5, part: 'B' }]);
    const asked = read(header, ['A,,"R1,R2,R3",,', 'B,,C1,,', 'c,,,,'], places, {
      side: 'bottom',
      boardsPerPanel: 2,
    });
    expect([asked.usage, asked.told]).toEqual(['2 0 2', []]);
    expect(read(header, ['A,,R9,,', 'A,,,,', 'B,,,,', 'X,,,C,'], places).scope).toBe('both');
  });

  it('tells a part that both files name otherwise, unless it is an alternate or approved', () => {
    const told = (part: string, alternates: string, more = '') => {
      const { told: all, facts } = read(
        `${header}${more === '' ? '' : ',MPN'}`,
        [`${part},,C1,${alternates},${more}`, 'A,,"R1,R2,R3",,', 'C,,,,'],
        places,
      );
      return all.map((each, at) => `${each} ${facts[at]?.['found']} ${facts[at]?.['wanted']}`);
    };
    expect(told('b', '')).toEqual([]);
    expect(told('X', 'Y;b')).toEqual([]);
    expect(told('X', '')).toEqual(['sheetPartDiffers 2 RefDes X B']);
    expect(told('X', '', ',b')).toEqual([]);
    const values = readPlacements('Ref,Value,X,Y,Side\nC1,1u,1,1,t');
    expect(read('Part,RefDes', ['B,C1'], values).told).toEqual([]);
  });

  it('tells a designator in two rows, but not in rows that take turns', () => {
    const answer = read(header, ['A,,"R1,R1",,', 'A,,"r1,R2",,', 'A,,R3,,', 'B,,C1,,', 'C,,,,'], places);
    expect([answer.told, answer.facts]).toEqual([
      ['sheetDesignatorTwice 3 RefDes'],
      [{ designator: 'r1', first: 2 }],
    ]);
    const turns = read(
      header,
      ['A,,"R1,R2,R3",,in turn', 'A,,"R1,R2,R3",,in turn', 'B,,C1,,', 'C,,,,'],
      places,
    );
    expect(turns.told).toEqual([]);
  });
});

describe('slots of one part', () => {
  const slot = (perPanel: number | null, sharing: SheetSlot['sharing'] = null) =>
    ({ perPanel, sharing }) as SheetSlot; // what is asked of it
  it('in turn count once, by the highest figure; beside others they add up', () => {
    expect(statedUsage([slot(4, 'inTurn'), slot(9, 'inTurn'), slot(1)])).toBe(10);
    expect(statedUsage([slot(0, 'inTurn'), slot(null, 'inTurn')])).toBe(0);
    expect(statedUsage([slot(null, 'inTurn'), slot(2)])).toBeNull();
  });

  it('take turns in the order of the rows, one count for each part', () => {
    const rows = ['A,4,in turn', 'B,1,in turn', 'a,,in turn', 'A,4,', 'C,2,', 'C,3,split'];
    const { slots, problems } = readSheet(
      textToRows(['Slot,Part,Qty,Sharing', ...rows.map((row, at) => `F-${at + 1},${row}`)].join('\n')).rows,
    );
    expect(toSetupSlots(slots).map(({ part, perPanel, turn }) => `${part} ${perPanel} ${turn}`)).toEqual([
      'A 4 1',
      'B 1 1',
      'a 4 2',
      'A 4 3',
      'C 2 undefined',
      'C 3 undefined',
    ]);
    expect(problems.map(({ code }) => code).filter((code) => code.startsWith('turn'))).toEqual([]);
    const differs = readSheet(
      textToRows('Slot,Part,Qty,Sharing\nF-1,A,,in turn\nF-2,A,0,in turn\nF-3,A,5,in turn').rows,
    );
    expect(
      differs.problems
        .filter(({ code }) => code === 'turnUsageDiffers')
        .map(({ row, facts }) => [row, facts]),
    ).toEqual([[4, { part: 'A', wanted: 0, found: 5 }]]);
  });
});

describe('feeders', () => {
  it('are rows with an id, a width, pitches and positions; what is wrong is told with its row and text', () => {
    const rows = [
      'F-1,8,4,1',
      'F-2,12,,',
      `${'F'.repeat(65)},8,4,1`,
      ' ,8,4,1',
      'F-3,9,4,1',
      'F-4,8,0,1',
      'F-5,8,4,61',
      'F-6,8,4,0',
      'F-7,8,4,x',
      'F-1,8,4,1',
      ',,,',
      'F-8,8,4,60',
      `${'F'.repeat(64)},8,4,1`,
    ];
    const { feeders, problems } = readFeederRows(rows.join('\n'));
    expect(
      feeders.map(
        ({ feeder, tapeWidthMm, pitchesMm, positions }) =>
          `${feeder.slice(0, 4)} ${tapeWidthMm} ${pitchesMm} ${positions}`,
      ),
    ).toEqual(['F-1 8 4 1', 'F-2 12  2', 'F-8 8 4 60', 'FFFF 8 4 1']);
    expect(problems.map(({ row, code, found }) => `${row} ${code} ${found.slice(0, 3)}`)).toEqual([
      '3 id-long FFF',
      '4 id-missing ',
      '5 width-wrong 9',
      '6 pitch-wrong 0',
      '7 positions-wrong 61',
      '8 positions-wrong 0',
      '9 positions-wrong x',
      '10 id-twice F-1',
    ]);
  });

  it('under a header are read from the row below it, in any order; without a column of ids in the given order', () => {
    const named = readFeederRows('Our feeders\n\nPitch,Width,Feeder\n4/2,8,F-1');
    expect(named).toEqual({
      feeders: [{ feeder: 'F-1', tapeWidthMm: 8, pitchesMm: [2, 4], positions: 1 }],
      problems: [],
    });
    expect(readFeederRows('Width\n8').problems.map(({ row, code }) => [row, code])).toEqual([
      [1, 'width-wrong'],
      [2, 'width-wrong'],
    ]);
    expect(parseFeeder({ feeder: 'F', tapeWidth: 8, pitches: 4, positions: null })).toEqual({
      feeder: 'F',
      tapeWidthMm: 8,
      pitchesMm: [4],
      positions: 1,
    });
  });

  it.each<[text: string, pitches: readonly number[] | null]>([
    ['8+2|4', [2, 4, 8]],
    ['2,0; 4', [2, 4]],
    ['4 mm', [4]],
    ['4/-1', null],
    ['4/x', null],
    ['0.5', [0.5]],
  ])('step %s: %j', (text, pitches) => {
    expect(parsePitches(text)).toEqual(pitches);
  });

  it('take the positions of their tape, in whole steps of 8 mm where nothing else is known', () => {
    expect(tapeWidthsMm.map((width) => positionsForWidth(width))).toEqual([
      1, 1, 2, 2, 3, 4, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25,
    ]);
    expect([positionsForWidth(9), positionsForWidth(9, { 9: 1 }), isTapeWidth(9)]).toEqual([
      null,
      null,
      false,
    ]);
    expect(tapeWidthsMm.map((width) => listedPitchesMm(width).length)).toEqual([
      2, 2, 3, 3, 5, 8, 11, 14, 18, 18, 18, 18, 18, 18, 18, 18, 18,
    ]);
  });
});

describe('packages', () => {
  it.each<[text: string, family: string | null, pins: number | null]>([
    ['44 PLCC', 'plcc', 44],
    ['LGA-12', 'lga', 12],
    ['WLCSP-9', 'bga', 9],
    ['TQFP_100', 'tqfp', 100],
    ['QFP 64', 'qfp', 64],
    ['MLF-0', 'qfn', null],
    ['BGA 120x150', 'bga', null],
    ['SC-70', 'sot', null],
    ['XBGAX', null, null],
    ['2512', 'chip', null],
    ['25123', null, null],
  ])('%s', (text, family, pins) => {
    expect(parsePackageText(text)).toMatchObject({ family, pins });
  });

  it('are 0.2 to 100 mm long and wide', () => {
    expect(['0.2x100', '100x0.2', '0.19x1', '1x0.19', '100.1x1', '1x100.1'].map(parseBodySize)).toEqual([
      [0.2, 100],
      [100, 0.2],
      null,
      null,
      null,
      null,
    ]);
  });

  it('go to the parts list for moisture-sensitive parts that say more or something else', () => {
    const slot = (part: string, msl: string | null, rest: Partial<SheetSlot> = {}) =>
      ({ part, msl, package: null, pins: null, bodySizeMm: null, ...rest }) as SheetSlot; // what is asked of it
    const facts = (part: string, rest: Partial<PartFacts>): PartFacts => ({
      part,
      family: null,
      pins: null,
      bodyMm: null,
      bodyXMm: null,
      bodyYMm: null,
      isStacked: null,
      msl: null,
      source: 'x',
      ...rest,
    });
    const found = describedParts(
      [
        slot('A', '3', { package: 'QFN-48 7x6' }),
        slot('A', '3', { package: 'BGA-9' }),
        slot('B', '1', { package: 'QFN-48' }),
        slot('C', null, { package: 'QFN-48' }),
        slot('D', '3'),
        slot('E', '3', { pins: 20 }),
        slot('F', '3', { bodySizeMm: [3, 2], package: 'QFN-8 9x9' }),
        slot('G', '3', { bodySizeMm: [3, 2] }),
        slot('H', '3', { bodySizeMm: [3, 2] }),
      ],
      new Map([
        ['G', facts('G', { bodyXMm: 3, bodyYMm: 2 })],
        ['H', facts('H', { bodyXMm: 3, bodyYMm: 1, family: 'bga' })],
      ]),
      's'.repeat(201),
    );
    expect(found).toEqual([
      facts('A', { family: 'qfn', pins: 48, bodyXMm: 7, bodyYMm: 6, source: 's'.repeat(200) }),
      facts('E', { pins: 20, source: 's'.repeat(200) }),
      facts('F', { family: 'qfn', pins: 8, bodyXMm: 3, bodyYMm: 2, source: 's'.repeat(200) }),
      facts('H', { family: 'bga', bodyXMm: 3, bodyYMm: 2, source: 's'.repeat(200) }),
    ]);
  });
});

it('two revisions differ where a list has other entries, or more of them', () => {
  const of = (alternates: string) =>
    readSheet(textToRows(`Slot,Part,Qty,Alternates\nF-1,A,1,${alternates}`).rows).slots;
  const fields = (before: string, after: string) =>
    diffSheets(of(before), of(after)).changed.flatMap(({ fields: all }) => all.map(({ field }) => field));
  expect([fields('B;C', 'C;B'), fields('B;C', 'B'), fields('B', 'B;C'), fields('B;C', 'B;D')]).toEqual([
    [],
    ['alternates'],
    ['alternates'],
    ['alternates'],
  ]);
});
