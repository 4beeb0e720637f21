// `reelward sheet`: reads a setup sheet (CSV or XLSX), a placement file, or both, and lists what is wrong before anything is taken in.
// The reading is in shared/setup/sheet-*.ts; here are files, bytes and the spreadsheet reader, which is loaded only for a workbook.

import { z } from 'zod';
import { diffSheets } from '../../../shared/sheet/diff.ts';
import { manyColumnFields, placementFields, sheetFields } from '../../../shared/sheet/fields.ts';
import type { SheetRows } from '../../../shared/sheet/headers.ts';
import { type PlacementReading, readPlacements } from '../../../shared/sheet/placements.ts';
import { hasSheetErrors, type SheetProblem } from '../../../shared/sheet/problems.ts';
import { readSheet, type SheetOptions, type SheetReading } from '../../../shared/sheet/read.ts';
import { pickSheet, sheetFileKind, toSheetCell } from '../../../shared/sheet/source.ts';
import { bytesToText, type DecodeBytes, textToRows } from '../../../shared/sheet/text.ts';
import { placementScopes } from '../../../shared/sheet/usage.ts';
import {
  type Command,
  type CommandIo,
  NotUnderstood,
  parseCall,
  printJson,
  readBytes,
  readJson,
} from '../command.ts';

const help = `reelward sheet FILE [--placements FILE] [--map FILE] [--side SIDE] [--boards N] [--against FILE]
reelward sheet --placements FILE

Reads a setup sheet (CSV with any separator, UTF-8, UTF-16 or Windows-1252, or XLSX) and prints one JSON document:
slots, problems by row and column, ignored rows and what each column was taken for. FILE may be - for standard input.

  --placements FILE  placement (centroid) file: supplies or confirms placements per panel; alone, prints its totals per part
  --map FILE         JSON {"columns": {"slot": "Header", "alternates": ["Header", "Header"], "note": null},
                     "placementColumns": {"part": "Header"}, "positions": {"12": 1}, "grows": "up" or "down"}
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
  positions: z
    .record(z.string().regex(/^\d+$/, 'expected a tape width in mm'), z.int().min(1).max(60))
    .optional(),
  grows: z.enum(['up', 'down']).optional(),
});

const decode: DecodeBytes = (bytes, encoding) => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    // Not of this encoding is an answer: the caller tries the next one.
    return null;
  }
};

interface FileContent {
  /** Text of a text file, or null for a workbook. */
  readonly text: string | null;
  /** Rows of a workbook, or null for a text file. */
  readonly rows: SheetRows | null;
  readonly problems: readonly SheetProblem[];
}

const workbookHint = 'expected a CSV or XLSX file';

/** Rows of the workbook's sheet whose rows read most like a header. */
async function readWorkbook(bytes: Uint8Array, source: string): Promise<SheetRows> {
  const { default: readXlsxFile } = await import('read-excel-file/node');
  let sheets: Awaited<ReturnType<typeof readXlsxFile>>;
  try {
    sheets = await readXlsxFile(Buffer.from(bytes));
  } catch (error) {
    throw new NotUnderstood(
      `${source}: ${workbookHint}, found a broken workbook: ${(error as Error).message}`,
    );
  }
  const rows = sheets.map(({ data }) => data.map((row) => row.map(toSheetCell)));
  return rows[pickSheet(rows)] ?? [];
}

async function readContent(file: string, io: CommandIo): Promise<FileContent> {
  const source = file === '-' ? 'standard input' : file;
  const bytes = await readBytes(file, io);
  const kind = sheetFileKind(bytes);
  if (kind === 'empty') throw new NotUnderstood(`${source}: ${workbookHint}, found an empty file`);
  if (kind === 'workbook') {
    return { text: null, rows: await readWorkbook(bytes, source), problems: [] };
  }
  if (kind === 'old-workbook') {
    throw new NotUnderstood(`${source}: ${workbookHint}, found an old workbook: save it as XLSX or CSV`);
  }
  const { text, problems } = bytesToText(bytes, decode);
  if (text === null) throw new NotUnderstood(`${source}: ${workbookHint}, found bytes that are not text`);
  if (text.trim() === '')
    throw new NotUnderstood(`${source}: ${workbookHint}, found nothing but blank lines`);
  return { text, rows: null, problems };
}

async function readPlacementFile(
  file: string,
  columns: NonNullable<Parameters<typeof readPlacements>[1]>['columns'],
  io: CommandIo,
): Promise<PlacementReading> {
  const content = await readContent(file, io);
  return readPlacements(content.rows ?? content.text ?? '', {
    textProblems: content.problems,
    ...(columns ? { columns } : {}),
  });
}

async function readSheetFile(file: string, options: SheetOptions, io: CommandIo): Promise<SheetReading> {
  const content = await readContent(file, io);
  if (content.rows !== null) return readSheet(content.rows, { ...options, textProblems: content.problems });
  const { rows, problems } = textToRows(content.text ?? '');
  return readSheet(rows, { ...options, textProblems: [...content.problems, ...problems] });
}

function inFile(file: 'sheet' | 'placements', problems: readonly SheetProblem[]) {
  return problems.map((problem) => ({ file, ...problem }));
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

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = parseCall(
    args,
    {
      placements: { type: 'string' },
      map: { type: 'string' },
      side: { type: 'string' },
      boards: { type: 'string' },
      against: { type: 'string' },
    },
    { min: 0, max: 1, names: 'one FILE, or --placements FILE, or both' },
  );
  const [file] = positionals;
  const inputs = [file, values.placements, values.map, values.against];
  if (inputs.filter((input) => input === '-').length > 1) {
    throw new NotUnderstood('expected at most one input from standard input, found - more than once');
  }
  if (file === undefined && values.placements === undefined) {
    throw new NotUnderstood('expected one FILE, or --placements FILE, or both, found nothing');
  }
  const given = parseOptions(values);
  const map = values.map === undefined ? {} : await readJson(values.map, mapSchema, io);
  const placements =
    values.placements === undefined
      ? undefined
      : await readPlacementFile(values.placements, definedOnly(map.placementColumns), io);
  if (file === undefined) {
    if (placements === undefined) return 2;
    const { parts, problems, ignored, columns } = placements;
    printJson(
      {
        parts,
        placements: placements.placements.length,
        problems: inFile('placements', problems),
        ignored,
        columns,
      },
      io,
    );
    return hasSheetErrors(problems) ? 1 : 0;
  }
  const options: SheetOptions = {
    ...given,
    columns: definedOnly(map.columns),
    ...(map.positions ? { positionsByWidth: map.positions } : {}),
    ...(map.grows ? { grows: map.grows } : {}),
  };
  const sheet = await readSheetFile(file, placements ? { ...options, placements } : options, io);
  const problems = [...inFile('sheet', sheet.problems), ...inFile('placements', placements?.problems ?? [])];
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
      ...(old ? { changes: diffSheets(old.slots, sheet.slots) } : {}),
    },
    io,
  );
  return hasSheetErrors(problems) ? 1 : 0;
}

/** The command. */
export const command: Command = {
  name: 'sheet',
  summary: 'read a setup sheet and a placement file, list what is wrong',
  help,
  run,
};
