// Reads a setup sheet and its placement file as the page asks, from bytes to slots and problems.
// Method: each source is parsed once and kept by its number; a change of columns reads the kept rows again. The workbook's reader and the
// decoding of bytes are handed in, so that the desk runs in tests as in the worker.

import { type BillReading, readBill } from '../../shared/sheet/bill.ts';
import { billRows } from '../../shared/sheet/bill-rows.ts';
import { headerKey, keptToMap } from '../../shared/sheet/choice.ts';
import { isExchangeFile, readExchange, xmlRoot } from '../../shared/sheet/exchange.ts';
import {
  type PlacementField,
  placementFields,
  sheetFields,
  sheetHeaderWords,
} from '../../shared/sheet/fields.ts';
import { cellText, guessColumns, type SheetColumn, type SheetRows } from '../../shared/sheet/headers.ts';
import { type JoinedBill, joinBill, makersOf, namedPlacements } from '../../shared/sheet/join.ts';
import { fillMerged, mergedRanges } from '../../shared/sheet/merged.ts';
import { type PlacementReading, readPlacements } from '../../shared/sheet/placements.ts';
import type { SheetProblem } from '../../shared/sheet/problems.ts';
import { readSheet, type SheetOptions, type SheetReading } from '../../shared/sheet/read.ts';
import type { IgnoredReason } from '../../shared/sheet/slot.ts';
import {
  type ForeignKind,
  foreignKind,
  joinPages,
  nameHeaders,
  pickSheet,
  readTitle,
  sheetFileKind,
  toSheetCell,
} from '../../shared/sheet/source.ts';
import { bytesToText, type DecodeBytes, textToRows } from '../../shared/sheet/text.ts';
import {
  type BillSummary,
  mostFileBytes,
  mostSlots,
  type PlacementSummary,
  type SheetFault,
  type SheetReply,
  type SheetRequest,
  type SheetRole,
  type SheetSettings,
  type SheetSource,
  type SheetStep,
  type SheetSummary,
  type ShownColumn,
} from './sheet-protocol.ts';

/** What the desk needs of the place that it runs in. */
export interface SheetTools {
  readonly decode: DecodeBytes;
  /** Sheets of a workbook by name; rejects where the bytes are no workbook. */
  readonly readWorkbook: (
    bytes: ArrayBuffer,
  ) => Promise<readonly { readonly sheet: string; readonly data: readonly (readonly unknown[])[] }[]>;
}

/** A source as it was parsed. */
interface Parsed {
  readonly number: number;
  readonly name: string;
  readonly isExchange: boolean;
  readonly pages: readonly { readonly name: string; readonly rows: SheetRows }[];
  /** The text of a text file, which a placement file needs whole. */
  readonly text: string | null;
  readonly problems: readonly SheetProblem[];
}

/** An expected failure, with what the person is to be told. */
class Unreadable extends Error {
  readonly fault: SheetFault;
  constructor(fault: SheetFault, detail = '') {
    super(detail);
    this.fault = fault;
  }
}

type Tell = (step: SheetStep) => void;

const archives: readonly ForeignKind[] = ['zip', 'gzip', 'tar', '7z', 'rar', 'bzip2', 'xz'];

async function parseSource(
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
  const isExchange = role !== 'sheet' && isExchangeFile(text);
  const root = xmlRoot(text);
  if (root !== null && !isExchange) throw new Unreadable('other-xml', root);
  tell('splitting');
  const none = { rows: [], problems: [] };
  const { rows, problems } = isExchange ? none : role === 'bill' ? billRows(text) : textToRows(text);
  return {
    number,
    name,
    text,
    isExchange,
    pages: [{ name: '', rows }],
    problems: [...found.problems, ...problems],
  };
}

async function parseWorkbook(
  { number, name }: SheetSource,
  buffer: ArrayBuffer,
  tools: SheetTools,
): Promise<Parsed> {
  // The spreadsheet reader may take the bytes over: merged cells are looked up first.
  const merged = mergedRanges(new Uint8Array(buffer));
  const sheets = await tools.readWorkbook(buffer).catch((reason: unknown) => {
    throw new Unreadable('broken-workbook', reason instanceof Error ? reason.message : String(reason));
  });
  const pages = sheets.map(({ sheet, data }, at) => ({
    name: sheet,
    rows: fillMerged(
      data.map((row) => row.map(toSheetCell)),
      merged[at] ?? [],
    ),
  }));
  if (!pages.some(({ rows }) => rows.some((row) => row.some((cell) => cellText(cell) !== ''))))
    throw new Unreadable('blank');
  return { number, name, text: null, isExchange: false, pages, problems: [] };
}

