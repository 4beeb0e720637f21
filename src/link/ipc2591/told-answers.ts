// What of an answer does the log not say yet? A machine that asks before each panel is told the same of a hundred places each time: the log has each
// place's answer once, until it is another one, and of the rest how often it was given. Else a year of answers would be larger than all else.

import type { PayloadOf } from '../../../shared/floor/kinds.ts';

type Row = PayloadOf<'station.answered'>['results'][number];

/** Answers that the log had already are told this long after the first of them at the latest, ms. */
export const AGAIN_AFTER_MS = 600_000;
/** Places that are remembered; what is forgotten stands in the log once more. */
const PLACES_MOST = 20_000;

/** What a link has told of its answers since it was started. */
export interface ToldAnswers {
  /** The rows of a question that the log does not have yet. */
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
      return rows.filter((row) => known.get(keyOf(row)) !== texts.get(keyOf(row)));
    },
    told: (rows, fresh, ms) => {
      if (known.size > PLACES_MOST) known.clear();
      for (const [key, text] of textsOf(rows)) known.set(key, text);
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

/** A slot has its answers at a time, one or one a lane; of places that are no slot each reel has its own. */
const keyOf = ({ slot, reel, part }: Row) => (slot === null || slot === '?' ? `?\t${reel}\t${part}` : slot);

function textsOf(rows: readonly Row[]): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  for (const row of rows) {
    const { reel, part, result, why } = row;
    texts.set(keyOf(row), `${texts.get(keyOf(row)) ?? ''}\n${[reel, part, result, why].join('\t')}`);
  }
  return texts;
}
