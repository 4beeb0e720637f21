// Scanned panels in the index: each under its code and under its place in the run's order of counting.

import type { FloorEntry } from '../floor/kinds.ts';
import type { Run } from '../floor/state.ts';
import { codeKey } from '../floor/tally.ts';
import { entryId } from '../log/entry.ts';
import type { TraceIndex } from './stretches.ts';

/** A panel that was scanned: its code and its place in the run's order of counting. */
export interface SerialPanel {
  readonly run: string;
  readonly panel: number;
  readonly serial: string;
  readonly at: string;
}

/** An entry that counts panels, and may tell one's code. */
export type Coded = FloorEntry & { kind: 'panels.counted' | 'station.counted' };

/** Puts the panel that an entry scanned into the index. */
export function takeSerial(index: TraceIndex, entry: Coded, run: Run | undefined): void {
  const { serial } = entry.payload;
  if (serial === null || !run) return;
  const coded = index.state.codes.get(codeKey(run.run, serial));
  // A code that was counted before has another entry.
  if (coded?.entry !== entryId(entry)) return;
  addSerial(index, { run: run.run, panel: coded.tally, serial, at: entry.at });
}

/** Puts a scanned panel under its code and under its place. */
export function addSerial(index: TraceIndex, scanned: SerialPanel): void {
  const { run, panel, serial } = scanned;
  const others = (index.serials.get(serial) ?? []).filter((each) => each.run !== run || each.panel !== panel);
  index.serials.set(serial, [...others, scanned]);
  const byPanel = index.serialByPanel.get(run) ?? new Map<number, string>();
  byPanel.set(panel, serial);
  index.serialByPanel.set(run, byPanel);
}