const mostSamples = 3;
const sampleRows = 200;

/** Columns with their first entries; columns that hold nothing at all are not shown. */
function showColumns<F extends string>(
  columns: readonly SheetColumn<F>[],
  rows: SheetRows,
  headerRow: number,
): readonly ShownColumn<F>[] {
  const below = rows.slice(headerRow, headerRow + sampleRows);
  return columns.flatMap((column) => {
    const samples = new Set<string>();
    for (const row of below) {
      const text = cellText(row[column.index]);
      if (text !== '' && samples.size < mostSamples) samples.add(text.slice(0, 60));
    }
    return column.header === '' && samples.size === 0 ? [] : [{ ...column, samples: [...samples] }];
  });
}

function readSheetPart(
  parsed: Parsed,
  page: number,
  rest: { readonly settings: SheetSettings; readonly placed: Placed | null },
) {
  const { settings, placed } = rest;
  const given = parsed.pages[page]?.rows ?? [];
  const rows = nameHeaders(given, guessColumns(given, sheetHeaderWords, settings.columns ?? {}).headerRow);
  const guess = guessColumns(rows, sheetHeaderWords);
  const key = headerKey(guess.columns);
  const kept = settings.columns === null ? settings.remembered[key] : undefined;
  const columns = settings.columns ?? (kept ? keptToMap(kept, sheetFields) : {});
  const options: SheetOptions = {
    columns,
    approved: new Map(settings.approved),
    machine: settings.machine,
    bank: settings.bank,
    boardsPerPanel: settings.boardsPerPanel,
    textProblems: parsed.problems,
    ...(settings.scope === null ? {} : { side: settings.scope }),
    ...(placed === null ? {} : { placements: placed.reading, makers: makersOf(placed.joined) }),
  };
  const reading = readSheet(rows, options);
  if (reading.slots.length > mostSlots) throw new Unreadable('too-many-slots', String(reading.slots.length));
  return { rows, reading, key: headerKey(reading.columns), isRemembered: kept !== undefined };
}

/** What the placement file places, and what the bill beside it (or within it) makes of that. */
interface Placed {
  readonly reading: PlacementReading;
  readonly bill: BillReading | null;
  readonly joined: JoinedBill | null;
}

function readBillPart(parsed: Parsed): BillReading {
  if (parsed.isExchange) {
    const { bill } = readExchange(parsed.text ?? '', true);
    if (bill === null) throw new Unreadable('no-bill');
    return bill;
  }
  const { rows, problems } = joinPages(parsed.pages, 'bill');
  return readBill(rows, { textProblems: [...parsed.problems, ...problems] });
}

function readPlacementPart(parsed: Parsed, given: BillReading | null, settings: SheetSettings): Placed {
  const exchange = parsed.isExchange ? readExchange(parsed.text ?? '', given !== null) : null;
  const bill = given ?? exchange?.bill ?? null;
  const reading = exchange?.placements ?? readPlacementRows(parsed, bill !== null, settings);
  if (bill === null) return { reading, bill, joined: null };
  const joined = joinBill(reading, bill, { boardsPerPanel: settings.boardsPerPanel });
  return { reading: namedPlacements(reading, joined), bill, joined };
}

function readPlacementRows(parsed: Parsed, hasBill: boolean, settings: SheetSettings): PlacementReading {
  const pages = parsed.text === null ? joinPages(parsed.pages, 'placements') : { rows: [], problems: [] };
  const input = parsed.text ?? pages.rows;
  const read = (columns: SheetSettings['placementColumns']) =>
    // The text is split once more, by the placement file's own rules, which find its broken quotation marks themselves.
    readPlacements(input, {
      textProblems: [...parsed.problems.filter(({ code }) => code === 'encodingGuessed'), ...pages.problems],
      hasBill,
      fileName: parsed.name,
      ...(columns === null ? {} : { columns }),
    });
  if (settings.placementColumns !== null) return read(settings.placementColumns);
  const guessed = read(null);
  const kept = settings.remembered[headerKey(guessed.columns)];
  return kept ? read(keptToMap(kept, placementFields)) : guessed;
}

