// A workbook of any length, written while it is read: worksheets of inline texts inside a zip, a new sheet at the row limit.
// Moments and counts are moments and numbers; all else is a text, so that no program turns a lot number into a date.
// Own writer for the sheet's XML, since the workbook libraries at hand hold all rows in memory; the zip is a library's.
// Source: ECMA-376 part 1 (SpreadsheetML, packaging), the least that a workbook needs.

import { strToU8, Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import type { ExportItem } from './export.ts';
import {
  itemToWorkbookRow,
  momentFormat,
  type PeopleNames,
  type RightOf,
  type WorkbookCell,
  workbookDays,
  workbookHeader,
} from './export-rows.ts';

/** Rows of a worksheet, header included (ECMA-376 applications' limit, 2^20). */
export const sheetRows = 1_048_576;

/** What a workbook is written with. */
export interface WorkbookOptions {
  /** Cells that the longest record takes, see `entryCellsOf`. */
  readonly entryCells: number;
  /** Rows of a sheet, header included; a test makes it small. */
  readonly rows?: number;
  /** Names of people that were known when a record was written. */
  readonly namesOf?: (item: ExportItem) => PeopleNames;
  /** What is known of the right that an entry took. */
  readonly rightOf?: RightOf;
}

/** Yields the bytes of a workbook. */
export async function* writeWorkbook(
  lots: AsyncIterable<readonly ExportItem[]> | Iterable<readonly ExportItem[]>,
  options: WorkbookOptions,
): AsyncGenerator<Uint8Array> {
  const { entryCells, namesOf, rightOf, rows: most = sheetRows } = options;
  let chunks: Uint8Array[] = [];
  let fault: Error | null = null;
  const zip = new Zip((error, chunk) => {
    if (error) fault = error;
    else chunks.push(chunk);
  });
  const taken = function* () {
    if (fault) throw fault;
    const some = chunks;
    chunks = [];
    yield* some;
  };

  let sheets = 0;
  let rows = most;
  let sheet: ZipDeflate | null = null;
  const nextSheet = () => {
    endSheet(sheet);
    sheets += 1;
    sheet = new ZipDeflate(`xl/worksheets/sheet${sheets}.xml`, { level: 3 });
    zip.add(sheet);
    sheet.push(
      strToU8(
        `${HEAD}<worksheet xmlns="${MAIN}">${FROZEN_HEADER}<sheetData>${rowXml(workbookHeader(entryCells), 1)}`,
      ),
    );
    rows = 1;
  };
  nextSheet();
  for await (const items of lots) {
    let xml = '';
    for (const item of items) {
      if (rows === most) {
        pushText(sheet, xml);
        xml = '';
        nextSheet();
      }
      rows += 1;
      xml += rowXml(itemToWorkbookRow(item, entryCells, namesOf?.(item), rightOf), rows);
    }
    pushText(sheet, xml);
    yield* taken();
  }
  endSheet(sheet);
  for (const [name, text] of packageParts(sheets)) {
    const part = new ZipPassThrough(name);
    zip.add(part);
    part.push(strToU8(text), true);
  }
  zip.end();
  yield* taken();
}

function pushText(sheet: ZipDeflate | null, xml: string): void {
  if (xml !== '') sheet?.push(strToU8(xml));
}

function endSheet(sheet: ZipDeflate | null): void {
  sheet?.push(strToU8('</sheetData></worksheet>'), true);
}

/** A row; cells and rows carry their address, which some readers need, and empty cells are left out. */
function rowXml(cells: readonly WorkbookCell[], row: number): string {
  let xml = `<row r="${row}">`;
  cells.forEach((cell, column) => {
    if (cell === '') return;
    const at = `${columnName(column)}${row}`;
    if (typeof cell === 'object') xml += `<c r="${at}" s="1"><v>${workbookDays(cell)}</v></c>`;
    else if (typeof cell === 'number') xml += `<c r="${at}"><v>${cell}</v></c>`;
    else xml += `<c r="${at}" t="inlineStr"><is><t xml:space="preserve">${escapeXml(cell)}</t></is></c>`;
  });
  return `${xml}</row>`;
}

/** A, B … Z, AA … for 0, 1 … */
function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}

/** Control characters were made visible before; what XML still forbids is replaced. */
function escapeXml(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/[\0-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]/g, '\ufffd');
}

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** The header stays in view while the rows are scrolled. */
const FROZEN_HEADER =
  '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>';

/** Two looks of a cell: as it comes, and a moment. */
const stylesXml =
  `${HEAD}<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="${momentFormat}"/></numFmts>` +
  '<fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders>' +
  '<cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf/>' +
  '<xf numFmtId="164" applyNumberFormat="1"/></cellXfs></styleSheet>';

function packageParts(sheets: number): readonly (readonly [string, string])[] {
  const all = Array.from({ length: sheets }, (_, at) => at + 1);
  const types = all.map(
    (n) => `<Override PartName="/xl/worksheets/sheet${n}.xml" ContentType="${TYPE}.worksheet+xml"/>`,
  );
  types.push(`<Override PartName="/xl/styles.xml" ContentType="${TYPE}.styles+xml"/>`);
  const list = all.map((n) => `<sheet name="log${n === 1 ? '' : ` ${n}`}" sheetId="${n}" r:id="rId${n}"/>`);
  const links = all.map(
    (n) => `<Relationship Id="rId${n}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${n}.xml"/>`,
  );
  links.push(`<Relationship Id="rIdStyles" Type="${OFFICE}/styles" Target="styles.xml"/>`);
  return [
    ['xl/styles.xml', stylesXml],
    [
      '[Content_Types].xml',
      `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${TYPE}.sheet.main+xml"/>${types.join('')}</Types>`,
    ],
    [
      '_rels/.rels',
      `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ],
    [
      'xl/workbook.xml',
      `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${list.join('')}</sheets></workbook>`,
    ],
    [
      'xl/_rels/workbook.xml.rels',
      `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${links.join('')}</Relationships>`,
    ],
  ];
}
