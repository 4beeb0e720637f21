// Is a reel too old by its date code? A line may limit the age of parts class by class; without a rule no age counts.
// Method: a class is what its part numbers begin with, since plants name their parts so; the longest beginning that fits decides. A date
// code tells a week: the part counts as made on the Monday of it, so that none is older than it is said to be.
// Refused: a guess where the code cannot be read; what a rule asks and nobody knows is a lead's to decide.

import { DAY_MS, utcDate } from '../kit/moment.ts';
import { readDateCode } from '../labels/dates.ts';
import type { IsoWeek } from '../labels/reading.ts';
import type { FitReason } from './fits.ts';
import type { FloorState, Reel } from './state.ts';

/** One class of parts: what their numbers begin with (empty: every part), and the most months from the week of making. */
export interface AgeLimit {
  readonly begins: string;
  readonly months: number;
}

/** The months that a line allows a part: by the plant's list, else by the longest beginning that fits; null where no rule is about it. */
export function ageLimitOf(state: FloorState, line: string, part: string): number | null {
  let found: AgeLimit | null = null;
  for (const limit of state.ageLimits.get(line) ?? []) {
    const fits = part.toUpperCase().startsWith(limit.begins.toUpperCase());
    if (fits && (found === null || limit.begins.length > found.begins.length)) found = limit;
  }
  // What the plant's list says of the part itself counts before a class; a line's rule for this very number before both.
  const own = state.listed.get(part)?.ageMonths ?? null;
  return own === null || found?.begins.length === part.length ? (found?.months ?? own) : own;
}

/** The week in which a reel's parts were made, by its date code; null where the code is missing or may mean more than one week. */
export function weekMade(dateCode: string | null | undefined): IsoWeek | null {
  const reading = dateCode ? readDateCode(dateCode) : null;
  return reading?.made ?? null;
}

/** The last day, `YYYY-MM-DD`, on which parts of that week are no older than `months`: the same day of the month, or the month's last. */
export function lastDayOfAge(made: IsoWeek, months: number): string {
  const monday = mondayOf(made);
  const day = monday.getUTCDate();
  const first = new Date(Date.UTC(monday.getUTCFullYear(), monday.getUTCMonth() + months, 1));
  const days = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
  first.setUTCDate(Math.min(day, days));
  return utcDate(first.getTime());
}

function mondayOf({ year, week }: IsoWeek): Date {
  // ISO 8601: 4 January lies in week 1.
  const fourth = Date.UTC(year, 0, 4);
  const weekday = new Date(fourth).getUTCDay() || 7;
  return new Date(fourth + ((week - 1) * 7 + 1 - weekday) * DAY_MS);
}

/** What a date code reads like for people: `2024-W07`. */
export function weekText({ year, week }: IsoWeek): string {
  return `${year}-W${String(week).padStart(2, '0')}`;
}

/**
 * Why a lead must decide on a reel's age. `today`: the plant's own day. `standsSince`: the day since which it stands on its slot, null where
 * that is not known: it was let there, so that only an age that passed since counts; absent for a reel that comes.
 */
export function dateCodeReasons(
  state: FloorState,
  at: { readonly line: string; readonly part: string },
  reel: { readonly dateCode?: string | null },
  age: { readonly today: string; readonly standsSince?: string | null },
): readonly FitReason[] {
  const months = ageLimitOf(state, at.line, at.part);
  if (months === null) return [];
  const { today, standsSince } = age;
  const dateCode = reel.dateCode ?? null;
  const made = weekMade(dateCode);
  if (made === null)
    return standsSince === undefined ? [{ code: 'date-code-unknown', dateCode, months }] : [];
  const last = lastDayOfAge(made, months);
  if (today <= last || (standsSince && last < standsSince)) return [];
  return [{ code: 'date-code-old', dateCode, made: weekText(made), months, last }];
}

/** A reel of the same part that should go first. */
export interface OlderReel {
  readonly reel: Reel;
  readonly why: 'expires' | 'made';
}

/**
 * The reel in the store that should be used before this one: of the same part, not blocked, not known to be empty, put away at a place that
 * somebody named; earlier to expire, or, where that does not tell them apart, of an older week. Null where the log knows of none. Cost: one
 * walk over the reels.
 */
export function olderInStore(
  state: FloorState,
  part: string,
  asked: {
    readonly reel: string | null;
    readonly dateCode?: string | null;
    readonly expires?: string | null;
    readonly isBlocked: (reel: Reel) => boolean;
  },
): OlderReel | null {
  const own = { made: weekMade(asked.dateCode), expires: asked.expires ?? null };
  let first: { readonly reel: Reel; readonly why: OlderReel['why']; readonly key: string } | null = null;
  for (const reel of state.reels.values()) {
    if (reel.part !== part || reel.at !== null || reel.place === undefined || reel.count === 0) continue;
    if (reel.reel === asked.reel || asked.isBlocked(reel)) continue;
    const made = weekMade(reel.dateCode);
    const expires = state.expiries.get(reel.reel) ?? null;
    const isSooner = expires !== null && own.expires !== null && expires < own.expires;
    const isLater = expires !== null && own.expires !== null && expires > own.expires;
    const isOlder = made !== null && own.made !== null && weekText(made) < weekText(own.made);
    if (!isSooner && (isLater || !isOlder)) continue;
    const why = isSooner ? 'expires' : 'made';
    const key = `${isSooner ? `0${expires}` : '1'}#${made === null ? '9' : weekText(made)}#${reel.reel}`;
    if (first === null || key < first.key) first = { reel, why, key };
  }
  return first && { reel: first.reel, why: first.why };
}
