// `reelward sheet`: reads a setup sheet, a placement file and a bill of materials, or some of them, and lists what is wrong before anything is
// taken in. The reading is in shared/sheet; files and bytes in ../sheet-file.ts.

import { z } from 'zod';
import { type BillReading, readBill } from '../../../shared/sheet/bill.ts';
import { billFields } from '../../../shared/sheet/bill-fields.ts';
import { billRows } from '../../../shared/sheet/bill-rows.ts';
import { diffSheets } from '../../../shared/sheet/diff.ts';
import { readExchange } from '../../../shared/sheet/exchange.ts';
import { manyColumnFields, placementFields, sheetFields } from '../../../shared/sheet/fields.ts';
import type { ColumnMap } from '../../../shared/sheet/headers.ts';
import { type JoinedBill, joinBill, makersOf, namedPlacements } from '../../../shared/sheet/join.ts';
import { type PlacementReading, readPlacements } from '../../../shared/sheet/placements.ts';
import { hasSheetErrors, type SheetProblem } from '../../../shared/sheet/problems.ts';
import { readSheet, type SheetOptions, type SheetReading } from '../../../shared/sheet/read.ts';
import { placementScopes } from '../../../shared/sheet/scope.ts';
import { textToRows } from '../../../shared/sheet/text.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall, printJson, readJson } from '../command.ts';
import { readContent } from '../sheet-file.ts';

const help = `reelward sheet FILE [--placements FILE] [--bom FILE] [--map FILE] [--side SIDE] [--boards N] [--against FILE]
reelward sheet --placements FILE
reelward sheet --placements FILE --bom FILE [--boards N] [--variant NAME]

Reads a setup sheet (CSV with any separator, UTF-8, UTF-16 or Windows-1252, or XLSX) and prints one JSON document:
slots, problems by row and column, ignored rows and what each column was taken for. FILE may be - for standard input.
Without a sheet it reads a placement file, or a placement file and a bill of materials joined by reference designator:
{"parts": [{"part","supplierParts","top","bottom","designators"}], "placements", "notPlaced", "problems"}.
Rows of a sheet that name designators are joined by them too.

  --placements FILE  placement (centroid) file: text, CSV, XLSX, or IPC-2581 with its own bill; alone, prints totals per part
  --bom FILE         bill of materials: text, CSV, XLSX, or IPC-2581; names the parts and the approved makers' numbers
  --variant NAME     the variant of the bill that is built, where the bill holds several
  --map FILE         JSON {"columns": {"slot": "Header", "alternates": ["Header", "Header"], "note": null},
                     "placementColumns": {"part": "Header"}, "bomColumns": {"designators": "Header"},
                     "positions": {"12": 1}, "grows": "up" or "down"}
                     fields: ${sheetFields.join(', ')}
  --side SIDE        which placements count: top, bottom or both (else the side that agrees best with the sheet)
  --boards N         boards in one panel, where the placement file describes one board (default 1)
  --against FILE     an older revision of the sheet: prints what changed under "changes"

Exit 0 read, 1 read with errors, 2 not understood.
`;

const headerChoice = z.union([z.string().min(1), z.null()], {
  error: 'expected a header as text, or null for no column',
});
const headerChoices = z.union([z.string().min(1), z.array(z.string().min(1)).min(1), z.null()], {
  error: 'expected a header, a list of headers, or null for no column',
});

function choices(fields: readonly string[]) {
  const shape: Record<string, z.ZodOptional<typeof headerChoice | typeof headerChoices>> = {};
  for (const field of fields) {
    shape[field] = (manyColumnFields.includes(field) ? headerChoices : headerChoice).optional();
  }
  return z.strictObject(shape);
}

const mapSchema = z.strictObject({
  columns: choices(sheetFields).optional(),
  placementColumns: choices(placementFields).optional(),
  bomColumns: choices(billFields).optional(),
  positions: z
    .record(z.string().regex(/^\d+$/, 'expected a tape width in mm'), z.int().min(1).max(60))
    .optional(),
  grows: z.enum(['up', 'down']).optional(),
});

type InFile = SheetProblem & { readonly file: 'sheet' | 'placements' | 'bom' };

function inFile(file: InFile['file'], problems: readonly SheetProblem[]): readonly InFile[] {
  return problems.map((problem) => ({ file, ...problem }));
}

/** The placement file and the bill, read and joined as far as they are given. */
interface Board {
  readonly placements: PlacementReading;
  readonly bill: BillReading | null;
  readonly joined: JoinedBill | null;
  readonly problems: readonly InFile[];
}

interface BoardCall {
  readonly placements: string;
  readonly bom: string | undefined;
  readonly variant: string | undefined;
  readonly boards: number;
  readonly placementColumns: ColumnMap<(typeof placementFields)[number]>;
  readonly bomColumns: ColumnMap<(typeof billFields)[number]>;
}

async function readBillFile(file: string, call: BoardCall, io: CommandIo): Promise<BillReading> {
  const content = await readContent(file, io, 'bill');
  if (content.isExchange) {
    const { bill } = readExchange(content.text ?? '', true);
    if (bill === null)
      throw new NotUnderstood(`${file}: expected a bill of materials, found an IPC-2581 file without one`);
    return bill;
  }
  const split = content.rows === null ? billRows(content.text ?? '') : { rows: content.rows, problems: [] };
  return readBill(split.rows, {
    columns: call.bomColumns,
    textProblems: [...content.problems, ...split.problems],
    ...(call.variant === undefined ? {} : { variant: call.variant }),
  });
}

