// Is a machine's clock right? Its messages say local time, mostly without a zone. Nothing is dated by it; a clock that is off is told.
// Method: zones lie a whole number of quarters of an hour apart, at most fourteen hours from the true time: what is left over is the fault.
// A clock that is wrong by whole quarters looks like another zone and is not found.

/** A clock further off is told, ms. */
const OFF_MS = 5 * 60_000;
const QUARTER_MS = 15 * 60_000;
const ZONE_MOST_MS = 14 * 3_600_000;

/** What the clock says, where that cannot be the true time in any zone; null where it may be, or says nothing. */
export function clockFault(said: string | null, wallMs: number): string | null {
  if (said === null) return null;
  const parts = /^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2})(?:[.,]\d{1,9})?(Z|[+-]\d{2}:?\d{2})?$/.exec(said);
  const at = Date.parse(`${parts?.[1]}${parts?.[2] ?? 'Z'}`);
  if (!parts || Number.isNaN(at)) return said.slice(0, 40);
  const apart = at - wallMs;
  const rest = parts[2] === undefined ? apart - Math.round(apart / QUARTER_MS) * QUARTER_MS : apart;
  return Math.abs(rest) > OFF_MS || Math.abs(apart) > ZONE_MOST_MS + OFF_MS ? said : null;
}
