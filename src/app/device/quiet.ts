// Is it a time at which this tablet makes no sound? By the tablet's own clock and zone: it hangs where its people are.

/** From when until when on each day, "HH:MM"; over midnight where it ends before it begins. */
export interface QuietHours {
  readonly from: string;
  readonly to: string;
}

/** True within quiet hours; where both ends are the same moment, none are set. */
export function isQuiet(quiet: QuietHours | null, now: Date): boolean {
  if (quiet === null || quiet.from === quiet.to) return false;
  const at = `${String(now.getHours()).padStart(2, '0')}:${String(now.getMinutes()).padStart(2, '0')}`;
  return quiet.from < quiet.to ? at >= quiet.from && at < quiet.to : at >= quiet.from || at < quiet.to;
}
