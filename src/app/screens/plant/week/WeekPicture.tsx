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
}

export function WeekPicture({ weeks, monday, open }: WeekPictureProps) {
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
            {row.bars.map((bar) => (
              <BarMark
                key={`${bar.kind}${bar.from}${bar.to}${bar.shift}`}
                bar={bar}
                isOpen={bar.shift !== null && bar.shift === open}
              />
            ))}
          </div>
          {row.isHoliday && <span class="week-free">{words.holiday}</span>}
        </div>
      ))}
    </div>
  );
}

function BarMark({ bar, isOpen }: { readonly bar: Bar; readonly isOpen: boolean }) {
  const words = say(weekWords);
  const { kind } = bar;
  const span = words.span(clock(bar.from), clock(bar.to));
  const style = {
    left: `${(bar.from / DAY_MINUTES) * 100}%`,
    width: `${((bar.to - bar.from) / DAY_MINUTES) * 100}%`,
  };
  const said = `${words.kinds[kind]} ${span}`;
  return (
    <span
      class={`week-bar ${kind}${isOpen ? ' open' : ''}`}
      style={style}
      role="img"
      aria-label={said}
      title={said}
    />
  );
}
