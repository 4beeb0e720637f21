// Elements of an IPC-2581B file one by one (names of the published schema, https://webstds.ipc.org/2581), with what each says; all data is invented.

import { describe, expect, it } from 'vitest';
import { readExchange, xmlRoot } from '../../../shared/sheet/exchange.ts';

const wrap = (...parts: readonly string[]) =>
  [
    '<?xml version="1.0"?>',
    '<IPC-2581>',
    '<Layer name="L1" side="TOP"/><Layer name="L2" side="BOTTOM"/>',
    ...parts,
    '</IPC-2581>',
  ].join('\n');
const placed = (attributes: string, inside = '') =>
  `<Component layerRef="L1" mountType="SMT" ${attributes}>${inside}</Component>`;
const read = (parts: readonly string[], hasBill = false) => {
  const { placements, bill } = readExchange(wrap(...parts), hasBill);
  return {
    placements,
    bill,
    placed: placements.placements.map(
      ({ row, designator, part, isNamedByValue, value, package: name, side, x, y, rotation }) =>
        [row, designator, `${part}${isNamedByValue ? '*' : ''}`, value, name, side, x, y, rotation].join(
          ' | ',
        ),
    ),
    left: placements.leftOut.map(({ placement, reason }) => `${placement.designator} ${reason}`),
    told: placements.problems.map(({ code, row, column }) => `${code} ${row} ${column}`),
  };
};

describe('a component', () => {
  it('has the line of its element, part or value, package, side, place and angle', () => {
    const answer = read([
      '<CadHeader units="mil"/>',
      placed(
        'refDes="R1" part="A" packageRef="R0603"',
        '<Xform rotation="90"/><Location x="1000" y="-2000.5"/>',
      ),
      placed(
        'refDes="R2" layerRef="L2"',
        '<NonstandardAttribute name="VALUE" value=" 10k "/><NonstandardAttribute name="Color" value="red"/>',
      ).replace('layerRef="L1" ', ''),
      `${placed('refDes="R3" part="B"', '<Xform/>')}${placed('refDes="R4" part="B"', '<Location x="" y="z"/>')}`,
      placed('refDes="R5"'),
      placed('part="C"'),
    ]);
    expect(answer.placed).toEqual([
      '5 | R1 | A |  | R0603 | top | 25.4 | -50.8127 | 90',
      '6 | R2 | 10k* | 10k |  | bottom |  |  | ',
      '7 | R3 | B |  |  | top |  |  | 0',
      '7 | R4 | B |  |  | top |  |  | ',
      '9 |  | C |  |  | top |  |  | ',
    ]);
    expect([answer.left, answer.told]).toEqual([
      ['R5 noPart'],
      ['valueWithoutPackage 6 packageRef', 'placementPartMissing 8 part'],
    ]);
    expect(answer.placements).toMatchObject({
      headerRow: 0,
      columns: [],
      boards: 1,
      ignored: 1,
      designatorHeader: 'refDes',
    });
    expect(read([placed('refDes="R5"')], true)).toMatchObject({ left: [], told: [] });
  });

  it.each<[units: string, mm: number]>([
    ['MILLIMETER', 1],
    ['micron', 0.001],
    ['INCH', 25.4],
    ['Mil', 0.0254],
    ['', 1],
    ['FURLONG', 1],
  ])('in %s is %s mm along', (units, mm) => {
    const answer = read([
      `<CadHeader units="${units}"/>`,
      placed('refDes="R1" part="A"', '<Location x="1" y="2"/>'),
    ]);
    expect(answer.placements.placements[0]).toMatchObject({ x: mm, y: 2 * mm });
  });

  it('is on the side of its layer, else by the layer’s name, else as it is mirrored', () => {
    const on = (layer: string, mirror = '') => {
      const { placements } = read([
        placed('refDes="R1" part="A"', mirror).replace('layerRef="L1"', `layerRef="${layer}"`),
      ]);
      return `${placements.placements[0]?.side} ${placements.problems.map(({ code }) => code)}`;
    };
    expect(on('L2')).toBe('bottom ');
    expect(on('BOTTOM')).toBe('bottom ');
    expect(on('TOP', '<Xform mirror="true"/>')).toBe('top ');
    expect(on('L7', '<Xform mirror="true"/>')).toBe('bottom ');
    expect(on('L7', '<Xform mirror="1"/>')).toBe('bottom ');
    expect(on('L7', '<Xform mirror="false"/>')).toBe('top ');
    expect(on('L7')).toBe('top placementSideUnknown');
  });

  it('is not placed where it goes through holes, is a mark without a number, or is not fitted', () => {
    const answer = read([
      placed('refDes="J1" part="A"').replace('SMT', 'thmt'),
      placed('refDes="FID1" part="F"'),
      placed('refDes="TP1" part="P"'),
      placed('refDes="TP2" part="P"').replace('SMT', 'OTHER'),
      placed('refDes="TP3"'),
      placed('refDes="R1" part="DNP"'),
      placed('refDes="R2" part="A"').replace('SMT', 'OTHER'),
    ]);
    expect(answer.placed.map((each) => each.split(' | ')[1])).toEqual(['TP1', 'R2']);
    expect(answer.left).toEqual([
      'J1 throughHole',
      'FID1 fiducial',
      'TP2 testPoint',
      'TP3 testPoint',
      'R1 notFitted',
    ]);
    expect(answer.told).toEqual(['throughHole 4 mountType']);
  });

  it('twice at one place counts once', () => {
    const twice = placed('refDes="R1" part="A"', '<Location x="1" y="1"/>');
    const answer = read([twice, twice, placed('refDes="R2" part="A"')]);
    expect([answer.left, answer.told, answer.placements.ignored]).toEqual([
      ['R1 doubled'],
      ['placementTwice 5 refDes'],
      1,
    ]);
  });

  it('named by its value is told apart by its package, but not where a bill names it', () => {
    const value = '<NonstandardAttribute name="val" value="10k"/>';
    const parts = [placed('refDes="R1" packageRef="X"', value), placed('refDes="R2" packageRef="Y"', value)];
    expect(read(parts).told).toEqual(['valueInPackages 5 packageRef']);
    expect(read(parts).placements.parts.map(({ part }) => part)).toEqual(['10k X', '10k Y']);
    expect(read(parts, true).told).toEqual([]);
  });
});