/** Problems of the placement file, of the bill, and of both laid over each other, each with the file that its row is in. */
function placedProblems({ reading, bill, joined }: Placed): SheetSummary['problems'] {
  return [
    ...reading.problems.map((problem) => ({ ...problem, role: 'placements' as const })),
    ...(bill?.problems ?? []).map((problem) => ({ ...problem, role: 'bill' as const })),
    ...(joined?.problems ?? []).map(({ file, ...problem }) => ({
      ...problem,
      role: file === 'bom' ? ('bill' as const) : ('placements' as const),
    })),
  ];
}

function placementSummary(reading: PlacementReading, parsed: Parsed): PlacementSummary {
  const rows = parsed.pages[0]?.rows ?? [];
  // Of a file aligned with blanks the rows were split elsewhere; samples then come from the placements themselves.
  const isSplit = reading.columns.length === (rows[reading.headerRow - 1]?.length ?? 0);
  const columns: readonly ShownColumn<PlacementField>[] = isSplit
    ? showColumns(reading.columns, rows, reading.headerRow)
    : reading.columns.map((column) => ({ ...column, samples: samplesOf(reading, column.field) }));
  return {
    columns,
    key: headerKey(reading.columns),
    parts: reading.parts.length,
    placements: reading.placements.length,
    ignored: reading.ignored,
  };
}

function billSummary({ bill, joined }: Placed): BillSummary | null {
  if (bill === null || joined === null) return null;
  return { parts: joined.parts, notPlaced: joined.notPlaced, variants: bill.variants };
}

function samplesOf(reading: PlacementReading, field: PlacementField | null): readonly string[] {
  if (field !== 'part' && field !== 'designator' && field !== 'side') return [];
  return [...new Set(reading.placements.slice(0, sampleRows).map((placement) => placement[field]))]
    .filter((text) => text !== '')
    .slice(0, mostSamples);
}

function countReasons(reading: SheetReading): SheetSummary['ignored'] {
  const counts: Partial<Record<IgnoredReason, number>> = {};
  for (const { reason } of reading.ignoredRows) counts[reason] = (counts[reason] ?? 0) + 1;
  return counts;
}

/** A desk that answers requests one after the other. */
export interface SheetDesk {
  /** Answers with the summary, or with why there is none; tells each step on the way. Never rejects. */
  read(request: SheetRequest, tell: (reply: SheetReply) => void): Promise<SheetReply>;
}

/** Makes a desk. */
export function createSheetDesk(tools: SheetTools): SheetDesk {
  const kept = new Map<SheetRole, Parsed>();

  async function parse(role: SheetRole, source: SheetSource, tell: Tell): Promise<Parsed> {
    const there = kept.get(role);
    if (there?.number === source.number) return there;
    const parsed = await parseSource(source, role, tools, tell);
    kept.set(role, parsed);
    return parsed;
  }

  return {
    async read({ id, sheet, placements, bill = null, settings }, tell) {
      let role: SheetRole = 'placements';
      const step: Tell = (at) => tell({ kind: 'step', id, role, step: at });
      try {
        const parsedPlaces = placements === null ? null : await parse('placements', placements, step);
        role = 'bill';
        const billed =
          bill === null || parsedPlaces === null ? null : readBillPart(await parse('bill', bill, step));
        const placed = parsedPlaces === null ? null : readPlacementPart(parsedPlaces, billed, settings);
        role = 'sheet';
        const parsed = await parse('sheet', sheet, step);
        step('checking');
        const page = settings.page ?? pickSheet(parsed.pages.map(({ rows }) => rows));
        const { rows, reading, key, isRemembered } = readSheetPart(parsed, page, {
          settings,
          placed,
        });
        const summary: SheetSummary = {
          pages: parsed.text === null ? parsed.pages.map(({ name }) => name) : [],
          page,
          title: readTitle(rows, reading.headerRow),
          columns: showColumns(reading.columns, rows, reading.headerRow),
          key,
          isRemembered,
          slots: reading.slots,
          ignored: countReasons(reading),
          problems: [
            ...reading.problems.map((problem) => ({ ...problem, role: 'sheet' as const })),
            ...(placed === null ? [] : placedProblems(placed)),
          ],
          placements: placed && parsedPlaces ? placementSummary(placed.reading, parsedPlaces) : null,
          bill: placed === null ? null : billSummary(placed),
          scope: reading.placementScope,
        };
        return { kind: 'read', id, summary };
      } catch (error) {
        const fault = error instanceof Unreadable ? error.fault : 'failed';
        const detail = error instanceof Error ? error.message : String(error);
        return { kind: 'refused', id, role, fault, detail };
      }
    },
  };
}
