// Whether a station's link answers its machine, what it answered last, and which reel a verdict last refused on a slot.

import { entryId } from '../log/entry.ts';
import { type AnsweredRow, answeredKey, elsewhereKey, isOfSlot } from './interlock.ts';
import type { EntryOf } from './kinds.ts';
import { type FloorState, slotKey } from './state.ts';

/** Answers that are kept of places that are no slot: the line's own slots are all kept. */
const ELSEWHERE_MOST = 100;

/** What each place was answered last: a slot by its name, of places that are no slot each reel, until it is answered of elsewhere. */
function lastOf(before: readonly AnsweredRow[], results: readonly AnsweredRow[]): AnsweredRow[] {
  const answered = new Set(results.flatMap((row) => [answeredKey(row), elsewhereKey(row)]));
  const all = [...before.filter((row) => !answered.has(answeredKey(row))), ...results];
  const elsewhere = all.filter((row) => !isOfSlot(row)).slice(-ELSEWHERE_MOST);
  return [...all.filter(isOfSlot), ...elsewhere];
}

/** Applies one entry to what is answered: the engineer's word, an answer, a verdict that refused a reel or let it on. */
export function foldInterlock(
  state: FloorState,
  entry: EntryOf<'station.interlock-ruled' | 'station.answered' | 'station.answered-again' | 'reel.verified'>,
): void {
  switch (entry.kind) {
    case 'station.interlock-ruled': {
      const { station, on, unsure } = entry.payload;
      const last = state.interlocks.get(station)?.last ?? null;
      state.interlocks.set(station, { on, unsure, ruled: entryId(entry), last });
      return;
    }
    case 'station.answered': {
      const { station, results } = entry.payload;
      // Where the engineer's tablet has the later clock, the answer comes before the word that let it.
      const there = state.interlocks.get(station) ?? {
        on: false,
        unsure: 'Warning',
        ruled: null,
        last: null,
      };
      const last = { atMs: entry.hlc.ms, results: lastOf(there.last?.results ?? [], results) };
      state.interlocks.set(station, { ...there, last });
      return;
    }
    case 'station.answered-again': {
      const { station } = entry.payload;
      const there = state.interlocks.get(station);
      if (there?.last)
        state.interlocks.set(station, { ...there, last: { ...there.last, atMs: entry.hlc.ms } });
      return;
    }
    case 'reel.verified': {
      const { line, slot, reel, verdict } = entry.payload;
      if (slot === null) return;
      if (verdict === 'refused') state.refused.set(slotKey(line, slot), reel ?? '');
      else state.refused.delete(slotKey(line, slot));
      return;
    }
    default:
      entry satisfies never;
  }
}
