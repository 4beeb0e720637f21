// After how long without a touch is whoever is signed in signed out, and after how long at the latest? A line's own minutes, else the
// usual ones; at the latest after its longest shift. Never was refused: a tablet left alone would sign for whoever was last there.

import type { LineRules } from './state.ts';

/** Minutes without a touch where nobody set others. Common practice for a shared tablet on a floor. */
export const IDLE_MINUTES = 30;
/** The longest shift where the line has none entered, hours. */
const SHIFT_HOURS = 8;
const DAY_MINUTES = 24 * 60;

/** Both in ms. */
export interface SignOutLimits {
  readonly idleMs: number;
  readonly shiftMs: number;
}

/** The length of a line's longest shift in minutes, 1..1440; eight hours where none is entered. */
export function longestShiftMinutes(rules: Pick<LineRules, 'shifts'> | undefined): number {
  const lengths = (rules?.shifts ?? []).map(({ from, to }) => {
    const minutes = minutesOf(to) - minutesOf(from);
    return minutes > 0 ? minutes : minutes + DAY_MINUTES;
  });
  return lengths.length === 0 ? SHIFT_HOURS * 60 : Math.max(...lengths);
}

/** When somebody on this line is signed out. `idleMinutes`: as ruled, undefined where nobody did; never longer than a shift. */
export function signOutLimits(
  rules: Pick<LineRules, 'shifts'> | undefined,
  idleMinutes: number | undefined,
): SignOutLimits {
  const shift = longestShiftMinutes(rules);
  return { idleMs: Math.min(idleMinutes ?? IDLE_MINUTES, shift) * 60_000, shiftMs: shift * 60_000 };
}

function minutesOf(wallClock: string): number {
  const [hours = 0, minutes = 0] = wallClock.split(':').map(Number);
  return hours * 60 + minutes;
}
