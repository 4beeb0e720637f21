// Setup sheets, placement files, bills of materials and feeder lists: as text, as workbooks and as IPC-2581, through the worker's desk.

import { readFileSync } from 'node:fs';
import readXlsxFile from 'read-excel-file/universal';
import writeXlsxFile from 'write-excel-file/node';
import { readFeederRows } from '../../shared/sheet/feeder-sheet.ts';
import { createSheetDesk } from '../../src/worker/sheet-desk.ts';
import type { SheetFault, SheetRequest, SheetSettings } from '../../src/worker/sheet-protocol.ts';
import { plainSettings } from '../src/worker/sheet-settings.ts';
import { mutateBytes, mutateZip } from './bytes.ts';
import type { Plan } from './plan.ts';
import { bytesTarget, type FuzzTarget, textTarget } from './target.ts';
import { mutateText } from './texts.ts';

/** Benches and tests run in the project's folder. */
const file = (name: string) => readFileSync(`tests/fixtures/sheets/${name}`);
const setupFiles = [
  'en-comma-utf8-bom.csv',
  'de-semicolon-windows1252.csv',
  'fr-tab-utf16le.txt',
  'es-pipe-utf8.csv',
  'en-caret-columns.txt',
].map(file);
const placementFiles = ['placements-aligned.txt', 'placements-comma.csv'].map(file);
const bills = [
  'Item,Reference,Qty,Value,Part number,Manufacturer part,DNP\n1,"R1, R2-R4",4,10k,BW-1,KP-0603,\n2,C1,1,100n,BW-2,KP-0402,DNP\n',
  'Designator;Menge;Wert;Artikelnummer;Bauform\nR1 R2;2;4,7k;BW-9;0603\nU1;1;;BW-3;QFP\n',
];
const feeders = [
  'Feeder,Tape width,Pitch,Positions\nF-1,8,2/4,1\nF-2,16 mm,"4; 8",2\n',
  'F-3\t12\t4\t\nF-4\t8\t\t1\n',
];
const exchange = `<?xml version="1.0" encoding="UTF-8"?>
<IPC-2581 revision="B" xmlns="http://webstds.ipc.org/2581">
  <Content roleRef="Owner"><StepRef name="board"/></Content>
  <Bom name="bom"><BomHeader assembly="heather" revision="1"/>
    <BomItem OEMDesignNumberRef="BW-1" quantity="2" category="ELECTRICAL">
      <RefDes name="R1" packageRef="R0603" populate="true" layerRef="L1"/><RefDes name="R2" packageRef="R0603" populate="false" layerRef="BOT"/>
      <Characteristics><Textual textualCharacteristicName="VALUE" textualCharacteristicValue="10k"/></Characteristics>
    </BomItem></Bom>
  <Ecad name="heather"><CadHeader units="INCH"/><CadData>
    <Layer name="L1" side="TOP"/><Layer name="BOT" side="BOTTOM"/>
    <Step name="panel"><StepRepeat stepRef="board" nx="2" ny="3"/></Step>
    <Step name="board">
      <Component refDes="R1" packageRef="R0603" layerRef="L1" part="BW-1" mountType="SMT"><Xform rotation="90.0" mirror="false"/><Location x="1.0" y="2.0"/></Component>
      <Component refDes="R2" packageRef="R0603" layerRef="BOT" part="BW-1" mountType="SMT"><Xform rotation="0"/><Location x="1" y="-2"/></Component>
      <Component refDes="FID1" layerRef="L1" part="" mountType="OTHER"><Location x="0" y="0"/></Component>
    </Step></CadData></Ecad>
  <Avl name="avl"><AvlItem OEMDesignNumber="BW-1"><AvlVmpn><AvlMpn name="KP-0603" rank="1"/></AvlVmpn></AvlItem></Avl>
</IPC-2581>`;

const rowsOf = (rows: readonly (readonly (string | number | Date | null)[])[]) =>
  rows.map((row) =>
    row.map((value) => {
      if (value === null) return null;
      if (value instanceof Date) return { value, type: Date, format: 'yyyy-mm-dd' };
      return typeof value === 'number' ? { value, type: Number } : { value, type: String };
    }),
  );
async function workbook(rows: readonly (readonly (string | number | Date | null)[])[]): Promise<Uint8Array> {
  // The writer's types want its own cells; these are such.
  return Uint8Array.from(await writeXlsxFile(rowsOf(rows) as never).toBuffer());
}
const workbooks = [
  await workbook([
    ['Product', 'Heather board', null, null],
    ['Slot', 'Part number', 'Qty per panel', 'Tape width (mm)'],
    ['M1-F-001', 'BW-1', 4, 8],
    ['M1-F-002', 'BW-2', 2.5, '8 mm'],
  ]),
  await workbook([
    ['Designator', 'Part', 'X', 'Y', 'Rotation', 'Side'],
    ['R1', 'BW-1', 1.5, -2, 90, 'top'],
    ['R2', 'BW-1', 3, new Date(Date.UTC(2026, 2, 2)), 0, 'bottom'],
  ]),
];

