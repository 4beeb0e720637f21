// Dates and weeks as labels print them: calendar arithmetic of ISO 8601 and the reading of date codes.
// Method: the count of days in the proleptic Gregorian calendar, weeks by the Thursday rule (ISO 8601: week 1 holds the
// year's first Thursday). Refused: the host's Date, whose time zone moves a day.

import { isDigits } from './characters.ts';
import type { DateFormat } from './date-formats.ts';
import type { IsoWeek } from './reading.ts';

/** A day of the calendar. */
export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

// Years outside these are misprints or another format; reels are not older and not from later.
const FIRST_YEAR = 1970;
const LAST_YEAR = 2099;

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** Days in a month; 0 where there is no such month. */
export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeapYear(year) ? 29 : (MONTH_DAYS[month - 1] ?? 0);
}

/** Days from 1 January of year 1 (day 1, a Monday) to 1 January of `year`. */
function daysBeforeYear(year: number): number {
  const last = year - 1;
  return last * 365 + Math.floor(last / 4) - Math.floor(last / 100) + Math.floor(last / 400);
}

function dayOfYear(date: CalendarDate): number {
  let days = date.day;
  for (let month = 1; month < date.month; month += 1) days += daysInMonth(date.year, month);
  return days;
}

/** Weeks in a year of ISO 8601: 53 where 1 January or 31 December is a Thursday, else 52. */
export function weeksInYear(year: number): 52 | 53 {
  const first = daysBeforeYear(year) % 7;
  return first === 3 || (first === 2 && isLeapYear(year)) ? 53 : 52;
}

/** Whether ISO 8601 has this week. */
export function isIsoWeek(year: number, week: number): boolean {
  return Number.isInteger(week) && week >= 1 && week <= weeksInYear(year);
}

/** The week of ISO 8601 that a day belongs to; its year may be the year before or after the day's. */
export function dateToIsoWeek(date: CalendarDate): IsoWeek {
  const ordinal = dayOfYear(date);
  const weekday = ((daysBeforeYear(date.year) + ordinal - 1) % 7) + 1;
  const week = Math.floor((ordinal - weekday + 10) / 7);
  if (week < 1) return { year: date.year - 1, week: weeksInYear(date.year - 1) };
  if (week > weeksInYear(date.year)) return { year: date.year + 1, week: 1 };
  return { year: date.year, week };
}

/** Writes a day as `YYYY-MM-DD`. */
export function formatDate(date: CalendarDate): string {
  return `${String(date.year).padStart(4, '0')}-${two(date.month)}-${two(date.day)}`;
}

function two(number: number): string {
  return number < 10 ? `0${number}` : String(number);
}

/** The number that `length` digits make, of a text known to hold digits there. */
function numberIn(text: string, from: number, length: number): number {
  let number = 0;
  for (let at = from; at < from + length; at += 1) number = number * 10 + text.charCodeAt(at) - 48;
  return number;
}

/** The full year of a two-digit one: 70 to 99 is 19xx, else 20xx (labels name no century; the pivot is POSIX's, near enough). */
export function fullYear(short: number): number {
  return short >= 70 ? 1900 + short : 2000 + short;
}

/** Reads a week printed as YYWW or YYYYWW; null where ISO 8601 has no such week. */
export function parseWeek(text: string, format: 'YYWW' | 'YYYYWW'): IsoWeek | null {
  const yearDigits = format === 'YYWW' ? 2 : 4;
  if (text.length !== yearDigits + 2 || !isDigits(text)) return null;
  const printed = numberIn(text, 0, yearDigits);
  const year = yearDigits === 2 ? fullYear(printed) : printed;
  const week = numberIn(text, yearDigits, 2);
  if (year < FIRST_YEAR || year > LAST_YEAR || !isIsoWeek(year, week)) return null;
  return { year, week };
}

