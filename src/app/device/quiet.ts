// Is it a time at which this tablet makes no sound? By the tablet's own clock and zone: it hangs where its people are.

import { isQuietAt, type QuietHours } from '../../../shared/kit/quiet-hours.ts';

export type { QuietHours };

/** True within quiet hours; where both ends are the same moment, none are set. */
export function isQuiet(quiet: QuietHours | null, now: Date): boolean {
  const at = `${String(now.getHours()).padStart(2, '0')}:${String(now.getMinutes()).padStart(2, '0')}`;
  return isQuietAt(quiet, at);
}