const settings: SheetSettings = {
  ...plainSettings,
  machine: 'M1',
  bank: 'F',
  approved: [['BW-1', ['KP-0603']]],
};

/** Reads through the desk as the page asks it; a failure that nobody foresaw is a fault here. */
async function read(given: Partial<SheetRequest>): Promise<SheetFault | null> {
  const desk = createSheetDesk({
    decode: (bytes, encoding) => {
      try {
        return new TextDecoder(encoding, { fatal: true }).decode(bytes);
      } catch {
        return null; // not of this encoding: the next one is tried
      }
    },
    readWorkbook: (bytes) => readXlsxFile(bytes),
  });
  const reply = await desk.read(
    { id: 1, sheet: null, placements: null, bill: null, settings, ...given },
    () => undefined,
  );
  if (reply.kind !== 'refused') return null;
  if (reply.fault === 'failed') throw new Error(`failed: ${reply.detail}`);
  return reply.fault;
}

const source = (number: number, content: Blob | string) => ({ number, name: 'list.csv', content });
const parts = /([\n\r,;\t|^"])/;
const odd = [
  'Slot',
  'Part number',
  'Qty',
  'Designator',
  'X',
  'sep=;',
  '"',
  '""',
  'R1-R99999',
  'R1..R5',
  '1e9',
  '12 mm',
  '-',
  ', ',
];
const texts = [
  ...setupFiles.map((bytes) => bytes.toString('latin1')),
  ...bills,
  ...placementFiles.map((bytes) => bytes.toString('latin1')),
];

const onSheets: FuzzTarget = textTarget({
  name: 'setup sheets, text',
  share: 8_000,
  input: (plan) => mutateText({ samples: texts, parts, odd }, plan),
  read: async (text) => {
    await read({ sheet: source(1, text), mayBeOther: true });
  },
});

const onSheetBytes: FuzzTarget = bytesTarget({
  name: 'setup sheets, bytes',
  share: 8_000,
  input: (plan) => mutateBytes([...setupFiles, ...placementFiles], plan),
  read: async (bytes) => {
    await read({ sheet: source(1, new Blob([bytes])) });
  },
});

const placed = placementFiles.map((bytes) => bytes.toString('utf8'));
const onPlacements: FuzzTarget = textTarget({
  name: 'placements and bills',
  share: 8_000,
  input: (plan) => mutateText({ samples: plan.sample % 2 === 0 ? placed : bills, parts, odd }, plan),
  read: async (text, { sample }) => {
    const isPlaced = sample % 2 === 0;
    await read({
      placements: source(1, isPlaced ? text : (placed[1] ?? '')),
      bill: source(2, isPlaced ? (bills[0] ?? '') : text),
    });
  },
});

const onFeeders: FuzzTarget = textTarget({
  name: 'feeder lists',
  share: 12_000,
  input: (plan) => mutateText({ samples: feeders, parts, odd: [...odd, '2/4', '0', '61', '8 mm'] }, plan),
  read: (text) => {
    for (const feeder of readFeederRows(text).feeders)
      if (feeder.pitchesMm.some((pitch) => !(pitch > 0))) throw new Error('a feeder that steps nowhere');
  },
});

const xml = {
  parts: /(<[^>]*>|[\s="&;])/,
  odd: [
    '<Component',
    '</Component>',
    '<BomItem>',
    '<![CDATA[',
    '<!DOCTYPE x [',
    '&lt;',
    '&x;',
    'refDes="',
    'nx="1e9"',
    '<a:',
  ],
};
const onExchange: FuzzTarget = textTarget({
  name: 'IPC-2581',
  share: 20_000,
  input: (plan) => mutateText({ samples: [exchange], ...xml }, plan),
  read: async (text) => {
    await read({ placements: source(1, text), bill: source(2, text) });
  },
});

const onWorkbooks: FuzzTarget = bytesTarget({
  name: 'workbooks',
  share: 4_000,
  input: (plan: Plan) =>
    mutateZip(
      workbooks,
      {
        parts: xml.parts,
        odd: [
          'r="A1048577"',
          'r="ZZZZ9"',
          't="s"',
          '<v>',
          '<v>1e400</v>',
          '<mergeCell ref="A1:A1048576"/>',
          's="99"',
          '<row r="9999999">',
        ],
      },
      plan,
    ),
  read: async (bytes, { sample }) => {
    await read(
      sample % 2 === 0
        ? { sheet: source(1, new Blob([bytes])) }
        : { placements: source(1, new Blob([bytes])) },
    );
  },
});

/** All of it. */
export const sheetTargets: readonly FuzzTarget[] = [
  onSheets,
  onSheetBytes,
  onPlacements,
  onFeeders,
  onExchange,
  onWorkbooks,
];