/** Reads a day printed in a known format, digits only; null where the calendar has no such day. */
export function parseDate(text: string, format: Exclude<DateFormat, 'YYWW' | 'YYYYWW'>): CalendarDate | null {
  if (text.length !== format.length || !isDigits(text)) return null;
  const yearAt = format.indexOf('Y');
  const yearDigits = format.includes('YYYY') ? 4 : 2;
  const printed = numberIn(text, yearAt, yearDigits);
  const year = yearDigits === 2 ? fullYear(printed) : printed;
  if (year < FIRST_YEAR || year > LAST_YEAR) return null;
  if (format === 'YYDDD') return parseOrdinal(year, numberIn(text, 2, 3));
  const month = numberIn(text, format.indexOf('M'), 2);
  const day = numberIn(text, format.indexOf('D'), 2);
  return day >= 1 && day <= daysInMonth(year, month) ? { year, month, day } : null;
}

function parseOrdinal(year: number, ordinal: number): CalendarDate | null {
  let day = ordinal;
  for (let month = 1; month <= 12; month += 1) {
    const days = daysInMonth(year, month);
    if (day >= 1 && day <= days) return { year, month, day };
    day -= days;
  }
  return null;
}

/** Reads a day printed as `YYYY-MM-DD`, `YYYY/MM/DD`, `YYYY.MM.DD` or `YYYYMMDD`; null where it is none of these. */
export function parseIsoLikeDate(text: string): CalendarDate | null {
  if (text.length === 8) return parseDate(text, 'YYYYMMDD');
  const mark = text[4];
  if (text.length !== 10 || text[7] !== mark || (mark !== '-' && mark !== '/' && mark !== '.')) return null;
  return parseDate(text.slice(0, 4) + text.slice(5, 7) + text.slice(8), 'YYYYMMDD');
}

/** What a date code says. `unclear`: several readings, or none known; `no-such-week`: four or six digits that name no week. */
export type DateCodeReading =
  | { readonly made: IsoWeek; readonly problem: null }
  | { readonly made: null; readonly problem: 'unclear' | 'no-such-week' };

const UNCLEAR: DateCodeReading = { made: null, problem: 'unclear' };
const NO_SUCH_WEEK: DateCodeReading = { made: null, problem: 'no-such-week' };

/**
 * Reads a date code whose format the label does not name. Stated are: four digits that are a week YYWW; six that are
 * a week YYYYWW and no day YYMMDD, DDMMYY or MMDDYY; eight that are a day YYYYMMDD; `YYYY-Www`, `YYWww`, `YYYY-MM-DD`.
 * Everything else, five digits (YYDDD or YYWWD) among it, stays as printed.
 */
export function readDateCode(text: string): DateCodeReading {
  if (text.length === 4 && isDigits(text)) {
    const made = parseWeek(text, 'YYWW');
    return made === null ? NO_SUCH_WEEK : { made, problem: null };
  }
  if (text.length === 6 && isDigits(text)) return readSixDigits(text);
  const week = parseMarkedWeek(text);
  if (week !== null) return { made: week, problem: null };
  const date = parseIsoLikeDate(text);
  return date === null ? UNCLEAR : { made: dateToIsoWeek(date), problem: null };
}

function readSixDigits(text: string): DateCodeReading {
  const made = parseWeek(text, 'YYYYWW');
  if (made === null) return UNCLEAR;
  const alsoDay =
    parseDate(text, 'YYMMDD') !== null ||
    parseDate(text, 'DDMMYY') !== null ||
    parseDate(text, 'MMDDYY') !== null;
  return alsoDay ? UNCLEAR : { made, problem: null };
}

/** `2026-W44` and `2026W44`, as ISO 8601 writes weeks, and the same with a short year. */
function parseMarkedWeek(text: string): IsoWeek | null {
  const at = text.indexOf('W');
  const yearDigits = text[at - 1] === '-' ? at - 1 : at;
  if ((yearDigits !== 4 && yearDigits !== 2) || text.length !== at + 3) return null;
  return parseWeek(text.slice(0, yearDigits) + text.slice(at + 1), yearDigits === 4 ? 'YYYYWW' : 'YYWW');
}

/** Reads a date code in the format that its identifier, or a site rule, fixes. */
export function readDateAs(text: string, format: DateFormat): DateCodeReading {
  if (format === 'YYWW' || format === 'YYYYWW') {
    const made = parseWeek(text, format);
    if (made !== null) return { made, problem: null };
    return text.length === format.length && isDigits(text) ? NO_SUCH_WEEK : UNCLEAR;
  }
  const date = parseDate(text, format);
  return date === null ? UNCLEAR : { made: dateToIsoWeek(date), problem: null };
}
