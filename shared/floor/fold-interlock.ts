// Whether a station's link answers its machine, what it answered last, and which reel a verdict last refused on a slot.

import { entryId } from '../log/entry.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import { type FloorState, slotKey } from './state.ts';

/** Places of a station whose last answer is kept. */
const PLACES_MOST = 2_000;

/** A slot has one last answer; of places that are no slot each reel has its own. */
const placeOf = ({ slot, reel, part }: PayloadOf<'station.answered'>['results'][number]) =>
  slot === null || slot === '?' ? `?\t${reel}\t${part}` : slot;

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
      const before = there.last?.results ?? [];
      const isSaid = new Set(results.map(placeOf));
      const rest = before.filter((row) => !isSaid.has(placeOf(row)));
      const all = [...rest, ...results].slice(-PLACES_MOST);
      state.interlocks.set(station, { ...there, last: { atMs: entry.hlc.ms, results: all } });
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
