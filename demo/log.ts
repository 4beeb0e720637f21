// Writes the demo's entries as tablets write theirs: each tablet its own chain, sealed link by link, on one clock that never
// runs backwards. The demo's tablets have no key, so their entries carry no signature.

import { applyEntry } from '../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../shared/floor/state.ts';
import { tickClock } from '../shared/log/clock.ts';
import { type ClockReading, type Entry, firstPrev } from '../shared/log/entry.ts';
import { sealEntry } from '../shared/log/seal.ts';
import type { DraftEntry } from './plant.ts';

/** The demo's tablets: one at the line, one in the store. */
export const demoTablets = ['demo0-line', 'demo0-store'] as const;
/** Those, and the one at the line of two lanes. */
export type DemoTablet = (typeof demoTablets)[number] | 'demo0-lanes';

/** When, by whom and where an entry is written. */
export interface Writing {
  readonly atMs: number;
  readonly who: string | null;
  readonly tablet?: DemoTablet;
}

/** A log that grows, and the floor as it says. */
export interface DemoLog {
  readonly entries: readonly Entry[];
  readonly state: FloorState;
  readonly write: (draft: DraftEntry, writing: Writing) => Entry;
}

/** The zone's offset from UTC in minutes at a moment. */
export function offsetMinutes(zone: string, atMs: number): number {
  const name = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset' })
    .formatToParts(atMs)
    .find((part) => part.type === 'timeZoneName')?.value;
  const found = /GMT([+-])(\d{2}):(\d{2})/.exec(name ?? '');
  if (!found) return 0;
  return (found[1] === '-' ? -1 : 1) * (Number(found[2]) * 60 + Number(found[3]));
}

/** When the shift of a moment began, which is at the full hour before it: ms since 1970, and minutes after midnight on the zone's clocks. */
export function shiftStartOf(
  zone: string,
  atMs: number,
): { readonly fromMs: number; readonly wallMinute: number } {
  const minute = Math.floor(atMs / 60_000);
  const wall = minute + offsetMinutes(zone, atMs);
  const intoHour = ((wall % 60) + 60) % 60;
  return { fromMs: (minute - intoHour) * 60_000, wallMinute: (((wall - intoHour) % 1440) + 1440) % 1440 };
}

/** Starts an empty log. `epoch` names this life of the tablets; `zone`: IANA name of the plant's zone. */
export function startLog(settings: { readonly epoch: string; readonly zone: string }): DemoLog {
  const entries: Entry[] = [];
  const state = emptyState();
  const heads = new Map<DemoTablet, { seq: number; hash: string }>();
  const offsets = new Map<number, number>();
  let clock: ClockReading | null = null;

  const momentText = (atMs: number) => {
    const hour = Math.floor(atMs / 3_600_000);
    const offset = offsets.get(hour) ?? offsetMinutes(settings.zone, atMs);
    offsets.set(hour, offset);
    const wall = new Date(atMs + offset * 60_000).toISOString().slice(0, -1);
    const minutes = Math.abs(offset);
    const pad = (value: number) => String(Math.floor(value)).padStart(2, '0');
    return `${wall}${offset < 0 ? '-' : '+'}${pad(minutes / 60)}:${pad(minutes % 60)}`;
  };

  return {
    entries,
    state,
    write: (draft, { atMs, who, tablet = 'demo0-line' }) => {
      const head = heads.get(tablet) ?? { seq: 0, hash: firstPrev };
      const wholeMs = Math.round(atMs);
      clock = tickClock(clock, wholeMs);
      const entry = sealEntry({
        v: 1,
        tablet,
        epoch: settings.epoch,
        seq: head.seq + 1,
        at: momentText(wholeMs),
        hlc: clock,
        who,
        kind: draft.kind,
        payload: draft.payload as unknown as Entry['payload'], // JSON by construction of the schemas
        prev: head.hash,
      });
      heads.set(tablet, { seq: entry.seq, hash: entry.hash });
      if (!applyEntry(state, entry)) {
        throw new TypeError(
          `Cannot write as payload must fit its kind: current value is ${JSON.stringify(draft)}`,
        );
      }
      entries.push(entry);
      return entry;
    },
  };
}

/** A log as NDJSON: one entry a line. */
export function logText(entries: readonly Entry[]): string {
  return entries.map((entry) => `${JSON.stringify(entry)}\n`).join('');
}
