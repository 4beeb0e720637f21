// Where the minutes went, drawn: a lane for each person, numbers that the list below explains, stops hatched across.

import type { ChangeTimes, Pause, TimeMark } from '../../../../shared/changeover/times.ts';
import { timesWords } from '../../words/times.ts';
import { formatCount, formatSpan, say } from '../../words/words.ts';
import { pictureTimes, type Stretch } from './times-picture.ts';
import './times.css';

interface TimesPictureProps {
  readonly times: ChangeTimes;
  readonly beganMs: number;
  readonly pauses: readonly Pause[];
  /** The acts that the list explains, longest first: each carries its number. */
  readonly listed: readonly TimeMark[];
  readonly isOutside: (mark: TimeMark) => boolean;
  readonly nameOf: (mark: TimeMark) => string;
  readonly personOf: (who: string | null) => string;
}

const placed = ({ left, width }: Stretch) => ({ left: `${left}%`, width: `${width}%` });
/** Percent of the breadth under which a number finds no room. */
const LEAST_FOR_NUMBER = 7;

export function TimesPicture(props: TimesPictureProps) {
  const words = say(timesWords);
  const { ticks, lanes, stops } = pictureTimes(props.times, props.beganMs, props.pauses);
  const stopsHere = stops.map((stop) => <i class="stopped" key={stop.left} style={placed(stop)} />);
  return (
    <figure class="when" data-testid="times-picture">
      {lanes.map(({ who, acts }) => (
        <div class="lane" key={who ?? ''}>
          <span class="lane-name">{props.personOf(who)}</span>
          <div class="track">
            {stopsHere}
            {acts.map(({ mark, ...at }) => {
              const number = props.listed.indexOf(mark) + 1;
              const told = `${props.nameOf(mark)}, ${formatSpan(mark.wasStanding ? mark.standingSeconds : mark.seconds)}`;
              return (
                <span
                  key={`${mark.kind}${mark.what}${mark.atMs}`}
                  class={`act ${props.isOutside(mark) ? 'outside-act' : ''}`}
                  role="img"
                  aria-label={told}
                  title={told}
                  style={placed(at)}
                >
                  {number > 0 && at.width >= LEAST_FOR_NUMBER && <b>{number}</b>}
                </span>
              );
            })}
          </div>
        </div>
      ))}
      <div class="lane" aria-hidden="true">
        <span class="lane-name soft">{words.axis}</span>
        <div class="times-axis">
          {ticks.map(({ minutes, left }) => (
            <span key={minutes} style={{ left: `${left}%` }}>
              {formatCount(minutes)}
            </span>
          ))}
        </div>
      </div>
      <figcaption class="row soft">
        <span>
          <i class="swatch" /> {words.legend.act}
        </span>
        <span>
          <i class="swatch outside-act" /> {words.legend.outside}
        </span>
        {stops.length > 0 && (
          <span>
            <i class="swatch stopped" /> {words.legend.stop}
          </span>
        )}
      </figcaption>
    </figure>
  );
}
