// What the plant knows of packages and of the moisture standard, and the times on labels.

import { entryId } from '../log/entry.ts';
import type { EntryOf } from './kinds.ts';
import { MOISTURE_RULES, rulingOf } from './moisture-rules.ts';
import type { FloorState } from './state.ts';

/** Kinds that this fold handles. */
type MoistureEntry = EntryOf<'part.described' | 'moisture.ruled' | 'reel.timed' | 'entry.corrected'>;

/** Applies one entry to what is known of packages, values and labels. */
export function foldMoisture(state: FloorState, entry: MoistureEntry): void {
  switch (entry.kind) {
    case 'part.described':
      state.parts.set(entry.payload.part, entry.payload);
      return;
    case 'moisture.ruled': {
      const told = { entry: entryId(entry), by: entry.who, atMs: entry.hlc.ms };
      state.moisture.set(MOISTURE_RULES, rulingOf(entry.payload, told));
      return;
    }
    case 'reel.timed':
      state.labelTimes.set(entry.payload.reel, { hours: entry.payload.hours, entry: entryId(entry) });
      return;
    case 'entry.corrected':
      for (const [reel, told] of state.labelTimes)
        if (told.entry === entry.payload.of) state.labelTimes.delete(reel);
      return;
    default:
      entry satisfies never;
  }
}
