// What the page and the worker say to each other about a list: the plant's parts, or reels that a counter has counted.

import type { ColumnMap } from '../../shared/sheet/headers.ts';
import type { PartRow } from '../../shared/sheet/part-list.ts';
import type { SheetProblem } from '../../shared/sheet/problems.ts';
import type { ReelRow } from '../../shared/sheet/reel-counts.ts';
import type { SheetFault, SheetSource, ShownColumn } from './sheet-protocol.ts';

/** What is listed. */
export const listKinds = ['parts', 'counts'] as const;
export type ListKind = (typeof listKinds)[number];

/** Most things handed to the page. */
export const mostListed = 50_000;

/** A list to be read. */
export interface ListRequest {
  readonly list: ListKind;
  readonly source: SheetSource;
  /** A person's choice; null = what was remembered for these headers, else the guess. */
  readonly columns: ColumnMap<string> | null;
  /** Remembered choices by `headerKey`. */
  readonly remembered: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Which sheet of a workbook; null = the one that reads most like such a list. */
  readonly page: number | null;
}

/** The list as it was read. */
export interface ListSummary {
  /** Names of a workbook's sheets; empty for text. */
  readonly pages: readonly string[];
  readonly page: number;
  readonly columns: readonly ShownColumn<string>[];
  /** The fields that its columns may be taken for. */
  readonly fields: readonly string[];
  readonly key: string;
  readonly isRemembered: boolean;
  readonly problems: readonly (SheetProblem & { readonly role: 'sheet' })[];
  /** What was asked for; the other is empty. */
  readonly parts: readonly PartRow[];
  readonly counts: readonly ReelRow[];
}

/** The answer: the list, or why it cannot be read at all. */
export type ListReply =
  | { readonly kind: 'list'; readonly summary: ListSummary }
  | { readonly kind: 'refused'; readonly fault: SheetFault };
