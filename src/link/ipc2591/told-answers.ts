// What of an answer does the log not say yet? A machine that asks before each panel is told the same of a hundred places each time: the log has each
// place's answer once, until it is another one, and of the rest how often it was given. Else a year of answers would be larger than all else.

import { type AnsweredRow, answeredKey, elsewhereKey, isOfSlot } from '../../../shared/floor/interlock.ts';
import { chunksOf } from '../../../shared/kit/chunks.ts';

type Row = AnsweredRow;

/** Answers that the log had already are told this long after the first of them at the latest, ms. */
export const AGAIN_AFTER_MS = 600_000;
/** Places that are remembered; what is forgotten stands in the log once more. */
const PLACES_MOST = 20_000;
/** Rows of one entry. */
const ROWS = 200;

/** What a link has told of its answers since it was started. */
export interface ToldAnswers {
  /** The rows of a question that the log does not have yet, and those that the floor drops with what is news of a slot. */
  readonly fresh: (rows: readonly Row[]) => readonly Row[];
  /** All rows of a question are in the log now, `fresh` of them anew: the others are counted. `ms`: of a clock that never jumps. */
  readonly told: (rows: readonly Row[], fresh: readonly Row[], ms: number) => void;
  /** To how many questions it gave answers that the log had; 0 where to none, or where that may wait: it is `ms` now; null = it may not wait. */
  readonly again: (ms: number | null) => number;
  /** So many of them are in the log now. */
  readonly toldAgain: (times: number) => void;
}

/** Opens it with nothing told: the first answer after a start is whole. */
export function openToldAnswers(): ToldAnswers {
  const known = new Map<string, string>();
  let [times, fromMs] = [0, 0];
  return {
    fresh: (rows) => {
      const texts = textsOf(rows);
      const isNews = (row: Row) => known.get(answeredKey(row)) !== texts.get(answeredKey(row));
      const dropped = new Set(rows.filter((row) => isOfSlot(row) && isNews(row)).map(elsewhereKey));
      return rows.filter((row) => isNews(row) || dropped.has(answeredKey(row)));
    },
    told: (rows, fresh, ms) => {
      if (known.size > PLACES_MOST) known.clear();
      // The floor drops what was said of a reel at no slot once a slot names it.
      for (const row of fresh) if (isOfSlot(row)) known.delete(elsewhereKey(row));
      for (const [key, text] of textsOf(fresh)) known.set(key, text);
      if (fresh.length === rows.length) return;
      if (times === 0) fromMs = ms;
      times += 1;
    },
    again: (ms) => (ms !== null && ms - fromMs < AGAIN_AFTER_MS ? 0 : times),
    toldAgain: (many) => {
      times -= many;
    },
  };
}

/**
 * Rows cut into pages of one entry each: all of a place in one, since a later page replaces what an earlier one said of it; and slots first, since
 * they drop what was said of their reels elsewhere.
 */
export function answerPages(rows: readonly Row[]): readonly (readonly Row[])[] {
  const places = new Map<string, Row[]>();
  for (const row of [...rows.filter(isOfSlot), ...rows.filter((each) => !isOfSlot(each))]) {
    const there = places.get(answeredKey(row));
    if (there) there.push(row);
    else places.set(answeredKey(row), [row]);
  }
  const pages: Row[][] = [];
  for (const place of places.values()) {
    const last = pages.at(-1);
    if (last && last.length + place.length <= ROWS) last.push(...place);
    // More of one place than an entry takes.
    else pages.push(...chunksOf(place, ROWS));
  }
  return pages;
}

function textsOf(rows: readonly Row[]): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  for (const row of rows) {
    const { reel, part, result, why } = row;
    const key = answeredKey(row);
    texts.set(key, `${texts.get(key) ?? ''}\n${[reel, part, result, why].join('\t')}`);
  }
  return texts;
}
