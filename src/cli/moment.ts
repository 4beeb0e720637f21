// Moments on the command line: ISO 8601 with offset in, the same offset out, so that an answer reads on the asker's own clock.

import { z } from 'zod';
import { NotUnderstood } from './command.ts';

const momentForm =
  /^(\d{4}-\d\d-\d\d)T(?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d+)?)?(Z|[+-](?:[01]\d|2[0-3]):[0-5]\d)$/;

function offsetMinutes(offset: string): number {
  if (offset === 'Z') return 0;
  const [hours = 0, minutes = 0] = offset.slice(1).split(':').map(Number);
  return (offset.startsWith('-') ? -1 : 1) * (hours * 60 + minutes);
}

/** The offset of a moment's text: `Z` or `+01:00`. */
export function offsetOf(moment: string): string {
  return momentForm.exec(moment)?.[2] ?? 'Z';
}

/** 30 February is turned into another day by Date.parse: the day read back gives it away. */
function isMoment(text: string): boolean {
  const day = momentForm.exec(text)?.[1];
  const ms = Date.parse(text);
  if (day === undefined || Number.isNaN(ms)) return false;
  return new Date(ms + offsetMinutes(offsetOf(text)) * 60_000).toISOString().startsWith(day);
}

/** A moment such as 2026-03-02T06:00:00+01:00; the offset is required. */
export const momentSchema = z.string('expected a moment such as 2026-03-02T06:00:00+01:00').refine(isMoment, {
  error: 'expected a moment such as 2026-03-02T06:00:00+01:00, with its offset',
});

/** Writes a moment (ms since 1970, rounded to the ms) at an offset; a fraction of a second only where there is one. */
export function formatMoment(ms: number, offset: string): string {
  const shifted = Math.round(ms) + offsetMinutes(offset) * 60_000;
  const text = Math.abs(shifted) <= 8.64e15 ? new Date(shifted).toISOString() : '';
  if (!/^\d{4}-/.test(text))
    throw new NotUnderstood('the answer lies beyond the year 9999: expected nearer figures');
  return text.replace(/(\.000)?Z$/, offset);
}
