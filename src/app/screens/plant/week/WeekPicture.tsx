// One week as a picture: a row a day, midnight to midnight. Shifts are filled, breaks cut into them, overtime and stops have marks and words of
// their own, so that nothing is told by its colour alone.

import { weekWords } from '../../../words/week.ts';
import { say } from '../../../words/words.ts';
import { type Bar, type Weeks, weekRows } from './model.ts';

const DAY_MINUTES = 1440;
const hours = [0, 6, 12, 18, 24];

const clock = (minutes: number) =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

interface WeekPictureProps {
  readonly weeks: Weeks;
  readonly monday: string;
  /** The shift that is being changed, null where none is. */
  readonly open: number | null;
  readonly onOpen: (shift: number) => void;
}

export function WeekPicture({ weeks, monday, open, onOpen }: WeekPictureProps) {
  const words = say(weekWords);
  return (
    <div class="week-picture" data-testid="week-picture" dir="ltr">
      <div class="week-hours" aria-hidden="true">
        {hours.map((hour) => (
          <span key={hour} style={{ insetInlineStart: `${(hour / 24) * 100}%` }}>
            {hour}
          </span>
        ))}
      </div>
      {weekRows(weeks, monday).map((row, day) => (
        <div class="week-day" key={row.date} data-testid={`week-day-${day + 1}`}>
          <span class="week-name">
            <b>{words.days[day]}</b> <span class="soft">{Number(row.date.slice(8))}</span>
          </span>
          <div class="week-track">
            {row.isHoliday && <span class="week-free">{words.holiday}</span>}
            {row.bars.map((bar) => (
              <BarMark
                key={`${bar.kind}${bar.from}${bar.to}${bar.shift}`}
                bar={bar}
                isOpen={bar.shift !== null && bar.shift === open}
                onOpen={onOpen}
              />
            ))}
          </div>
        </div>
      ))}
    </div>
  );
}

function BarMark(props: {
  readonly bar: Bar;
  readonly isOpen: boolean;
  readonly onOpen: (shift: number) => void;
}) {
  const words = say(weekWords);
  const { bar, isOpen, onOpen } = props;
  const { kind, shift } = bar;
  const span = words.span(clock(bar.from), clock(bar.to));
  const style = {
    left: `${(bar.from / DAY_MINUTES) * 100}%`,
    width: `${((bar.to - bar.from) / DAY_MINUTES) * 100}%`,
  };
  const said = `${words.kinds[kind]} ${span}`;
  if (kind === 'shift' && shift !== null)
    return (
      <button
        type="button"
        class="week-bar shift"
        style={style}
        aria-label={said}
        aria-pressed={isOpen}
        onClick={() => onOpen(shift)}
      />
    );
  return <span class={`week-bar ${kind}`} style={style} role="img" aria-label={said} title={said} />;
}
