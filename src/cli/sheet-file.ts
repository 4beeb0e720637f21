// From a file argument to rows or text: what kind of file it is, how it is encoded, which sheets of a workbook count.
// A file that cannot be read is named as what it is. The spreadsheet reader is loaded only for a workbook.

import { isExchangeFile, xmlRoot } from '../../shared/sheet/exchange.ts';
import type { SheetRows } from '../../shared/sheet/headers.ts';
import type { SheetProblem } from '../../shared/sheet/problems.ts';
import { readShown } from '../../shared/sheet/shown.ts';
import {
  type ForeignKind,
  foreignKind,
  isOverstated,
  joinPages,
  sheetFileKind,
  type TableKind,
  toSheetCell,
  workbookBytes,
} from '../../shared/sheet/source.ts';
import { bytesToText, type DecodeBytes } from '../../shared/sheet/text.ts';
import { type CommandIo, NotUnderstood, readBytes } from './command.ts';

/** What a file holds. */
export interface FileContent {
  readonly name: string;
  /** Text of a text file, or null for a workbook. */
  readonly text: string | null;
  /** Rows of a workbook, or null for a text file. */
  readonly rows: SheetRows | null;
  /** Whether the text is an IPC-2581 file. */
  readonly isExchange: boolean;
  readonly problems: readonly SheetProblem[];
}

const hint: Readonly<Record<TableKind, string>> = {
  sheet: 'expected a CSV or XLSX file',
  placements: 'expected a placement file as text, CSV or XLSX, or an IPC-2581 file',
  bill: 'expected a bill of materials as text, CSV or XLSX, or an IPC-2581 file',
  parts: 'expected a list of parts as CSV or XLSX',
  counts: 'expected a file of counted reels as CSV or XLSX',
};

const foreignNames: Readonly<Record<ForeignKind, string>> = {
  'open-document': 'an OpenDocument file: save it as XLSX or CSV',
  'binary-workbook': 'a binary workbook (XLSB): save it as XLSX or CSV',
  'word-document': 'a text document (DOCX): save its table as CSV',
  zip: 'a ZIP archive: unpack it and give the file that is in it',
  gzip: 'a gzip archive (.gz, .tgz): unpack it and give the file that is in it',
  tar: 'a tar archive: unpack it and give the file that is in it',
  '7z': 'a 7z archive: unpack it and give the file that is in it',
  rar: 'a RAR archive: unpack it and give the file that is in it',
  bzip2: 'a bzip2 archive: unpack it and give the file that is in it',
  xz: 'an xz archive: unpack it and give the file that is in it',
  pdf: 'a PDF: export the list as CSV or XLSX',
  picture: 'a picture: export the list as CSV or XLSX',
};

/** A few kilobytes can unpack to any number. */
const UNPACKED_MOST = 512 * 1024 * 1024;

const decode: DecodeBytes = (bytes, encoding) => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    // Not of this encoding is an answer: the caller tries the next one.
    return null;
  }
};

/** Rows of the workbook's sheets that read most like what is looked for, merged cells filled down. */
async function readWorkbook(bytes: Uint8Array, source: string, table: TableKind) {
  if (workbookBytes(bytes) > UNPACKED_MOST)
    throw new NotUnderstood(`${source}: ${hint[table]}, found a workbook that unpacks to over 512 MiB`);
  if (isOverstated(bytes))
    throw new NotUnderstood(
      `${source}: ${hint[table]}, found a broken workbook: a part says that it holds more than it can`,
    );
  const { default: readXlsxFile } = await import('read-excel-file/node');
  let sheets: Awaited<ReturnType<typeof readXlsxFile>>;
  try {
    sheets = await readXlsxFile(Buffer.from(bytes));
  } catch (error) {
    throw new NotUnderstood(
      `${source}: ${hint[table]}, found a broken workbook: ${(error as Error).message}`,
    );
  }
  const asShown = readShown(bytes);
  const pages = sheets.map(({ sheet, data }, at) => ({
    name: sheet,
    rows: asShown(
      data.map((row) => row.map(toSheetCell)),
      at,
    ),
  }));
  if (table === 'sheet') return { rows: joinPages(pages, table).rows, problems: [] };
  return joinPages(pages, table);
}

/** Names a text that is no table: XML other than IPC-2581, a page, JSON. */
function refuseForeignText(text: string, source: string, table: TableKind): void {
  const root = xmlRoot(text);
  const isHtml = root !== null && /^(?:html|table|body|div|meta|head)$/i.test(root);
  if (isHtml)
    throw new NotUnderstood(`${source}: ${hint[table]}, found an HTML page: save it as CSV or XLSX`);
  if (root !== null && !(table !== 'sheet' && isExchangeFile(text))) {
    const what = isExchangeFile(text)
      ? 'an IPC-2581 file: give it with --placements'
      : `an XML file with root element <${root}>`;
    throw new NotUnderstood(`${source}: ${hint[table]}, found ${what}`);
  }
  if (/^\s*[[{]/.test(text)) {
    try {
      JSON.parse(text);
    } catch {
      return;
    }
    throw new NotUnderstood(`${source}: ${hint[table]}, found JSON`);
  }
  const list = /^\s*\(([a-z][\w-]*)[\s)]/i.exec(text)?.[1];
  if (list !== undefined)
    throw new NotUnderstood(`${source}: ${hint[table]}, found a design file that begins with (${list}`);
}

/** Reads a file argument, or standard input for `-`. `table`: what is looked for in it. */
export async function readContent(file: string, io: CommandIo, table: TableKind): Promise<FileContent> {
  const source = file === '-' ? 'standard input' : file;
  const bytes = await readBytes(file, io);
  const kind = sheetFileKind(bytes);
  if (kind === 'empty') throw new NotUnderstood(`${source}: ${hint[table]}, found an empty file`);
  const foreign = foreignKind(bytes);
  if (foreign !== null) throw new NotUnderstood(`${source}: ${hint[table]}, found ${foreignNames[foreign]}`);
  if (kind === 'workbook') {
    const { rows, problems } = await readWorkbook(bytes, source, table);
    return { name: file, text: null, rows, isExchange: false, problems };
  }
  if (kind === 'old-workbook') {
    throw new NotUnderstood(`${source}: ${hint[table]}, found an old workbook: save it as XLSX or CSV`);
  }
  const { text, problems } = bytesToText(bytes, decode);
  if (text === null) throw new NotUnderstood(`${source}: ${hint[table]}, found bytes that are not text`);
  if (text.trim() === '') throw new NotUnderstood(`${source}: ${hint[table]}, found nothing but blank lines`);
  refuseForeignText(text, source, table);
  return { name: file, text, rows: null, isExchange: isExchangeFile(text), problems };
}
