// Reads the hour at which browser tests are to run.

const DAY_MS = 86_400_000;

/**
 * How far a clock must be put ahead (or back, where that is nearer) so that it shows an hour of the day, ms.
 *
 * @param at `HH:MM` in the zone of this process.
 * @throws RangeError where it is no hour.
 */
export function aheadOf(at: string, now: Date): number {
  const [, hours, minutes] = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(at) ?? [];
  if (hours === undefined || minutes === undefined)
    throw new RangeError(`Cannot set the clock as REELWARD_AT must be HH:MM: current value is ${at}`);
  const wanted = new Date(now);
  wanted.setHours(Number(hours), Number(minutes), 0, 0);
  const aheadMs = wanted.getTime() - now.getTime();
  if (aheadMs > DAY_MS / 2) return aheadMs - DAY_MS;
  return aheadMs < -DAY_MS / 2 ? aheadMs + DAY_MS : aheadMs;
}
