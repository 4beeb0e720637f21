// Reads a setup sheet and its placement file as the page asks, from bytes to slots and problems.
// Method: each source is parsed once and kept by its number; a change of columns reads the kept rows again. The workbook's reader and the
// decoding of bytes are handed in, so that the desk runs in tests as in the worker.

import { billRows } from '../../shared/sheet/bill-rows.ts';
import { headerKey, keptToMap } from '../../shared/sheet/choice.ts';
import { sheetFields, sheetHeaderWords } from '../../shared/sheet/fields.ts';
import { billToSee, type FirstTable, firstTable } from '../../shared/sheet/first-table.ts';
import { guessColumns } from '../../shared/sheet/headers.ts';
import { makersOf } from '../../shared/sheet/join.ts';
import { readPlacements } from '../../shared/sheet/placements.ts';
import { readSheet, type SheetOptions, type SheetReading } from '../../shared/sheet/read.ts';
import type { IgnoredReason } from '../../shared/sheet/slot.ts';
import { joinPages, nameHeaders, pickSheet, readTitle } from '../../shared/sheet/source.ts';
import { parseSource, type SheetTools, type Tell } from './parse-source.ts';
import { type Parsed, showColumns, Unreadable } from './parsed.ts';
import {
  type BilledPart,
  billProblems,
  billSummary,
  boardSummary,
  type Placed,
  placedProblems,
  placementSummary,
  readBillPart,
  readPlacementPart,
} from './placed-desk.ts';
import {
  mostSlots,
  type SheetReply,
  type SheetRequest,
  type SheetRole,
  type SheetSettings,
  type SheetSource,
  type SheetSummary,
} from './sheet-protocol.ts';

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
  return { rows, reading, key: headerKey(reading.columns), isRemembered: kept !== undefined };
}

function countReasons(reading: SheetReading): SheetSummary['ignored'] {
  const counts: Partial<Record<IgnoredReason, number>> = {};
  for (const { reason } of reading.ignoredRows) counts[reason] = (counts[reason] ?? 0) + 1;
  return counts;
}

type Answer = { readonly summary: SheetSummary } | { readonly other: FirstTable };

/** What was read beside the sheet, or instead of one. */
interface Beside {
  readonly placed: Placed | null;
  readonly placedFile: Parsed | null;
  readonly billed: BilledPart | null;
}

type SheetPart = ReturnType<typeof readSheetPart>;

/** What a sheet without slots is otherwise; null where it is a sheet. */
function otherTable(parsed: Parsed, { rows, reading }: SheetPart): FirstTable | null {
  const placed = parsed.text ?? joinPages(parsed.pages, 'placements').rows;
  return firstTable({
    rows,
    sheet: reading,
    placements: readPlacements(placed, { mostProblems: 1, hasBill: true, fileName: parsed.name }),
    bill: () =>
      billToSee(parsed.text === null ? joinPages(parsed.pages, 'bill').rows : billRows(parsed.text).rows),
  });
}

function withSheet(
  parsed: Parsed,
  { page, rows, reading, key, isRemembered }: SheetPart & { readonly page: number },
  { placed, placedFile }: Beside,
): SheetSummary {
  return {
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
    placements: placed && placedFile ? placementSummary(placed, placedFile) : null,
    bill: placed === null ? null : billSummary(placed.bill, placed.joined),
    board: null,
    scope: reading.placementScope,
  };
}

/** A board's own files; slots are none of theirs. */
function withoutSheet({ placed, placedFile, billed }: Beside, settings: SheetSettings): SheetSummary {
  const read = placed === null ? null : boardSummary(placed, settings);
  const problems = placed === null ? billProblems(billed) : placedProblems(placed);
  return {
    pages: [],
    page: 0,
    title: { product: null, revision: null, side: null },
    columns: [],
    key: '',
    isRemembered: false,
    slots: [],
    ignored: {},
    problems: [...problems, ...(read?.problems ?? [])],
    placements: placed && placedFile ? placementSummary(placed, placedFile) : null,
    bill: placed === null ? billSummary(billed, null) : billSummary(placed.bill, placed.joined),
    board: read?.board ?? null,
    scope: settings.scope,
  };
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

  async function read(request: SheetRequest, step: (role: SheetRole) => Tell): Promise<Answer> {
    const { sheet, placements, bill = null, settings } = request;
    const placedFile = placements === null ? null : await parse('placements', placements, step('placements'));
    const isBilled = bill !== null && (placedFile !== null || sheet === null);
    const billed = isBilled ? readBillPart(await parse('bill', bill, step('bill')), settings) : null;
    const atPlacements = step('placements');
    const placed = placedFile === null ? null : readPlacementPart(placedFile, billed, settings);
    const beside = { placed, placedFile, billed };
    if (sheet === null) {
      atPlacements('checking');
      return { summary: withoutSheet(beside, settings) };
    }
    const atSheet = step('sheet');
    const parsed = await parse('sheet', sheet, atSheet);
    if (parsed.isExchange && request.mayBeOther === true) return { other: 'placements' };
    if (parsed.isExchange) throw new Unreadable('other-xml');
    atSheet('checking');
    const page = settings.page ?? pickSheet(parsed.pages.map(({ rows }) => rows));
    const part = readSheetPart(parsed, page, { settings, placed });
    const other = request.mayBeOther === true ? otherTable(parsed, part) : null;
    if (other !== null) return { other };
    const { length } = part.reading.slots;
    if (length > mostSlots) throw new Unreadable('too-many-slots', String(length));
    return { summary: withSheet(parsed, { page, ...part }, beside) };
  }

  return {
    async read(request, tell) {
      const { id } = request;
      let role: SheetRole = 'placements';
      const step = (of: SheetRole): Tell => {
        role = of;
        return (at) => tell({ kind: 'step', id, role: of, step: at });
      };
      try {
        const answer = await read(request, step);
        if ('other' in answer) return { kind: 'other', id, as: answer.other };
        return { kind: 'read', id, summary: answer.summary };
      } catch (error) {
        const fault = error instanceof Unreadable ? error.fault : 'failed';
        const detail = error instanceof Error ? error.message : String(error);
        return { kind: 'refused', id, role, fault, detail };
      }
    },
  };
}
