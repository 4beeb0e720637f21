// What a label says, in one shape for every kind of label.
// A value is stated only where the codes state it without guessing; what needs a person or the setup is a question,
// what has no identifier stays as text. Nothing here knows a setup or a clock.

import type { LabelWarning } from './warnings.ts';

/** What a label can state about its reel. `order` is the purchase order that the reel was bought on. */
export const labelFields = [
  'part',
  'supplierPart',
  'quantity',
  'lot',
  'dateCode',
  'made',
  'expires',
  'reel',
  'supplier',
  'country',
  'msl',
  'order',
] as const;

/** One of the things that a label can state. */
export type LabelFieldName = (typeof labelFields)[number];

/** The moisture sensitivity levels of IPC/JEDEC J-STD-020, as MH10.8.2 writes them after 13E. */
export const labelMsls = ['1', '2', '2a', '3', '4', '5', '5a', '6'] as const;

/** A moisture sensitivity level. */
export type LabelMsl = (typeof labelMsls)[number];

/** A week of ISO 8601: the year that the week belongs to and its number, 1 to 53. */
export interface IsoWeek {
  readonly year: number;
  readonly week: number;
}

/** One identified piece of a label: identifier as standards write it, what it stands for, value as printed. */
export interface LabelField {
  readonly id: string;
  readonly title: string;
  readonly value: string;
}

/** One way to read a piece of text. `value` is as printed. */
export interface LabelCandidate {
  readonly field: LabelFieldName;
  readonly value: string;
}

/** A piece of text with more than one reading, or with a reading that nothing on the label confirms. */
export interface LabelQuestion {
  readonly text: string;
  readonly candidates: readonly LabelCandidate[];
}

/** What a label says. `null` = the label does not state it, or not without guessing (then see `ambiguous`, `warnings`). */
export interface LabelReading {
  /** The customer's part number (P): the site's own. */
  readonly part: string | null;
  /** The supplier's part number (1P). */
  readonly supplierPart: string | null;
  /** Parts on the reel, or the amount in `unit`. */
  readonly quantity: number | null;
  /** Unit as printed behind the quantity; null = none printed, so pieces. */
  readonly unit: string | null;
  /** The supplier's lot (1T), else the customer's (T). */
  readonly lot: string | null;
  /** The date code as printed. */
  readonly dateCode: string | null;
  /** The week of making, where the label says so unambiguously. */
  readonly made: IsoWeek | null;
  /** Last day of use, `YYYY-MM-DD`. */
  readonly expires: string | null;
  /** The unique package id: 3S, else 4S, else 5S, else S. */
  readonly reel: string | null;
  readonly supplier: string | null;
  /** ISO 3166 alpha-2 as printed. */
  readonly country: string | null;
  readonly msl: LabelMsl | null;
  readonly order: string | null;
  /** Every identified piece, in the order read. */
  readonly fields: readonly LabelField[];
  /** Text that carries no identifier, kept as it was read. */
  readonly unidentified: readonly string[];
  readonly ambiguous: readonly LabelQuestion[];
  readonly warnings: readonly LabelWarning[];
  /** Names of the site rules that read this label; empty where a standard did. */
  readonly rules: readonly string[];
}

/** What the setup knows, so that a bare code can be told from one with an identifier in front. */
export interface LabelExpectation {
  /** The site's part numbers. */
  readonly parts: ReadonlySet<string>;
  /** Approved suppliers' part numbers. */
  readonly supplierParts: ReadonlySet<string>;
}
