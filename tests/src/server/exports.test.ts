// An export from the server: whole, in folding order, read back and verified, in every form, and for those who may.

import readWorkbook from 'read-excel-file/node';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { exportLog } from '../../../shared/log/export.ts';
import { parseExport } from '../../../shared/log/export-read.ts';
import { exportColumns } from '../../../shared/log/export-rows.ts';
import { verifyExport } from '../../../shared/log/export-verify.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { writeWorkbook } from '../../../shared/log/workbook.ts';
import type { ExportRequest } from '../../../shared/wire/messages.ts';
import { makeTicket } from '../../../src/server/codes.ts';
import { entryCellsOfLog } from '../../../src/server/exports/entry-cells.ts';
import { makeChain, startMs, toChecked } from '../../contract/entries.ts';
import { startTestServer, type TestServer } from './tablets.ts';

let server: TestServer;
const nasty = [
  '=1+1',
  '00123',
  '1E5',
  '<b>&"\'',
  'a\u0001b',
  '料;x',
  '_x0041_',
  ' lead and trail ',
  '123456789012345678',
];
const payload = (seq: number) => ({ line: seq % 2 ? 'L1' : 'L2', lot: nasty[seq % nasty.length] ?? '' });
const chains = [
  makeChain({ tablet: 'b', count: 300, payload, kind: 'reel.verified' }),
  makeChain({ tablet: 'a', count: 300, payload, kind: 'reel.verified', atMs: startMs + 250 }),
  makeChain({ tablet: 'c', count: 20, payload: () => ({ note: 'long '.repeat(2_500) }) }),
];
const all = [...chains.flat()].sort(compareEntries);

beforeAll(async () => {
  server = await startTestServer();
  for (const chain of chains) {
    await server.running.store.append(
      [{ sender: 'x', entries: chain.map((entry) => toChecked(entry)) }],
      startMs,
    );
  }
});
afterAll(() => server.stop());

const request = (change: Partial<ExportRequest>): ExportRequest => ({
  format: 'json',
  from: null,
  to: null,
  line: null,
  ...change,
});

async function fetchExport(change: Partial<ExportRequest>): Promise<Response> {
  const { path } = await makeTicket(server.running.store, request(change), server.running.context.nowMs());
  return fetch(server.running.url + path);
}

const ids = (entries: readonly Entry[]) => entries.map(entryId);

describe('an export', () => {
  it('as JSON lines holds every entry in folding order and verifies', async () => {
    const response = await fetchExport({});
    expect(response.headers.get('content-disposition')).toMatch(
      /^attachment; filename="reelward-log-\d{4}-\d\d-\d\d\.ndjson"$/,
    );
    const reading = parseExport(await response.text());
    expect(ids(reading.entries)).toEqual(ids(all));
    expect(verifyExport(reading)).toMatchObject({ ok: true, entries: all.length });
  });

  it('as CSV reads back the same', async () => {
    const response = await fetchExport({ format: 'csv' });
    expect(response.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    const reading = parseExport(await response.text());
    expect(reading.faults).toEqual([]);
    expect(reading.entries).toEqual(all);
    expect(verifyExport(reading).ok).toBe(true);
  });

  it('as a workbook holds moments and numbers as such, and lots as texts, read by a library', async () => {
    const bytes = Buffer.from(await (await fetchExport({ format: 'xlsx' })).arrayBuffer());
    const sheets = await readWorkbook(bytes);
    const rows = sheets[0]?.data ?? [];
    expect(rows[0]?.slice(0, exportColumns.length)).toEqual([...exportColumns]);
    expect(rows).toHaveLength(all.length + 1);
    const column = (name: (typeof exportColumns)[number]) =>
      rows.slice(1).map((row) => row[exportColumns.indexOf(name)] ?? null);
    expect(column('at')).toEqual(all.map(({ at }) => new Date(at)));
    expect(column('seq')).toEqual(all.map(({ seq }) => seq));
    expect(column('quantity')).toEqual(all.map(({ payload }) => payload['quantity'] ?? null));
    const lot = exportColumns.indexOf('lot');
    const wanted = all.map((entry) => entry.payload['lot'] ?? null);
    const shown = (text: unknown) =>
      typeof text === 'string' ? text.replace('\u0001', '\u2401').trim() : text;
    expect(rows.slice(1).map((row) => shown(row[lot]))).toEqual(wanted.map(shown));
  });

  it('splits a workbook at the row limit, header on each sheet', async () => {
    async function* lots() {
      yield exportLog(all.slice(0, 10));
      yield exportLog(all.slice(10, 25));
    }
    const chunks: Uint8Array[] = [];
    for await (const chunk of writeWorkbook(lots(), { entryCells: 1, rows: 11 })) chunks.push(chunk);
    const sheets = await readWorkbook(Buffer.concat(chunks));
    expect(sheets.map((sheet) => [sheet.sheet, sheet.data.length])).toEqual([
      ['log', 11],
      ['log 2', 11],
      ['log 3', expect.any(Number)],
    ]);
    for (const sheet of sheets) expect(sheet.data[0]?.[0]).toBe('at');
  });

  it('of one line or a stretch of time leaves the rest out so that it still verifies', async () => {
    const from = '2026-03-02T07:01:00+01:00';
    const to = '2026-03-02T06:02:00Z';
    const reading = parseExport(await (await fetchExport({ line: 'L1', from, to })).text());
    const wanted = all.filter(
      (entry) =>
        entry.payload['line'] === 'L1' &&
        entry.at >= '2026-03-02T06:01:00.000Z' &&
        entry.at <= '2026-03-02T06:02:00.000Z',
    );
    expect(wanted.length).toBeGreaterThan(20);
    expect(ids(reading.entries)).toEqual(ids(wanted));
    expect(verifyExport(reading)).toMatchObject({ ok: true, entries: wanted.length });
  });

  it('is fetched once, within a minute, and not by guessing', async () => {
    const { path } = await makeTicket(server.running.store, request({}), server.running.context.nowMs());
    expect((await fetch(server.running.url + path)).status).toBe(200);
    expect((await fetch(server.running.url + path)).status).toBe(404);
    const late = await makeTicket(server.running.store, request({}), server.running.context.nowMs() - 60_001);
    expect((await fetch(server.running.url + late.path)).status).toBe(404);
    expect((await fetch(`${server.running.url}/export/guess/log.csv`)).status).toBe(404);
  });

  it('`entryCellsOfLog()` counts the cells of the longest record, up to a position', async () => {
    expect(await entryCellsOfLog(server.running.store, 600)).toBe(1);
    const long = makeChain({ tablet: 'long', count: 1, payload: () => ({ note: 'word '.repeat(14_000) }) });
    await server.running.store.append(
      [{ sender: 'x', entries: long.map((entry) => toChecked(entry)) }],
      startMs,
    );
    expect(await entryCellsOfLog(server.running.store, 620)).toBe(1);
    expect(await entryCellsOfLog(server.running.store, 621)).toBe(3);
    const bytes = Buffer.from(await (await fetchExport({ format: 'xlsx' })).arrayBuffer());
    const [header] = (await readWorkbook(bytes))[0]?.data ?? [];
    expect(header?.slice(exportColumns.length)).toEqual(['entry 2', 'entry 3']);
  });
});
