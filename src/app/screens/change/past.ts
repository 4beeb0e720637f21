// What the log tells of changeovers past: their entries, the pauses in them, the handling times to learn from.

import { changeTimes, learnHandling, type Pause } from '../../../../shared/changeover/times.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { readSince } from '../../read-since.ts';
import type { Store } from '../../store/store.ts';

/** Changeovers of a line that handling times are learnt from: the newest, as hands and machines change. */
const MOST_LEARNT = 10;

/** Handling times of a line as its newest released changeovers show them; nothing of the log is read where there are none. */
export async function learnFromLog(
  store: Store,
  floor: FloorState,
  line: string,
): Promise<ReturnType<typeof learnHandling>> {
  const newest = [...floor.changeovers.values()]
    .filter((each) => each.line === line && each.releasedMs !== null)
    .sort((a, b) => b.beganMs - a.beganMs)
    .slice(0, MOST_LEARNT);
  const oldest = newest.at(-1);
  if (!oldest) return learnHandling([]);
  const entries = await readSince(store, oldest.beganMs);
  return learnHandling(
    newest.map((each) => {
      const nowMs = each.releasedMs ?? each.beganMs;
      const pauses = pausesOf(floor, line, each.beganMs);
      const slots = new Set(floor.setups.get(each.setup)?.slots.map(({ slot }) => slot));
      // A docked cart is a load of many feeders at once, marked by its code: it tells nothing of one feeder.
      return changeTimes(floor, each, { entries, nowMs, pauses }).marks.filter(
        ({ kind, what }) => kind !== 'load' || slots.has(what),
      );
    }),
  );
}

/** Breaks and planned stops of a line around a moment. */
export function pausesOf(floor: FloorState, line: string, atMs: number): readonly Pause[] {
  const { fromMs, toMs } = lineCalendar(floor, line, atMs);
  return Array.from(fromMs, (start, index) => ({ fromMs: start, toMs: toMs[index] ?? start }));
}
