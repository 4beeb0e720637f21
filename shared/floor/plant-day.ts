// Which day is it in the plant? By the zone of the line's own record, so that a date on a label passes when the plant's day does, not at
// midnight of another zone.

import type { FloorState } from './state.ts';

/** Writes `YYYY-MM-DD` in a zone; made once per zone, since a formatter is slow to make. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const parts = { year: 'numeric', month: '2-digit', day: '2-digit', calendar: 'gregory' } as const;
  let made: Intl.DateTimeFormat;
  try {
    made = new Intl.DateTimeFormat('en-CA', { ...parts, timeZone: zone });
  } catch {
    // A zone that this platform does not know.
    made = new Intl.DateTimeFormat('en-CA', { ...parts, timeZone: 'UTC' });
  }
  formats.set(zone, made);
  return made;
}

/** The plant's day at a moment (ms since 1970) as `YYYY-MM-DD`, by the line's zone; by UTC where line or zone is not known. */
export function plantDay(state: FloorState, line: string, ms: number): string {
  const parts = formatOf(state.lines.get(line)?.zone ?? 'UTC').formatToParts(ms);
  const of = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  return `${of('year')}-${of('month')}-${of('day')}`;
}
