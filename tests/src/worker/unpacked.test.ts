// A workbook of a few bytes that says it unpacks to gigabytes is refused before any of it is unpacked.

import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { isOverstated, workbookBytes } from '../../../shared/sheet/source.ts';
import { createSheetDesk } from '../../../src/worker/sheet-desk.ts';
import { mostUnpackedBytes } from '../../../src/worker/sheet-protocol.ts';
import { call } from '../../cli/call.ts';
import { plainSettings as settings } from './sheet-settings.ts';

/** The size of each part is told in the list at the end (PKWARE APPNOTE 4.3.12, 24 bytes behind the mark). */
function bomb(size: number): Uint8Array<ArrayBuffer> {
  const zip = Uint8Array.from(
    zipSync({ 'xl/workbook.xml': new Uint8Array(64), 'xl/worksheets/sheet1.xml': new Uint8Array(64) }),
  );
  const view = new DataView(zip.buffer);
  for (let at = 0; at + 4 <= zip.length; at += 1)
    if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, size, true);
  return zip;
}

test('a workbook tells what it unpacks to, all parts together', () => {
  expect(workbookBytes(bomb(1_000))).toBe(2_000);
  expect(workbookBytes(new Uint8Array([0x50, 0x4b, 3, 4, 9]))).toBe(0);
});

test('one beyond the bound is read by neither the page nor the command', async () => {
  const bytes = bomb(mostUnpackedBytes / 2 + 1);
  const desk = createSheetDesk({
    decode: () => null,
    readWorkbook: () => {
      throw new Error('was unpacked');
    },
  });
  const content = new Blob([bytes]);
  const sheet = { number: 1, name: 'a.xlsx', content };
  const reply = await desk.read({ id: 1, sheet, placements: null, settings }, () => undefined);
  expect(reply).toMatchObject({ kind: 'refused', fault: 'too-large', detail: String(mostUnpackedBytes + 2) });
  const { code, err } = await call(['sheet', '-'], bytes);
  expect(code).toBe(2);
  expect(err).toMatch(/unpacks to over 512 MiB/);
});

test('one whose part says more than its bytes can hold is told to be broken, and no room is made for it', async () => {
  const bytes = bomb(200 * 1024 * 1024);
  expect([isOverstated(bytes), isOverstated(bomb(1_000))]).toEqual([true, false]);
  const desk = createSheetDesk({
    decode: () => null,
    readWorkbook: () => {
      throw new Error('was unpacked');
    },
  });
  const sheet = { number: 1, name: 'a.xlsx', content: new Blob([bytes]) };
  const reply = await desk.read({ id: 1, sheet, placements: null, settings }, () => undefined);
  expect(reply).toMatchObject({ kind: 'refused', fault: 'broken-workbook' });
  const { code, err } = await call(['sheet', '-'], bytes);
  expect([code, err]).toEqual([2, expect.stringMatching(/broken workbook/)]);
});

test('one that says it has more parts than its bytes can list is broken too', () => {
  const zip = bomb(64);
  const view = new DataView(zip.buffer);
  // The count of parts stands twice in the record at the end (PKWARE APPNOTE 4.3.16), 22 bytes long.
  for (const at of [8, 10]) view.setUint16(zip.length - 22 + at, 0xffff, true);
  expect(isOverstated(zip)).toBe(true);
});