async function readBoard(call: BoardCall, io: CommandIo): Promise<Board> {
  const content = await readContent(call.placements, io, 'placements');
  const given = call.bom === undefined ? null : await readBillFile(call.bom, call, io);
  const exchange = content.isExchange ? readExchange(content.text ?? '', given !== null) : null;
  const bill = given ?? exchange?.bill ?? null;
  if (bill === null && call.variant !== undefined)
    throw new NotUnderstood('--variant: expected --bom FILE with it, found no bill of materials');
  const placements =
    exchange?.placements ??
    readPlacements(content.rows ?? content.text ?? '', {
      textProblems: content.problems,
      columns: call.placementColumns,
      hasBill: bill !== null,
      fileName: content.name,
    });
  const joined = bill === null ? null : joinBill(placements, bill, { boardsPerPanel: call.boards });
  return {
    placements: joined === null ? placements : namedPlacements(placements, joined),
    bill,
    joined,
    problems: [
      ...inFile('placements', placements.problems),
      ...inFile('bom', bill?.problems ?? []),
      ...(joined?.problems ?? []),
    ],
  };
}

/** What is printed where no setup sheet is given. */
function printBoard(board: Board, boards: number, io: CommandIo): number {
  const { placements, joined, problems } = board;
  const notPlaced = [...new Set(placements.leftOut.map(({ placement }) => placement.designator))].filter(
    (name) => name !== '',
  );
  const plain = placements.parts.map(({ part, top, bottom, firstRow }) => ({
    part,
    top: top * boards,
    bottom: bottom * boards,
    firstRow,
  }));
  printJson(
    {
      parts: joined?.parts ?? plain,
      placements: placements.placements.length,
      notPlaced: joined?.notPlaced ?? notPlaced,
      problems,
      ignored: placements.ignored,
      columns: placements.columns,
      ...(board.bill === null ? {} : { bomColumns: board.bill.columns, variants: board.bill.variants }),
    },
    io,
  );
  return hasSheetErrors(problems) ? 1 : 0;
}

async function readSheetFile(file: string, options: SheetOptions, io: CommandIo): Promise<SheetReading> {
  const content = await readContent(file, io, 'sheet');
  if (content.rows !== null) return readSheet(content.rows, { ...options, textProblems: content.problems });
  const { rows, problems } = textToRows(content.text ?? '');
  return readSheet(rows, { ...options, textProblems: [...content.problems, ...problems] });
}

function parseOptions(values: { readonly side?: string; readonly boards?: string }): SheetOptions {
  const side = placementScopes.find((scope) => scope === values.side);
  if (values.side !== undefined && side === undefined) {
    throw new NotUnderstood(`--side: expected ${placementScopes.join(', ')}, found ${values.side}`);
  }
  const boards = Number(values.boards ?? 1);
  if (!Number.isInteger(boards) || boards < 1 || boards > 10_000) {
    throw new NotUnderstood(`--boards: expected a whole number from 1 to 10000, found ${values.boards}`);
  }
  return { boardsPerPanel: boards, ...(side ? { side } : {}) };
}

/** A column map as the schema gives it has optional fields that may be undefined; those are taken out. */
function definedOnly<T extends object>(map: T | undefined) {
  const entries = Object.entries(map ?? {}).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries);
}

function checkInputs(values: Readonly<Record<string, string | undefined>>, file: string | undefined): void {
  const inputs = [file, values['placements'], values['bom'], values['map'], values['against']];
  if (inputs.filter((input) => input === '-').length > 1)
    throw new NotUnderstood('expected at most one input from standard input, found - more than once');
  if (values['bom'] !== undefined && values['placements'] === undefined)
    throw new NotUnderstood('--bom: expected --placements FILE with it, found none');
  if (file === undefined && values['placements'] === undefined)
    throw new NotUnderstood('expected one FILE, or --placements FILE, or both, found nothing');
}

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const text = { type: 'string' } as const;
  const { values, positionals } = parseCall(
    args,
    { placements: text, bom: text, variant: text, map: text, side: text, boards: text, against: text },
    { min: 0, max: 1, names: 'one FILE, or --placements FILE, or both' },
  );
  const [file] = positionals;
  checkInputs(values, file);
  const given = parseOptions(values);
  const boards = given.boardsPerPanel ?? 1;
  const map = values.map === undefined ? {} : await readJson(values.map, mapSchema, io);
  const call = {
    bom: values.bom,
    variant: values.variant,
    boards,
    placementColumns: definedOnly(map.placementColumns),
    bomColumns: definedOnly(map.bomColumns),
  };
  const board =
    values.placements === undefined ? null : await readBoard({ ...call, placements: values.placements }, io);
  if (file === undefined) return board === null ? 2 : printBoard(board, boards, io);
  const options: SheetOptions = {
    ...given,
    columns: definedOnly(map.columns),
    ...(map.positions ? { positionsByWidth: map.positions } : {}),
    ...(map.grows ? { grows: map.grows } : {}),
    ...(board === null ? {} : { placements: board.placements, makers: makersOf(board.joined) }),
  };
  const sheet = await readSheetFile(file, options, io);
  const problems = [...inFile('sheet', sheet.problems), ...(board?.problems ?? [])];
  const old = values.against === undefined ? undefined : await readSheetFile(values.against, options, io);
  printJson(
    {
      slots: sheet.slots,
      problems,
      ignored: sheet.ignored,
      ignoredRows: sheet.ignoredRows,
      headerRow: sheet.headerRow,
      columns: sheet.columns,
      placementScope: sheet.placementScope,
      ...(board?.joined ? { notPlaced: board.joined.notPlaced } : {}),
      ...(old ? { changes: diffSheets(old.slots, sheet.slots) } : {}),
    },
    io,
  );
  return hasSheetErrors(problems) ? 1 : 0;
}

/** The command. */
export const command: Command = {
  name: 'sheet',
  summary: 'read a setup sheet, a placement file and a bill of materials, list what is wrong',
  help,
  run,
};
