// Element and attribute names are those of the published schema IPC-2581B (https://webstds.ipc.org/2581); all data is invented.

import { describe, expect, it } from 'vitest';
import { isExchangeFile, readExchange, xmlRoot } from '../../../shared/sheet/exchange.ts';
import { joinBill } from '../../../shared/sheet/join.ts';

interface Given {
  readonly components?: string;
  readonly bom?: string;
  readonly avl?: string;
  readonly units?: string;
  readonly repeat?: string;
}

const component = (refDes: string, layer: string, part: string, rest = 'mountType="SMT"') =>
  `<Component refDes="${refDes}" packageRef="R0603" layerRef="${layer}" part="${part}" ${rest}>
     <Xform rotation="90.000" mirror="${layer === 'BOT'}"/><Location x="1.0" y="2.0"/></Component>`;

function file({ components = '', bom = '', avl = '', units = 'MILLIMETER', repeat = '' }: Given): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<!-- board data -->
<IPC-2581 revision="B" xmlns="http://webstds.ipc.org/2581">
  <Content roleRef="Owner"><FunctionMode mode="ASSEMBLY"/><StepRef name="board"/></Content>
  ${bom}
  <Ecad name="heather">
    <CadHeader units="${units}"/>
    <CadData>
      <Layer name="L1" layerFunction="CONDUCTOR" side="TOP" polarity="POSITIVE"/>
      <Layer name="BOT" layerFunction="CONDUCTOR" side="BOTTOM" polarity="POSITIVE"/>
      ${repeat}
      <Step name="board" type="BOARD">
        ${components}
      </Step>
    </CadData>
  </Ecad>
  ${avl}
</IPC-2581>`;
}

const components = [
  component('R1', 'L1', 'BW-1'),
  component('R2', 'BOT', 'BW-1'),
  component('C1', 'L1', 'BW-2 &amp; co'),
  component('R9', 'L1', 'BW-1'),
  component('FID1', 'L1', '', 'mountType="OTHER"'),
  component('J1', 'L1', 'BW-7', 'mountType="THMT"'),
].join('\n');
const bom = `<Bom name="bom"><BomHeader assembly="heather" revision="1"/>
  <BomItem OEMDesignNumberRef="BW-1" quantity="3" category="ELECTRICAL">
    <RefDes name="R1" packageRef="R0603" populate="true" layerRef="L1"/>
    <RefDes name="R2" packageRef="R0603" populate="true" layerRef="BOT"/>
    <RefDes name="R9" packageRef="R0603" populate="false" layerRef="L1"/>
  </BomItem>
  <BomItem OEMDesignNumberRef="BW-2 &amp; co" quantity="1" category="ELECTRICAL"><RefDes name="C1" packageRef="C0402" populate="true" layerRef="L1"/></BomItem>
  <BomItem OEMDesignNumberRef="DOC-1" quantity="1" category="DOCUMENT"/>
</Bom>`;
const avl = `<Avl name="avl"><AvlItem OEMDesignNumber="BW-1">
    <AvlVmpn><AvlMpn name="SR-0603" rank="2"/><AvlVendor enterpriseRef="E2"/></AvlVmpn>
    <AvlVmpn><AvlMpn name="KP-0603" rank="1"/><AvlVendor enterpriseRef="E1"/></AvlVmpn>
  </AvlItem></Avl>`;

describe('readExchange()', () => {
  it('reads components with part, side by layer, place and angle, and lists what is not placed', () => {
    const { placements, bill } = readExchange(file({ components, units: 'INCH' }));
    expect(bill).toBeNull();
    expect(placements.parts).toMatchObject([
      { part: 'BW-1', top: 2, bottom: 1 },
      { part: 'BW-2 & co', top: 1, bottom: 0 },
    ]);
    expect(placements.leftOut.map(({ placement, reason }) => `${placement.designator} ${reason}`)).toEqual([
      'FID1 fiducial',
      'J1 throughHole',
    ]);
    expect(placements.problems.map(({ code }) => code)).toEqual(['throughHole']);
    expect(placements.placements[0]).toMatchObject({
      designator: 'R1',
      x: 25.4,
      y: 50.8,
      rotation: 90,
      side: 'top',
    });
    expect(placements.placements[0]?.row).toBe(13);
  });

  it('joins its own bill: approved makers by rank, what is not populated', () => {
    const { placements, bill } = readExchange(file({ components, bom, avl }));
    if (bill === null) throw new Error('no bill');
    expect(bill.problems).toEqual([]);
    const joined = joinBill(placements, bill);
    expect(joined.parts).toEqual([
      { part: 'BW-1', supplierParts: ['KP-0603', 'SR-0603'], top: 1, bottom: 1, designators: ['R1', 'R2'] },
      { part: 'BW-2 & co', supplierParts: [], top: 1, bottom: 0, designators: ['C1'] },
    ]);
    expect(joined.notPlaced).toEqual(['R9', 'FID1', 'J1']);
    expect(joined.problems).toEqual([]);
  });

  it('tells the boards of a panel, and a layer that says no side', () => {
    const repeat =
      '<Step name="panel" type="PANEL"><StepRepeat stepRef="board" x="0" y="0" nx="2" ny="3" dx="1" dy="1" angle="180" mirror="false"/></Step>';
    const { placements } = readExchange(file({ components: component('R1', 'L1', 'A'), repeat }));
    expect(placements.problems).toMatchObject([{ code: 'panelOfFile', facts: { found: 6 } }]);
    const bare =
      '<Component refDes="R1" layerRef="INNER" part="A" mountType="SMT"><Location x="1" y="1"/></Component>';
    expect(readExchange(file({ components: bare })).placements.problems).toMatchObject([
      { code: 'placementSideUnknown' },
    ]);
  });

  it('says where XML is broken and where a file has no components', () => {
    const broken = readExchange(file({ components }).replace('</Step>', ''));
    expect(broken.placements.problems.map(({ code }) => code)).toContain('xmlBroken');
    expect(readExchange(file({})).placements.problems).toMatchObject([
      { code: 'noComponents', severity: 'error' },
    ]);
  });

  it.each([
    ['<?xml version="1.0"?>\n<!-- x --><!DOCTYPE a [<!ENTITY b "c">]>\n<board version="1">', 'board', false],
    ['<ns:IPC-2581 xmlns:ns="x">', 'ns:IPC-2581', true],
    ['Ref,Part\n<R1>,A', null, false],
  ])('names the root of %j', (text, root, isExchange) => {
    expect(xmlRoot(text)).toBe(root);
    expect(isExchangeFile(text)).toBe(isExchange);
  });
});
