// The board's own files as the page asks for them: a placement file, the bill of materials beside it, both laid over each other.
// Method: each is read by what a person chose for its columns, else by what is remembered for its look, else by the guess.

import { type BillReading, readBill } from '../../shared/sheet/bill.ts';
import { billFields } from '../../shared/sheet/bill-fields.ts';
import { readBoard } from '../../shared/sheet/board-parts.ts';
import { headerKey, keptToMap } from '../../shared/sheet/choice.ts';
import { readExchange } from '../../shared/sheet/exchange.ts';
import { placementFields } from '../../shared/sheet/fields.ts';
import { cellText, type SheetRows } from '../../shared/sheet/headers.ts';
import { type JoinedBill, joinBill, namedPlacements } from '../../shared/sheet/join.ts';
import { type PlacementReading, readPlacements } from '../../shared/sheet/placements.ts';
import { joinPages, nameHeaders } from '../../shared/sheet/source.ts';
import { type Parsed, showColumns, Unreadable } from './parsed.ts';
import type {
  BillSummary,
  BoardSummary,
  PlacementSummary,
  SheetSettings,
  SheetSummary,
} from './sheet-protocol.ts';

/** A bill as it was read, with its rows as they were read. */
export interface BilledPart {
  readonly reading: BillReading;
  readonly rows: SheetRows;
  readonly isRemembered: boolean;
}

/** What the placement file places, and what the bill beside it (or within it) makes of that. */
export interface Placed {
  readonly reading: PlacementReading;
  readonly isRemembered: boolean;
  readonly bill: BilledPart | null;
  readonly joined: JoinedBill | null;
}

/** Names the header of a bill among the remembered choices: one of a sheet may be the same and mean something else. */
export function billKey(columns: BillReading['columns']): string {
  return `bill\t${headerKey(columns)}`;
}

/** The rows with every header its own, so that a choice of columns is never in doubt; the same rows where they are, or the header was put together. */
function namedRows(rows: SheetRows, { headerRow, columns }: BillReading): SheetRows {
  const header = rows[headerRow - 1] ?? [];
  if (columns.some(({ index, header: text }) => cellText(header[index]) !== text)) return rows;
  const named = nameHeaders(rows, headerRow);
  return named[headerRow - 1]?.every((cell, index) => cell === header[index]) === true ? rows : named;
}

/** Reads a bill of materials. */
export function readBillPart(parsed: Parsed, settings: SheetSettings): BilledPart {
  if (parsed.isExchange) {
    const { bill } = readExchange(parsed.text ?? '', true);
    if (bill === null) throw new Unreadable('no-bill');
    return { reading: bill, rows: [], isRemembered: false };
  }
  const { rows: given, problems } = joinPages(parsed.pages, 'bill');
  const read = (rows: SheetRows, columns: SheetSettings['billColumns']) =>
    readBill(rows, {
      textProblems: [...parsed.problems, ...problems],
      ...(columns === null ? {} : { columns }),
      ...(settings.variant === null ? {} : { variant: settings.variant }),
    });
  const first = read(given, null);
  const rows = namedRows(given, first);
  const guessed = rows === given ? first : read(rows, null);
  const kept = settings.remembered[billKey(guessed.columns)];
  if (settings.billColumns !== null)
    return { reading: read(rows, settings.billColumns), rows, isRemembered: false };
  return kept === undefined
    ? { reading: guessed, rows, isRemembered: false }
    : { reading: read(rows, keptToMap(kept, billFields)), rows, isRemembered: true };
}

/** Reads a placement file and lays the bill over it. */
export function readPlacementPart(parsed: Parsed, given: BilledPart | null, settings: SheetSettings): Placed {
  const exchange = parsed.isExchange ? readExchange(parsed.text ?? '', given !== null) : null;
  const own = exchange?.bill ? { reading: exchange.bill, rows: [], isRemembered: false } : null;
  const bill = given ?? own;
  const { reading, isRemembered } = exchange
    ? { reading: exchange.placements, isRemembered: false }
    : readPlacementRows(parsed, bill !== null, settings);
  if (bill === null) return { reading, isRemembered, bill, joined: null };
  const joined = joinBill(reading, bill.reading, { boardsPerPanel: settings.boardsPerPanel });
  return { reading: namedPlacements(reading, joined), isRemembered, bill, joined };
}

function readPlacementRows(
  parsed: Parsed,
  hasBill: boolean,
  settings: SheetSettings,
): Pick<Placed, 'reading' | 'isRemembered'> {
  const pages = parsed.text === null ? joinPages(parsed.pages, 'placements') : { rows: [], problems: [] };
  const input = parsed.placed ?? parsed.text ?? pages.rows;
  const read = (columns: SheetSettings['placementColumns']) =>
    // The placement file's own rules find broken quotation marks themselves.
    readPlacements(input, {
      textProblems: [...parsed.problems.filter(({ code }) => code === 'encodingGuessed'), ...pages.problems],
      hasBill,
      fileName: parsed.name,
      ...(columns === null ? {} : { columns }),
    });
  if (settings.placementColumns !== null)
    return { reading: read(settings.placementColumns), isRemembered: false };
  const guessed = read(null);
  const kept = settings.remembered[headerKey(guessed.columns)];
  return kept
    ? { reading: read(keptToMap(kept, placementFields)), isRemembered: true }
    : { reading: guessed, isRemembered: false };
}

/** Problems of the placement file, of the bill, and of both laid over each other, each with the file that its row is in. */
export function placedProblems({ reading, bill, joined }: Placed): SheetSummary['problems'] {
  return [
    ...reading.problems.map((problem) => ({ ...problem, role: 'placements' as const })),
    ...billProblems(bill),
    ...(joined?.problems ?? []).map(({ file, ...problem }) => ({
      ...problem,
      role: file === 'bom' ? ('bill' as const) : ('placements' as const),
    })),
  ];
}

/** Problems of the bill alone. */
export function billProblems(bill: BilledPart | null): SheetSummary['problems'] {
  return (bill?.reading.problems ?? []).map((problem) => ({ ...problem, role: 'bill' as const }));
}

/** What the page shows of a placement file. */
export function placementSummary({ reading, isRemembered }: Placed, parsed: Parsed): PlacementSummary {
  const rows = parsed.pages[0]?.rows ?? [];
  return {
    columns: showColumns(reading.columns, rows, reading.headerRow),
    key: headerKey(reading.columns),
    isRemembered,
    parts: reading.parts.length,
    placements: reading.placements.length,
    ignored: reading.ignored,
  };
}

/** What the page shows of a bill. */
export function billSummary(bill: BilledPart | null, joined: JoinedBill | null): BillSummary | null {
  if (bill === null) return null;
  const { reading, rows, isRemembered } = bill;
  return {
    columns: showColumns(reading.columns, rows, reading.headerRow),
    key: billKey(reading.columns),
    isRemembered,
    parts: joined?.parts ?? [],
    notPlaced: joined?.notPlaced ?? [],
    variants: reading.variants,
  };
}

/** The board itself: what it takes, part by part. */
export function boardSummary(
  { reading, joined }: Placed,
  settings: SheetSettings,
): { readonly board: BoardSummary; readonly problems: SheetSummary['problems'] } {
  const { parts, notPlaced, problems } = readBoard(reading, joined, settings.boardsPerPanel);
  return {
    board: { parts, notPlaced },
    problems: problems.map((problem) => ({ ...problem, role: 'placements' as const })),
  };
}
