// What the page and the sheet worker say to each other. Every request names its sources whole, so that a worker that was ended and
// started again needs no history; the worker keeps what it has parsed by the source's number.

import type { BillField } from '../../shared/sheet/bill-fields.ts';
import type { BoardPart, NotPlaced } from '../../shared/sheet/board-parts.ts';
import type { PlacementField, SheetField } from '../../shared/sheet/fields.ts';
import type { FirstTable } from '../../shared/sheet/first-table.ts';
import type { ColumnMap } from '../../shared/sheet/headers.ts';
import type { JoinedPart } from '../../shared/sheet/join.ts';
import type { SheetProblem } from '../../shared/sheet/problems.ts';
import type { PlacementScope } from '../../shared/sheet/scope.ts';
import type { IgnoredReason, SheetSlot } from '../../shared/sheet/slot.ts';
import type { SheetTitle } from '../../shared/sheet/source.ts';

/** Most bytes of a file; a sheet of a whole plant is far smaller. */
export const mostFileBytes = 64 * 1024 * 1024;

/** Most bytes that a workbook may unpack to: a few kilobytes can unpack to any number. */
export const mostUnpackedBytes = 512 * 1024 * 1024;

/** Most slots handed to the page: more than the longest line has. */
export const mostSlots = 5000;

/** Which of the inputs is meant; `bill`: the bill of materials that names what the placement file places. */
export const sheetRoles = ['sheet', 'placements', 'bill'] as const;
export type SheetRole = (typeof sheetRoles)[number];

/** A file or pasted text; `number` is its own, so that it is parsed once. */
export interface SheetSource {
  readonly number: number;
  readonly name: string;
  readonly content: Blob | string;
}

/** How the sheet is to be read. */
export interface SheetSettings {
  /** A person's choice; null = what was remembered for these headers, else the guess. */
  readonly columns: ColumnMap<SheetField> | null;
  readonly placementColumns: ColumnMap<PlacementField> | null;
  readonly billColumns: ColumnMap<BillField> | null;
  /** Which of the bill's variants is built; null where nobody said, or the bill has none. */
  readonly variant: string | null;
  /** Remembered choices by `headerKey`. */
  readonly remembered: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Which sheet of a workbook; null = the one that reads most like a setup. */
  readonly page: number | null;
  readonly scope: PlacementScope | null;
  readonly boardsPerPanel: number;
  /** Machine and bank of slots that name none; '' = none. */
  readonly machine: string;
  readonly bank: string;
  /** Supplier parts approved elsewhere, by part. */
  readonly approved: readonly (readonly [part: string, supplierParts: readonly string[]])[];
}

export interface SheetRequest {
  readonly id: number;
  /** Null where a board's own files are read, and slots are still to be found. */
  readonly sheet: SheetSource | null;
  readonly placements: SheetSource | null;
  /** Beside a sheet read only where there is a placement file too. */
  readonly bill?: SheetSource | null;
  /** True where a sheet without slots may be one of the board's own files instead. */
  readonly mayBeOther?: boolean;
  readonly settings: SheetSettings;
}

/** What the worker is at. */
export const sheetSteps = ['opening', 'splitting', 'checking'] as const;
export type SheetStep = (typeof sheetSteps)[number];

/** Why a file cannot be read at all. */
export const sheetFaults = [
  'empty',
  'blank',
  'not-text',
  'archive',
  'other-file',
  'other-xml',
  'no-bill',
  'old-workbook',
  'broken-workbook',
  'too-large',
  'too-many-slots',
  'too-wide',
  'failed',
] as const;
export type SheetFault = (typeof sheetFaults)[number];

/** A column as it is shown: what it is taken for, and what stands in it. */
export interface ShownColumn<F extends string> {
  readonly index: number;
  readonly header: string;
  readonly field: F | null;
  /** The first different entries below the header. */
  readonly samples: readonly string[];
}

/** The placement file as it was read. */
export interface PlacementSummary {
  readonly columns: readonly ShownColumn<PlacementField>[];
  readonly key: string;
  readonly isRemembered: boolean;
  readonly parts: number;
  readonly placements: number;
  readonly ignored: number;
}

/** The bill of materials laid over the placement file. */
export interface BillSummary {
  /** None where the file says itself what is what. */
  readonly columns: readonly ShownColumn<BillField>[];
  readonly key: string;
  readonly isRemembered: boolean;
  /** Parts with their places, in the order of the bill; none without a placement file. */
  readonly parts: readonly JoinedPart[];
  readonly notPlaced: readonly string[];
  readonly variants: readonly string[];
}

/** A board as its own files describe it. */
export interface BoardSummary {
  readonly parts: readonly BoardPart[];
  readonly notPlaced: readonly NotPlaced[];
}

/** The sheet as it was read. */
export interface SheetSummary {
  /** Names of a workbook's sheets; empty for text. */
  readonly pages: readonly string[];
  readonly page: number;
  readonly title: SheetTitle;
  readonly columns: readonly ShownColumn<SheetField>[];
  /** Names this header among the remembered choices. */
  readonly key: string;
  /** True where the columns are as they were once corrected by hand. */
  readonly isRemembered: boolean;
  readonly slots: readonly SheetSlot[];
  readonly ignored: Readonly<Partial<Record<IgnoredReason, number>>>;
  readonly problems: readonly (SheetProblem & { readonly role: SheetRole })[];
  readonly placements: PlacementSummary | null;
  readonly bill: BillSummary | null;
  /** Null where a sheet was read, or no placement file is there yet. */
  readonly board: BoardSummary | null;
  readonly scope: PlacementScope | null;
}

export type SheetReply =
  | { readonly kind: 'step'; readonly id: number; readonly role: SheetRole; readonly step: SheetStep }
  | { readonly kind: 'read'; readonly id: number; readonly summary: SheetSummary }
  /** The sheet asked for is one of the board's own files. */
  | { readonly kind: 'other'; readonly id: number; readonly as: FirstTable }
  | {
      readonly kind: 'refused';
      readonly id: number;
      readonly role: SheetRole;
      readonly fault: SheetFault;
      readonly detail: string;
    };
