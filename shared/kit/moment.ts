// How a moment is written down: with the offset of the place where it was read; and a day, where a zone plays no part.

/** A day of 24 hours, ms. Days of a plant may be an hour longer or shorter: its zone tells. */
export const DAY_MS = 86_400_000;

/** The date of a moment in UTC, `2026-03-02`. */
export function utcDate(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}

/** A moment as ISO 8601 with the tablet's own offset, e.g. `2026-03-02T06:00:00.000+01:00`. */
export function formatMoment(ms: number): string {
  const offset = -new Date(ms).getTimezoneOffset();
  const sign = offset < 0 ? '-' : '+';
  const pad = (value: number) => String(Math.floor(Math.abs(value))).padStart(2, '0');
  return `${new Date(ms + offset * 60_000).toISOString().slice(0, -1)}${sign}${pad(offset / 60)}:${pad(offset % 60)}`;
}
