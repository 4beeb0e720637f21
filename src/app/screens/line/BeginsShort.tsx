// Reels that run short as soon as the run begins, said before it begins, with what to do.

import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { beginsShort, type PlannedRun } from '../../../../shared/outlook/begin.ts';
import { useApp, useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { formatCount, formatSpan, say } from '../../words/words.ts';
import './begins-short.css';

/** Slots listed; the soonest come first. */
const SHOWN = 12;

/** `planned`: the run as it is being entered; absent: one like the last. `onSplice`: absent where a dialog stands before the slots, which names them only. */
export function BeginsShort(props: {
  readonly line: string;
  readonly planned?: PlannedRun;
  readonly onSplice?: (slot: string) => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(lineWords);
  const { line, planned, onSplice } = props;
  const nowMs = app.clock.nowMs();
  const calendar = lineCalendar(floor, line, nowMs);
  const short = beginsShort(floor, line, { nowMs, calendar, ...(planned && { planned }) });
  if (short.length === 0) return null;
  return (
    <div class="beginsshort" role="status" data-testid="begins-short">
      <p>
        <Icon name="warn" />
        <span>
          <b>{words.beginsShort(short.length)}</b>
          <br />
          <span class="soft">{words.beginsShortAct}</span>
        </span>
      </p>
      {onSplice ? (
        <ul>
          {short.slice(0, SHOWN).map(({ slot, wanted, loaded, forecast, estimate }) => (
            <li key={slot} data-testid={`short-${slot}`}>
              <span>
                <b class="code">{slot}</b>{' '}
                <span class="code">{loaded.tapes.at(-1)?.part || wanted.part}</span>
                <br />
                {words.parts(Math.round(estimate.parts ?? 0))} ·{' '}
                {words.shortAfter(formatSpan(Math.max(0, forecast.runOutMs.expected - nowMs) / 1000))}
              </span>
              <Button
                onPress={() => onSplice(slot)}
                label={`${words.splice} ${slot}`}
                testId={`short-splice-${slot}`}
              >
                {words.splice}
              </Button>
            </li>
          ))}
        </ul>
      ) : (
        <p class="code">
          {short.slice(0, SHOWN).map(({ slot }) => (
            <span key={slot}>{slot}</span>
          ))}
        </p>
      )}
      {short.length > SHOWN && (
        <p class="soft">{words.firstOf(formatCount(SHOWN), formatCount(short.length))}</p>
      )}
    </div>
  );
}
