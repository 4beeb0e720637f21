// When does a reel run out if the line stops as often as it did so far? Only where a machine tells its stops, and has for long enough.
// Method: the share of the run's working time in which it stood stretches what is still to be worked. A stop that lasts is left out, since nobody
// knows its end. It is said beside the run-out and nothing is asked of it: windows, warnings and walks hold if the line keeps running, and so
// come too early by the stops to come, never too late.
// Refused: to put it into the run-out itself. In an hour without a stop people would come too late.

import type { LineTold } from '../floor/told-states.ts';
import { type WorkingTime, workingMoment, workingSeconds } from '../forecast/working-time.ts';
import type { Outlook, SlotOutlook } from './line.ts';

/** So long, s of working time, and so many stops, before anything is learnt of them. Made up: no source has a figure. */
const LEARN_SECONDS = 3600;
const LEARN_STOPS = 3;
/** A line that stands for more of its time than this is not one that stops now and then. Made up: no source has a figure. */
const SHARE_MOST = 0.5;

/**
 * The share of a run's working time, from 0 to 0.5, in which its line stood as a machine tells; null where that is not known long enough, or
 * is more. `told`: of `lineTold`; `calendar`: of `lineCalendar`; `nowMs`: ms since 1970. Never throws.
 */
export function stoppedShare(told: LineTold | null, calendar: WorkingTime, nowMs: number): number | null {
  if (!told?.isHeard) return null;
  const ended = told.stops.flatMap(({ fromMs, toMs }) =>
    toMs === null ? [] : [{ fromMs: Math.max(fromMs, told.sinceMs), toMs: Math.min(toMs, nowMs) }],
  );
  const open = told.stops.find(({ toMs }) => toMs === null);
  const worked = workingSeconds(calendar, told.sinceMs, Math.min(nowMs, open?.fromMs ?? nowMs));
  if (worked < LEARN_SECONDS || ended.length < LEARN_STOPS) return null;
  const stood = ended.reduce(
    (sum, { fromMs, toMs }) => sum + Math.max(0, workingSeconds(calendar, fromMs, toMs)),
    0,
  );
  const share = stood / worked;
  return share > 0 && share <= SHARE_MOST ? share : null;
}

/** When a slot runs out if the line goes on stopping as it did so far, ms since 1970; null where that is not known. */
export function runOutWithStops(
  { told, calendar, pace, basis }: Pick<Outlook, 'told' | 'calendar' | 'pace' | 'basis'>,
  { forecast }: Pick<SlotOutlook, 'forecast'>,
): number | null {
  const share = stoppedShare(told, calendar, pace.nowMs);
  if (share === null) return null;
  // From now on only: what was worked since the last count is over.
  const leftSeconds = workingSeconds(basis.calendar, pace.nowMs, forecast.runOutMs.expected);
  return leftSeconds <= 0 ? null : workingMoment(basis.calendar, pace.nowMs, leftSeconds / (1 - share));
}
