// The workbook's own XML: every row and cell says where it stands, sheets end at their limit, moments come back as they were.
// The zip is opened by its library; cell addresses are checked against a second way of counting letters.

import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import {
  exportColumns,
  itemToWorkbookRow,
  workbookDays,
  workbookHeader,
  workbookText,
} from '../../../shared/log/export-rows.ts';
import { writeWorkbook } from '../../../shared/log/workbook.ts';
import { beginStory, tellPlant, verified } from '../floor/story.ts';

function told() {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'a\u0001b\u001fc\u007f <&">' }));
  return story.entries;
}

async function sheetsOf(entryCells: number, rows?: number) {
  const chunks: Uint8Array[] = [];
  const options = { entryCells, ...(rows === undefined ? {} : { rows }) };
  for await (const chunk of writeWorkbook([told()], options)) chunks.push(chunk);
  const files = unzipSync(new Uint8Array(await new Blob(chunks as BlobPart[]).arrayBuffer()));
  return Object.keys(files)
    .filter((name) => name.startsWith('xl/worksheets/'))
    .sort()
    .map((name) => strFromU8(files[name]!));
}

/** A to Z, AA to ZZ, by counting. */
const letters = Array.from({ length: 26 }, (_, at) => String.fromCharCode(65 + at));
const names = [...letters, ...letters.flatMap((one) => letters.map((two) => one + two))];
const rowsOf = (xml: string) => [...xml.matchAll(/<row r="(\d+)">(.*?)<\/row>/gs)];

describe('writeWorkbook()', () => {
  test('numbers rows from 1 and names each cell by its column and row', async () => {
    const entryCells = 40 - exportColumns.length + 1;
    const [xml = ''] = await sheetsOf(entryCells);
    const entries = told();
    const rows = rowsOf(xml);
    expect(rows.map(([, number]) => Number(number))).toEqual(
      Array.from({ length: entries.length + 1 }, (_, at) => at + 1),
    );
    const header = workbookHeader(entryCells);
    expect(header).toHaveLength(40); // past Z
    expect([...(rows[0]?.[2] ?? '').matchAll(/r="([A-Z]+)1"/g)].map(([, name]) => name)).toEqual(
      names.slice(0, 40),
    );
    for (const [at, [, number, cells = '']] of rows.slice(1).entries()) {
      const expected = itemToWorkbookRow(entries[at]!, entryCells).flatMap((cell, column) =>
        cell === '' ? [] : [`${names[column]}${number}`],
      );
      expect([...cells.matchAll(/<c r="([A-Z]+\d+)"/g)].map(([, name]) => name)).toEqual(expected);
    }
  });

  test('begins a new sheet with a header of its own at the limit, and loses no row', async () => {
    const sheets = await sheetsOf(1, 3);
    const entries = told();
    expect(sheets).toHaveLength(Math.ceil(entries.length / 2));
    const counts = sheets.map((xml) => rowsOf(xml).length);
    expect(counts.every((count) => count >= 2 && count <= 3)).toBe(true);
    expect(counts.reduce((sum, count) => sum + count - 1, 0)).toBe(entries.length);
    for (const xml of sheets) expect(rowsOf(xml)[0]?.[2]).toContain('<t xml:space="preserve">at</t>');
  });

  test('shows control characters as their pictures and escapes what XML would read', async () => {
    const [xml = ''] = await sheetsOf(1);
    expect(xml).toContain('a\u2401b\u241fc\u2421 &lt;&amp;');
    expect(/[\0-\x08\x0b\x0c\x0e-\x1f]/.test(xml)).toBe(false);
  });
});

describe('a moment in a cell', () => {
  test('reads as ISO 8601 without an offset', () => {
    expect(workbookText({ wallMs: Date.UTC(2026, 2, 2, 7, 30, 5, 250) })).toBe('2026-03-02T07:30:05.250');
    expect(workbookText(12)).toBe('12');
  });

  test('keeps its millisecond where a reader cuts the day’s fraction down', () => {
    for (let ms = 0; ms < 1000; ms += 1) {
      const wallMs = Date.UTC(2026, 2, 2, 7, 30) + ms;
      const days = workbookDays({ wallMs });
      const cut = Math.floor((days - 25_569) * 86_400_000);
      expect(cut).toBe(wallMs);
    }
  });
});
