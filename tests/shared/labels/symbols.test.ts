// From a printed symbol to what the label says: bwip-js prints, zxing-wasm reads, the parser gets what the reader sends.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import bwipjs from 'bwip-js/node';
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { formatEnvelope } from '../../../shared/labels/envelope.ts';
import { formatGs1 } from '../../../shared/labels/gs1.ts';
import { parseLabel } from '../../../shared/labels/label.ts';

const GS = '\x1d';

beforeAll(async () => {
  const file = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  const wasm = readFileSync(file);
  await prepareZXingModule({
    overrides: { wasmBinary: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) },
    fireImmediately: true,
  });
});

interface Seen {
  readonly text: string;
  readonly bytes: string;
  readonly symbology: string;
}

// Named, as a reader of any format takes six characters of Code 39 for the pharmacy code that is printed in Code 39 too.
const FORMATS = ['DataMatrix', 'QRCode', 'PDF417', 'Aztec', 'Code128', 'Code39Std'] as const;

async function printAndRead(
  bcid: string,
  text: string,
  options: Record<string, unknown> = {},
): Promise<Seen> {
  const png = await bwipjs.toBuffer({
    bcid,
    text,
    scale: 3,
    padding: 12,
    backgroundcolor: 'FFFFFF',
    ...options,
  });
  const found = await readBarcodes(new Uint8Array(png), {
    textMode: 'Plain',
    tryHarder: true,
    formats: [...FORMATS],
  });
  expect(found).toHaveLength(1);
  const [code] = found;
  if (code === undefined) throw new Error('Cannot go on as no symbol was read');
  return {
    text: code.text,
    bytes: String.fromCharCode(...code.bytes),
    symbology: code.symbologyIdentifier,
  };
}

const fields = [
  { id: 'P', value: 'CU-77' },
  { id: '1P', value: 'MK-0402-104/A' },
  { id: 'Q', value: '10000' },
  { id: '1T', value: 'L2611' },
  { id: '10D', value: '2644' },
  { id: '3S', value: 'REEL-0001' },
];
const stated = {
  part: 'CU-77',
  supplierPart: 'MK-0402-104/A',
  quantity: 10000,
  lot: 'L2611',
  made: { year: 2026, week: 44 },
  reel: 'REEL-0001',
};

describe('printed envelopes', () => {
  const text = formatEnvelope({ format: '06', fields });

  it.each(['datamatrix', 'qrcode', 'pdf417', 'azteccode'])(
    'come back byte for byte from a %s',
    async (bcid) => {
      const seen = await printAndRead(bcid, text);
      expect(seen.bytes).toBe(text);
      expect(parseLabel([seen.text])).toMatchObject(stated);
      expect(parseLabel([seen.symbology + seen.text])).toMatchObject(stated);
    },
  );

  it('come back whole from Data Matrix macro 06, which prints header and trailer as one codeword', async () => {
    const body = fields.map(({ id, value }) => id + value).join(GS);
    const macro = await printAndRead('datamatrix', `[)>\x1e06${GS}${body}\x1e\x04`);
    expect(parseLabel([macro.text])).toMatchObject(stated);
    expect(parseLabel([macro.text]).warnings).toEqual([]);
  });
});

describe('printed separate codes', () => {
  it.each(['code128', 'code39'])('come back from %s and are gathered', async (bcid) => {
    const texts = ['PCU-77', 'Q10000', '1TL2611', '10D2644'];
    const seen: string[] = [];
    for (const text of texts) {
      const one = await printAndRead(bcid, text, { height: 10 });
      expect(one.text).toBe(text);
      seen.push(one.symbology + one.text);
    }
    expect(parseLabel(seen)).toMatchObject({
      part: 'CU-77',
      quantity: 10000,
      lot: 'L2611',
      made: stated.made,
    });
  });
});

describe('printed GS1 codes', () => {
  it.each(['gs1-128', 'gs1datamatrix', 'gs1qrcode'])('come back from %s with FNC1 as GS', async (bcid) => {
    const elements = [
      { id: '01', value: '09501101530003' },
      { id: '17', value: '280531' },
      { id: '10', value: 'LOT7' },
      { id: '30', value: '4000' },
      { id: '21', value: 'S-9' },
    ];
    const brackets = elements.map(({ id, value }) => `(${id})${value}`).join('');
    const seen = await printAndRead(bcid, brackets, bcid === 'gs1-128' ? { height: 12 } : {});
    expect(seen.text).toBe(formatGs1(elements));
    const reading = parseLabel([seen.symbology + seen.text]);
    expect(reading).toMatchObject({ lot: 'LOT7', quantity: 4000, expires: '2028-05-31', reel: 'S-9' });
    expect(reading.fields.map(({ id, value }) => ({ id, value }))).toEqual(elements);
  });
});
