// The paste on the line's stencil: told above the slots where its time is over, below them where it ends before the run does.

import { stencilJar } from '../../../../shared/floor/paste.ts';
import { plantDay } from '../../../../shared/floor/plant-day.ts';
import { useApp, useFloor } from '../../app.ts';
import { address } from '../../router.ts';
import { Icon } from '../../ui/Icon.tsx';
import { useWhenStill } from '../../ui/still.ts';
import { pasteWords } from '../../words/paste.ts';
import { formatDay, say } from '../../words/words.ts';
import { sayDistance } from './moment.ts';

interface StencilPasteProps {
  readonly line: string;
  /** When the run is through, ms since 1970; null: nothing is built. */
  readonly lastsMs: number | null;
  /** Whether it is told here that its time is over, or that it will be. */
  readonly isOver: boolean;
}

export function StencilPaste({ line, lastsMs, isOver }: StencilPasteProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(pasteWords);
  const nowMs = app.nowMs.value;
  const found = stencilJar(floor, line, { nowMs, today: plantDay(floor, line, nowMs), lastsMs });
  const shown = useWhenStill(found?.isOver === isOver ? found : null, true);
  if (shown === null) return null;
  const { jar, stand } = shown;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const moment = (ms: number) => sayDistance(ms, formatDay(ms, zone), nowMs);
  const faults = stand.faults.map((fault) => words.faults[fault]).join(', ');
  return (
    <div class="rising" role="status" data-testid="stencil-paste" data-over={isOver}>
      <p>
        <Icon name="warn" />
        <span>
          <b>
            {isOver || stand.goodUntilMs === null
              ? words.stencilOver(jar.jar, faults)
              : words.stencilEnds(jar.jar, moment(stand.goodUntilMs))}
          </b>
          <br />
          <span class="soft">{isOver ? words.stencilOverAct : words.stencilEndsAct}</span>{' '}
          <a class="button" href={address('stock', 'paste')} data-testid="stencil-jars">
            {words.jars}
          </a>
        </span>
      </p>
    </div>
  );
}
