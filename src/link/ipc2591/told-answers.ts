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
  /** The rows of a question that the log does not have yet; the others are counted. `ms`: of a clock that never jumps. */
  readonly fresh: (rows: readonly Row[], ms: number) => readonly Row[];
  /** To how many questions it gave such, once; 0 where none, or where that may wait: it is `ms` now; null = it may not wait. */
  readonly again: (ms: number | null) => number;
}

/** Opens it with nothing told: the first answer after a start is whole. */
export function openToldAnswers(): ToldAnswers {
  const told = new Map<string, string>();
  let counted = { times: 0, fromMs: 0 };
  return {
    fresh: (rows, ms) => {
      if (told.size > PLACES_MOST) told.clear();
      const fresh = rows.filter((row) => told.get(keyOf(row)) !== textOf(row));
      for (const row of fresh) told.set(keyOf(row), textOf(row));
      if (fresh.length < rows.length)
        counted = { times: counted.times + 1, fromMs: counted.times === 0 ? ms : counted.fromMs };
      return fresh;
    },
    again: (ms) => {
      const { times, fromMs } = counted;
      if (ms !== null && ms - fromMs < AGAIN_AFTER_MS) return 0;
      counted = { times: 0, fromMs: 0 };
      return times;
    },
  };
}

/** A slot has one answer at a time; of places that are no slot each reel has its own. */
const keyOf = ({ slot, reel, part }: Row) => (slot === null || slot === '?' ? `?\t${reel}\t${part}` : slot);
const textOf = ({ reel, part, result, why }: Row) => [reel, part, result, why].join('\t');
