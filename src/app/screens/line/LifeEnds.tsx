// Reels on the line whose floor life is over, or ends before they run out or the run does: said as long as something can be done.

import type { FloorState } from '../../../../shared/floor/state.ts';
import { lineClimate } from '../../../../shared/moisture/line-climate.ts';
import { moistureOfSlot, reelLife } from '../../../../shared/moisture/reel-life.ts';
import type { Outlook } from '../../../../shared/outlook/line.ts';
import { useFloor } from '../../app.ts';
import { Icon } from '../../ui/Icon.tsx';
import { whichPanels } from '../../which-panels.ts';
import { heldWords } from '../../words/held.ts';
import { moistureWords } from '../../words/moisture.ts';
import { formatDay, say } from '../../words/words.ts';
import { sayDistance } from './moment.ts';

/** A slot whose reel's floor life does not last. Moments in ms since 1970. */
export interface LifeEnd {
  readonly slot: string;
  readonly reel: string;
  readonly lot: string | null;
  readonly part: string;
  /** The entry that put it on the slot. */
  readonly entry: string;
  readonly isOver: boolean;
  readonly endsMs: number;
  /** When the reel would be used up, or the run over. */
  readonly lastsMs: number;
}

/** The slots of a line whose reels outlast their floor life, soonest first. */
export function lifeEnds(floor: FloorState, outlook: Outlook): readonly LifeEnd[] {
  const { nowMs } = outlook.pace;
  return outlook.slots
    .flatMap(({ slot, wanted, loaded, forecast }): LifeEnd[] => {
      const lastsMs = Math.min(forecast.runOutMs.expected, outlook.runEndMs);
      const part = moistureOfSlot(floor, wanted);
      return loaded.tapes.flatMap((tape, at) => {
        const life = reelLife(floor, tape.reel, { line: outlook.line, part, openedMs: tape.atMs, nowMs });
        if (life === null || life.expiresMs === null) return [];
        const isOver = life.leftSeconds === 0;
        // Tapes joined before the last one end earlier than the slot does.
        if (!isOver && (at < loaded.tapes.length - 1 || life.expiresMs >= lastsMs)) return [];
        const { reel, lot, part: named, entry } = tape;
        return [{ slot, reel, lot, part: named, entry, isOver, endsMs: life.expiresMs, lastsMs }];
      });
    })
    .sort((a, b) => a.endsMs - b.endsMs);
}

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
