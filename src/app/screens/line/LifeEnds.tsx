// Reels on the line whose floor life is over, or ends before they run out or the run does: said as long as something can be done.

import { lineClimate } from '../../../../shared/moisture/line-climate.ts';
import type { Outlook } from '../../../../shared/outlook/line.ts';
import { useFloor } from '../../app.ts';
import { lifeEnds } from '../../outlook/life-ends.ts';
import { Icon } from '../../ui/Icon.tsx';
import { whichPanels } from '../../which-panels.ts';
import { heldWords } from '../../words/held.ts';
import { moistureWords } from '../../words/moisture.ts';
import { formatDay, say } from '../../words/words.ts';
import { sayDistance } from './moment.ts';

export function LifeEnds({ outlook }: { readonly outlook: Outlook }) {
  const floor = useFloor();
  const words = say(moistureWords);
  const zone = floor.lines.get(outlook.line)?.zone ?? 'UTC';
  const moment = (ms: number) => sayDistance(ms, formatDay(ms, zone), outlook.pace.nowMs);
  const ends = lifeEnds(floor, outlook);
  if (ends.length === 0) return null;
  return (
    <div class="rising" role="status" data-testid="life-ends">
      {ends.map((end) => (
        <p key={`${end.slot} ${end.reel}`}>
          <Icon name="warn" />
          <span>
            <b>
              {end.isOver
                ? words.isOver(end.slot, moment(end.endsMs))
                : words.ends(end.slot, moment(end.endsMs), moment(end.lastsMs))}
            </b>
            <br />
            <span class="soft">{end.isOver ? words.overAct : words.endsAct}</span>
            {end.isOver && (
              <>
                {' '}
                <a
                  class="button"
                  href={whichPanels({ ...end, cause: 'floor-life', of: end.entry })}
                  data-testid="life-panels"
                >
                  {say(heldWords).which}
                </a>
              </>
            )}
          </span>
        </p>
      ))}
      <span class="soft">{words.climate(lineClimate(floor, outlook.line))}</span>
    </div>
  );
}
