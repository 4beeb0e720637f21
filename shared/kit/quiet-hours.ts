// Hours of each day in which nothing is to be heard. Whose clock and zone count is the caller's business.

/** From when until when on each day, "HH:MM"; over midnight where it ends before it begins. */
export interface QuietHours {
  readonly from: string;
  readonly to: string;
}

/** True within quiet hours at "HH:MM"; where both ends are the same moment, none are set. */
export function isQuietAt(quiet: QuietHours | null, at: string): boolean {
  if (quiet === null || quiet.from === quiet.to) return false;
  return quiet.from < quiet.to ? at >= quiet.from && at < quiet.to : at >= quiet.from || at < quiet.to;
}
