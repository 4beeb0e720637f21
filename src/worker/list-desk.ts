// Reads a list as the page asks, from bytes to parts or counted reels.

import { headerKey, keptToMap } from '../../shared/sheet/choice.ts';
import type { HeaderWords } from '../../shared/sheet/fields.ts';
import { joinHeaderRows } from '../../shared/sheet/header-pair.ts';
import type { ColumnMap, SheetColumn } from '../../shared/sheet/headers.ts';
import { guessColumns, type SheetRows } from '../../shared/sheet/headers.ts';
import { partFields, partHeaderWords } from '../../shared/sheet/part-fields.ts';
import { readPartList } from '../../shared/sheet/part-list.ts';
import type { SheetProblem } from '../../shared/sheet/problems.ts';
import { countFields, countHeaderWords, readReelCounts } from '../../shared/sheet/reel-counts.ts';
import { nameHeaders, pickSheet } from '../../shared/sheet/source.ts';
import {
  type ListKind,
  type ListReply,
  type ListRequest,
  type ListSummary,
  mostListed,
} from './list-protocol.ts';
import { parseSource, type SheetTools } from './parse-source.ts';
import { showColumns, Unreadable } from './parsed.ts';

const listWords: Readonly<Record<ListKind, HeaderWords<string>>> = {
  parts: partHeaderWords,
  counts: countHeaderWords,
};
const listFields = { parts: partFields, counts: countFields } as const;

interface Read {
  readonly headerRow: number;
  readonly columns: readonly SheetColumn<string>[];
  readonly problems: readonly SheetProblem[];
  readonly parts: ListSummary['parts'];
  readonly counts: ListSummary['counts'];
}

function readAs(
  { list }: ListRequest,
  rows: SheetRows,
  options: { readonly columns: ColumnMap<string>; readonly textProblems: readonly SheetProblem[] },
): Read {
  if (list === 'parts') return { ...readPartList(rows, options), counts: [] };
  return { ...readReelCounts(rows, options), parts: [] };
}

async function read(request: ListRequest, tools: SheetTools): Promise<ListSummary> {
  const { list, source, page: wanted, remembered } = request;
  const parsed = await parseSource(source, 'sheet', tools, () => undefined);
  if (parsed.isExchange) throw new Unreadable('other-xml');
  const page =
    wanted ??
    pickSheet(
      parsed.pages.map(({ rows }) => rows),
      list,
    );
  const given = joinHeaderRows(parsed.pages[page]?.rows ?? [], listWords[list]);
  const rows = nameHeaders(given, guessColumns(given, listWords[list], request.columns ?? {}).headerRow);
  const key = headerKey(guessColumns(rows, listWords[list]).columns);
  const kept = request.columns === null ? remembered[`${list} ${key}`] : undefined;
  const fields: readonly string[] = listFields[list];
  const columns = request.columns ?? (kept ? keptToMap(kept, fields) : {});
  const reading = readAs(request, rows, { columns, textProblems: parsed.problems });
  const length = reading.parts.length + reading.counts.length;
  if (length > mostListed) throw new Unreadable('too-many-slots', String(length));
  return {
    pages: parsed.text === null ? parsed.pages.map(({ name }) => name) : [],
    page,
    columns: showColumns(reading.columns, rows, reading.headerRow),
    fields,
    key: `${list} ${headerKey(reading.columns)}`,
    isRemembered: kept !== undefined,
    problems: reading.problems.map((problem) => ({ ...problem, role: 'sheet' as const })),
    parts: reading.parts,
    counts: reading.counts,
  };
}

/** Reads one list; never rejects. */
export async function readList(request: ListRequest, tools: SheetTools): Promise<ListReply> {
  try {
    return { kind: 'list', summary: await read(request, tools) };
  } catch (error) {
    return { kind: 'refused', fault: error instanceof Unreadable ? error.fault : 'failed' };
  }
}
