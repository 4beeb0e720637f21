// Whether a station's link answers its machine, what it answered last, and which reel a verdict last refused on a slot.

import { entryId } from '../log/entry.ts';
import type { EntryOf } from './kinds.ts';
import { type FloorState, slotKey } from './state.ts';

/** Applies one entry to what is answered: the engineer's word, an answer, a verdict that refused a reel or let it on. */
export function foldInterlock(
  state: FloorState,
  entry: EntryOf<'station.interlock-ruled' | 'station.answered' | 'reel.verified'>,
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
      state.interlocks.set(station, { ...there, last: { atMs: entry.hlc.ms, results } });
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
