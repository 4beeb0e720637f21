// Which list is in hand, by which columns it was read, and what is being read now?
// Method: columns just chosen wait beside the list and become its own only with what was read by them, so that the columns on the screen and
// the rows that can be taken in never come from two readings. Method refused: to put the choice into the list at once, which stays there
// when the reading by it is refused or given up for another.

import { chooseColumn, columnsToMap } from '../../../../../shared/sheet/choice.ts';
import type { ColumnMap } from '../../../../../shared/sheet/headers.ts';
import type { ListReply, ListSummary } from '../../../../worker/list-protocol.ts';
import type { SheetFault } from '../../../../worker/sheet-protocol.ts';

/** What a list is read from. */
export interface ListSource {
  readonly name: string;
  readonly content: Blob | string;
}

/** Columns that a person has just chosen. */
export interface ChosenColumns {
  readonly columns: ListSummary['columns'];
  /** The same as the reader wants them. */
  readonly map: ColumnMap<string>;
  /** Names the header among the remembered choices. */
  readonly key: string;
}

/** What is asked of the reader. */
export interface ListQuestion {
  readonly source: ListSource;
  /** Null = what was remembered for these headers, else the guess. */
  readonly chosen: ChosenColumns | null;
  /** Which sheet of a workbook; null = the one that reads most like such a list. */
  readonly page: number | null;
}

/** A list that was read, with what it was read from. */
export interface InHand {
  readonly source: ListSource;
  readonly summary: ListSummary;
}

/** The list in hand, if any, and how its reading stands. */
export interface ListDesk {
  readonly inHand: InHand | null;
  /** The question that waits for its answer; null = nothing is read now. */
  readonly asked: ListQuestion | null;
  /** Why what was asked last could not be read. */
  readonly fault: { readonly name: string; readonly is: SheetFault } | null;
}

/** Nothing in hand, nothing asked. */
export const emptyDesk: ListDesk = { inHand: null, asked: null, fault: null };

/** A question is asked; the answer to one asked before is no longer waited for. */
export function askList(desk: ListDesk, asked: ListQuestion): ListDesk {
  return { ...desk, asked };
}

/** The answer to a question. One no longer waited for changes nothing; a refusal leaves the list as it was read and drops the columns chosen. */
export function answerList(desk: ListDesk, to: ListQuestion, reply: ListReply): ListDesk {
  if (desk.asked !== to) return desk;
  const { source } = to;
  if (reply.kind === 'refused')
    return { ...desk, asked: null, fault: { name: source.name, is: reply.fault } };
  return { inHand: { source, summary: reply.summary }, asked: null, fault: null };
}

/** The columns to show: those just chosen while the list is read by them, else those it was read by; none without a list in hand. */
export function shownColumns({ inHand, asked }: ListDesk): ListSummary['columns'] {
  return asked?.chosen?.columns ?? inHand?.summary.columns ?? [];
}

/** The question that a choice asks: the list in hand by the columns shown, with this one taken for another field (null = not used). */
export function choiceOf(
  desk: ListDesk,
  { source, summary }: InHand,
  choice: { readonly index: number; readonly field: string | null },
): ListQuestion {
  const columns = chooseColumn(shownColumns(desk), choice.index, choice.field);
  const map = columnsToMap(columns, summary.fields);
  return { source, chosen: { columns, map, key: summary.key }, page: summary.page };
}