it('the boards of a panel are counted over all repeats of the step that has the components', () => {
  const boards = (...repeats: readonly string[]) => {
    const { placements } = read([
      ...repeats.map((each) => `<StepRepeat ${each}/>`),
      '<Step name="board">',
      placed('refDes="R1" part="A"'),
      '</Step>',
    ]);
    return placements.problems.map(({ code, facts }) => `${code} ${facts['found']}`).join();
  };
  expect(boards()).toBe('');
  expect(boards('stepRef="board"')).toBe('');
  expect(boards('stepRef="board" nx="1" ny="1"')).toBe('');
  expect(boards('stepRef="board" nx="2" ny="0"')).toBe('panelOfFile 2');
  expect(boards('stepRef="board" nx="2" ny="3"', 'stepRef="board" ny="4"')).toBe('panelOfFile 10');
  expect(boards('stepRef="coupon" nx="5"')).toBe('');
});

describe('a bill in the file', () => {
  const item = (attributes: string, ...inside: readonly string[]) =>
    `<BomItem ${attributes}>${inside.join('')}</BomItem>`;
  const at = (name: string, rest = 'layerRef="L1"') => `<RefDes name="${name}" packageRef="R0603" ${rest}/>`;
  const value = (name: string, text: string) =>
    `<Textual textualCharacteristicName="${name}" textualCharacteristicValue="${text}"/>`;

  it('has a line for what is fitted of an item and one for what is not', () => {
    const { bill } = read([
      item(
        'OEMDesignNumberRef="A" quantity="3" description="Res"',
        at('R1'),
        at('R2'),
        at('R3', 'populate="false"'),
        value('comp_value', '10k'),
        value('Val', '4k7'),
      ),
      item('internalPartNumber="B" quantity="1"', at('C1', 'layerRef="L2"'), at('C2', 'populate="0"')),
      item('quantity="x"', at('C3', ''), at('C4'), value('VALUE', '1u'), value('evaluation', 'no')),
      item('OEMDesignNumberRef="DOC" category="DOCUMENT"'),
      item('OEMDesignNumberRef="E" quantity="5"', at('D1'), at('D2', 'populate="NO"')),
      '<AvlItem OEMDesignNumber="A"><AvlMpn name="K3"/><AvlMpn name="K2" rank="2"/><AvlMpn name="K1" rank="1"/><AvlMpn name="K2" rank="4"/><AvlMpn/><AvlMpn name="K9" rank="x"/></AvlItem>',
    ]);
    const line = (each: (typeof bill & object)['lines'][number]) =>
      [
        each.row,
        each.part,
        each.namedBy,
        each.designators.join('+'),
        each.isFitted ? 'in' : 'out',
        each.supplierParts.join(' '),
        each.value,
        each.package,
        each.description,
        each.side,
        each.quantity,
      ].join(' | ');
    expect(bill?.lines.map(line)).toEqual([
      '4 | A | part | R1+R2 | in | K1 K2 K3 K9 | 10k | R0603 | Res | top | 3',
      '4 | A | part | R3 | out | K1 K2 K3 K9 | 10k | R0603 | Res |  | 3',
      '5 | B | part | C1 | in |  |  | R0603 |  | bottom | 1',
      '5 | B | part | C2 | out |  |  | R0603 |  |  | 1',
      '6 | 1u | value | C3+C4 | in |  | 1u | R0603 |  |  | ',
      '8 | E | part | D1 | in |  |  | R0603 |  | top | 5',
      '8 | E | part | D2 | out |  |  | R0603 |  |  | 5',
    ]);
    expect(bill?.problems.map(({ code, row, facts }) => [code, row, facts])).toEqual([
      ['quantityDiffers', 8, { found: 2, wanted: 5 }],
    ]);
    expect(bill).toMatchObject({
      headerRow: 0,
      columns: [],
      variants: [],
      ignored: 0,
      packageHeader: 'packageRef',
      designatorHeader: 'RefDes',
    });
  });

  it('names the parts of components that name none, and says which are not fitted', () => {
    const answer = read([
      item(
        'OEMDesignNumberRef="A" quantity="1"',
        at('R1'),
        at('R9', 'populate="false"'),
        value('Value', '10k'),
      ),
      placed('refDes="R1"'),
      placed('refDes="R2"'),
      placed('refDes="R9" part="A"'),
    ]);
    expect(answer.placed).toEqual(['5 | R1 | A | 10k |  | top |  |  | ', '6 | R2 | * |  |  | top |  |  | ']);
    expect([answer.left, answer.told]).toEqual([['R9 notFitted'], []]);
  });

  it('is none where items are documents only', () => {
    expect(read([item('category="document"')]).bill).toBeNull();
    expect(read([item('category="ELECTRICAL"')]).bill?.lines).toEqual([]);
    expect(read([item('category="DOCUMENT" quantity="1"', at('R1'))]).bill?.lines).toHaveLength(1);
  });
});

