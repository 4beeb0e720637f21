// How plain values of an entry are told: texts, numbers, lists. What needs to know its fact stands in sayings.ts.

import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Entry, Json } from '../../../../shared/log/entry.ts';
import { visible } from '../../ui/visible.ts';
import { factWords } from '../../words/log-facts.ts';
import { formatCount, formatNumber, formatShare, formatSpan, say } from '../../words/words.ts';

/** Says a value of a fact; null where it says nothing. */
export type Say = (value: Json, entry: Entry, floor: FloorState) => string | null;

/** A value that the log's own screen does not tell. */
export const nothing: Say = () => null;
/** One of a list of codes, in words; a code of a later version as it stands. */
export const oneOf =
  (words: () => Readonly<Record<string, string>>): Say =>
  (value) =>
    typeof value === 'string' ? (words()[value] ?? value) : null;
/** A text, with what cannot be seen in it made visible. */
export const text: Say = (value) => (typeof value === 'string' ? visible(value) : null);
/** A bare number. */
export const number: Say = (value) => (typeof value === 'number' ? formatNumber(value) : null);
/** Whether something is so. */
export const yesNo: Say = (value) => (value === true ? say(factWords).yes : say(factWords).no);
/** A number with its unit. */
export const withUnit =
  (unit: string): Say =>
  (value) =>
    typeof value === 'number' ? `${formatNumber(value)} ${unit}` : null;
/** Seconds, as a length of time. */
export const span: Say = (value) => (typeof value === 'number' ? formatSpan(value) : null);
/** A fraction, in per cent. */
export const share: Say = (value) => (typeof value === 'number' ? formatShare(value) : null);
/** How many parts. */
export const parts: Say = (value) =>
  typeof value === 'number' ? say(factWords).parts(formatNumber(value)) : null;
/** How many panels. */
export const panels: Say = (value) =>
  typeof value === 'number' ? say(factWords).panels(formatCount(value)) : null;
/** Texts, one after the other. */
export const list: Say = (value) =>
  Array.isArray(value) && value.length > 0 ? value.map((each) => visible(String(each))).join(', ') : null;
/** How many of a list. */
export const howMany: Say = (value) =>
  Array.isArray(value) && value.length > 0 ? formatCount(value.length) : null;

/** How many shifts each week has. */
export const weeks: Say = (value) =>
  Array.isArray(value) ? value.map((week) => (Array.isArray(week) ? week.length : 0)).join(' / ') : null;

/** Each class of parts with its months. */
export const limits: Say = (value) =>
  Array.isArray(value)
    ? value
        .map((each) => {
          const { begins, months } = each as { begins: string; months: number }; // checked when it was written
          return say(factWords).limit(begins, months);
        })
        .join(' · ') || say(factWords).noLimit
    : null;

/** Skipped boards: how many, or which of the panel. */
export const skippedBoards: Say = (value) =>
  Array.isArray(value)
    ? value.map((board) => say(factWords).boardsWhich(String(board))).join(', ')
    : typeof value === 'number'
      ? formatCount(value)
      : null;
