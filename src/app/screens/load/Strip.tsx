// How far the line is, in one line, and what the marks of the map mean.

import type { SetupProgress } from '../../../../shared/floor/progress.ts';
import { loadWords } from '../../words/load.ts';
import { formatCount, say } from '../../words/words.ts';
import { counted, countStandings, type MapBank } from './model.ts';
import { marks } from './SlotMap.tsx';

interface StripProps {
  readonly progress: SetupProgress;
  readonly banks: readonly MapBank[];
}

export function Strip({ progress, banks }: StripProps) {
  const words = say(loadWords);
  const { verified, slots, next } = progress;
  const counts = countStandings(banks);
  const share = slots.length === 0 ? 0 : verified / slots.length;
  return (
    <div class="load-strip">
      <b data-testid="load-progress">{words.of(formatCount(verified), formatCount(slots.length))}</b>
      <span class="progressbar">
        <i style={{ width: `${share * 100}%` }} />
      </span>
      <span>
        <i class="legend-mark verified">{marks.verified}</i> {words.legend.verified}
      </span>
      {next !== null && (
        <span>
          <i class="legend-mark next">{marks.next}</i> {words.legend.next}
        </span>
      )}
      {counted.map((is) => {
        const count = counts.get(is) ?? 0;
        return count === 0 ? null : (
          <span key={is}>
            <i class={`legend-mark ${is}`}>{marks[is]}</i> {words.counts[is](formatCount(count))}
          </span>
        );
      })}
      {(['seen', 'spare'] as const).map((is) =>
        counts.has(is) ? (
          <span key={is}>
            <i class={`legend-mark ${is}`}>{marks[is]}</i> {words.legend[is]}
          </span>
        ) : null,
      )}
    </div>
  );
}