it('elements with a name space are the same; what is not wanted is passed over', () => {
  const text =
    '<x:IPC-2581 xmlns:x="u"><x:Layer name="L1" side="BOTTOM"/><x:Net name="Location"/><x:Component refDes="R1" part="A" layerRef="L1"><x:Pin name="1"/></x:Component></x:IPC-2581>';
  const { placements } = readExchange(text);
  expect(placements.placements).toMatchObject([{ row: 1, designator: 'R1', part: 'A', side: 'bottom' }]);
});

it.each<[what: string, end: string, row: number]>([
  ['a wrong end', '\n</x>\n</IPC-2581>', 3],
  ['a tag without an end', '\n\n<A', 4],
  ['a file that breaks off', '\n<A>\n<B>\n\n', 4],
])('%s is told at its line, with what stands before it read', (_, end, row) => {
  const { placements } = readExchange(`<IPC-2581>\n<Component refDes="R1" part="A" layerRef="TOP"/>${end}`);
  expect(placements.placements.map(({ designator }) => designator)).toEqual(['R1']);
  expect(placements.problems.map(({ code, row: told }) => [code, told])).toEqual([['xmlBroken', row]]);
});

it('broken XML without components is told once', () => {
  expect(readExchange('<IPC-2581></x>').placements.problems.map(({ code }) => code)).toEqual(['xmlBroken']);
});

it('`xmlRoot()` looks at the first 4000 characters, past a mark, declarations and comments', () => {
  expect(xmlRoot('\uFEFF <!-- <no/> -->\n<a:b-c.1 x="1">')).toBe('a:b-c.1');
  expect(xmlRoot(`<!--${'x'.repeat(3988)}--><a/>`)).toBe('a');
  expect(xmlRoot(`${' '.repeat(4000)}<a/>`)).toBeNull();
  expect([xmlRoot(''), xmlRoot('<>'), xmlRoot('x<a>')]).toEqual([null, null, null]);
});
