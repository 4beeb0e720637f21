// The labels of the time axis: now, times of the clock, where nobody works, and the walks as marks.

import type { WorkingTime } from '../../../../shared/forecast/working-time.ts';
import type { PlannedWalk } from '../../../../shared/outlook/walks.ts';
import { lineWords } from '../../words/line.ts';
import { formatTime, say } from '../../words/words.ts';
import { type Geometry, ticksShown } from './axis.ts';

/** Side of a walk's mark, px with letters of the usual size. */
const MARK_PX = 24;

export function Axis(props: {
  readonly geometry: Geometry;
  readonly calendar: WorkingTime;
  readonly walks: readonly PlannedWalk[];
}) {
  const words = say(lineWords);
  const { geometry, calendar, walks } = props;
  const { nowMs, zone, width, toX } = geometry;
  const stops = calendar.fromMs
    .map((fromMs, index) => ({ fromMs, toMs: calendar.toMs[index] ?? fromMs }))
    .filter((stop) => stop.toMs > nowMs && toX(stop.fromMs) < width);
  return (
    <>
      <i style={{ left: 0 }}>{words.now}</i>
      {ticksShown(geometry, words.now).map((ms) => (
        <i key={ms} style={{ left: `${toX(ms)}px` }}>
          {formatTime(ms, zone)}
        </i>
      ))}
      {stops.map((stop) => (
        <span
          key={stop.fromMs}
          class="standstill"
          title={words.shiftBreak}
          style={{
            left: `${toX(stop.fromMs)}px`,
            width: `${Math.min(width, toX(stop.toMs)) - toX(stop.fromMs)}px`,
          }}
        />
      ))}
      {marksOf(walks, geometry).map(({ number, left }) => (
        <span key={number} class="walkmark" aria-hidden="true" style={{ left: `${left}px` }}>
          {number}
        </span>
      ))}
    </>
  );
}

/** A mark that has to make room for the one before it stands this much beside its moment at most, px. */
const ASIDE_PX = 12;

/** Where each walk's mark stands: at its moment, or a little beside it. Those without room are left out: the rows and the list have them. */
export function marksOf(
  walks: readonly PlannedWalk[],
  { toX, width, scale }: Pick<Geometry, 'toX' | 'width' | 'scale'>,
): readonly { readonly number: number; readonly left: number }[] {
  const marks: { number: number; left: number }[] = [];
  const side = MARK_PX * scale;
  let free = 0;
  for (const [index, { startMs }] of walks.entries()) {
    const left = Math.max(free, toX(startMs));
    if (left > width - side) break;
    if (left - toX(startMs) > ASIDE_PX) continue;
    marks.push({ number: index + 1, left });
    free = left + side + 2;
  }
  return marks;
}
