// A moment to come or gone, as every time on the line is told: by the clock and by how far away it is.

import { lineWords } from '../../words/line.ts';
import { comma, formatSpan, formatTime, say } from '../../words/words.ts';

/** From when a moment is told, and in which zone. */
export interface Beheld {
  readonly nowMs: number;
  readonly zone: string;
}

/** `14:07, in 23 min`, or `14:07, 12 min ago`. */
export function sayMoment(ms: number, at: Beheld): string {
  return sayDistance(ms, formatTime(ms, at.zone), at.nowMs);
}

/** The same where the clock is told otherwise, such as with its day. */
export function sayDistance(ms: number, clock: string, nowMs: number): string {
  const words = say(lineWords);
  const seconds = (ms - nowMs) / 1000;
  return seconds >= 0 ? words.soon(clock, formatSpan(seconds)) : words.gone(clock, formatSpan(-seconds));
}

/** Two moments as one stretch: `between 14:02 and 14:12, in 18 min to 28 min`. What is gone already counts as now. */
export function sayStretch(
  sayClocks: (from: string, to: string) => string,
  [fromMs, toMs]: readonly [fromMs: number, toMs: number],
  { nowMs, zone }: Beheld,
): string {
  const words = say(lineWords);
  const clocks = sayClocks(formatTime(fromMs, zone), formatTime(toMs, zone));
  if (toMs <= nowMs) return `${clocks}${comma()}${words.ago(formatSpan((nowMs - toMs) / 1000))}`;
  const span = (ms: number) => formatSpan(Math.max(0, ms - nowMs) / 1000);
  return `${clocks}${comma()}${words.inRange(span(fromMs), span(toMs))}`;
}
