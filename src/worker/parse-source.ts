// A file or pasted text, opened: workbook or text, which encoding, which rows; or why it cannot be read at all.

import { billRows } from '../../shared/sheet/bill-rows.ts';
import { isExchangeFile, xmlRoot } from '../../shared/sheet/exchange.ts';
import { cellText, type SheetRows } from '../../shared/sheet/headers.ts';
import { placementRows } from '../../shared/sheet/placement-rows.ts';
import type { SheetProblem } from '../../shared/sheet/problems.ts';
import { readShown } from '../../shared/sheet/shown.ts';
import {
  type ForeignKind,
  foreignKind,
  isOverstated,
  sheetFileKind,
  toSheetCell,
  workbookBytes,
} from '../../shared/sheet/source.ts';
import { bytesToText, type DecodeBytes, textToRows } from '../../shared/sheet/text.ts';
import { fitWidth } from '../../shared/sheet/width.ts';
import { type Parsed, Unreadable } from './parsed.ts';
import {
  mostFileBytes,
  mostUnpackedBytes,
  type SheetRole,
  type SheetSource,
  type SheetStep,
} from './sheet-protocol.ts';

/** What the desk needs of the place that it runs in. */
export interface SheetTools {
  readonly decode: DecodeBytes;
  /** Sheets of a workbook by name; rejects where the bytes are no workbook. */
  readonly readWorkbook: (
    bytes: ArrayBuffer,
  ) => Promise<readonly { readonly sheet: string; readonly data: readonly (readonly unknown[])[] }[]>;
}

/** Hears what is being done. */
export type Tell = (step: SheetStep) => void;

const archives: readonly ForeignKind[] = ['zip', 'gzip', 'tar', '7z', 'rar', 'bzip2', 'xz'];

/** Opens a file or pasted text: rows of each of its pages. Throws `Unreadable` with what the person is to be told. */
export async function parseSource(
  source: SheetSource,
  role: SheetRole,
  tools: SheetTools,
  tell: Tell,
): Promise<Parsed> {
  tell('opening');
  if (typeof source.content === 'string')
    return parseText(source, role, { text: source.content, problems: [] }, tell);
  if (source.content.size > mostFileBytes) throw new Unreadable('too-large', String(source.content.size));
  const buffer = await source.content.arrayBuffer();
  const bytes = new Uint8Array(buffer);
  const kind = sheetFileKind(bytes);
  if (kind === 'empty' || kind === 'old-workbook') throw new Unreadable(kind);
  const foreign = foreignKind(bytes);
  if (foreign !== null) throw new Unreadable(archives.includes(foreign) ? 'archive' : 'other-file', foreign);
  if (kind === 'workbook') return parseWorkbook(source, buffer, tools);
  const { text, problems } = bytesToText(bytes, tools.decode);
  if (text === null) throw new Unreadable('not-text');
  return parseText(source, role, { text, problems }, tell);
}

function parseText(
  { number, name }: SheetSource,
  role: SheetRole,
  found: { readonly text: string; readonly problems: readonly SheetProblem[] },
  tell: Tell,
): Parsed {
  const { text } = found;
  if (text.trim() === '') throw new Unreadable(text === '' ? 'empty' : 'blank');
  const isExchange = isExchangeFile(text);
  const root = xmlRoot(text);
  if (root !== null && !isExchange) throw new Unreadable('other-xml', root);
  tell('splitting');
  const opened = { number, name, text, isExchange, placed: null };
  if (isExchange) return { ...opened, pages: [{ name: '', rows: [] }], problems: found.problems };
  const split = role === 'bill' ? billRows(text) : textToRows(text);
  const pages = [{ name: '', rows: inWidth(split.rows) }];
  const problems = [...found.problems, ...split.problems];
  if (role !== 'placements') return { ...opened, pages, problems };
  // Laid out by its own rules out of the same split: a placement file may be long.
  const placed = placementRows(text, split);
  return { ...opened, placed, pages: [{ name: '', rows: inWidth(placed.rows) }], problems };
}

/** The rows as wide as a list may be. */
function inWidth(rows: SheetRows): SheetRows {
  const fitted = fitWidth(rows);
  if ('row' in fitted) throw new Unreadable('too-wide', `${fitted.row}: ${fitted.columns}`);
  return fitted.rows;
}

async function parseWorkbook(
  { number, name }: SheetSource,
  buffer: ArrayBuffer,
  tools: SheetTools,
): Promise<Parsed> {
  const unpacked = workbookBytes(new Uint8Array(buffer));
  if (unpacked > mostUnpackedBytes) throw new Unreadable('too-large', String(unpacked));
  if (isOverstated(new Uint8Array(buffer)))
    throw new Unreadable('broken-workbook', 'a part says that it holds more than it can');
  // The spreadsheet reader may take the bytes over.
  const asShown = readShown(new Uint8Array(buffer));
  const sheets = await tools.readWorkbook(buffer).catch((reason: unknown) => {
    throw new Unreadable('broken-workbook', reason instanceof Error ? reason.message : String(reason));
  });
  const pages = sheets.map(({ sheet, data }, at) => ({
    name: sheet,
    rows: asShown(inWidth(data.map((row) => row.map(toSheetCell))), at),
  }));
  if (!pages.some(({ rows }) => rows.some((row) => row.some((cell) => cellText(cell) !== ''))))
    throw new Unreadable('blank');
  return { number, name, text: null, isExchange: false, placed: null, pages, problems: [] };
}
