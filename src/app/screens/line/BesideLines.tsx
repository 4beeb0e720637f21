// The other lines that this tablet serves, each in one row above the line in hand: how it stands, its next walk, its warning. A tap goes there.

import { type LineGlance, lineGlance } from '../../../../shared/outlook/glance.ts';
import { loudestOf } from '../../../../shared/outlook/line.ts';
import { walksTogetherMs } from '../../../../shared/outlook/together.ts';
import { useApp, useFloor } from '../../app.ts';
import { sayNext, stateLooks } from '../../frame/glance-text.ts';
import { holdText } from '../../frame/hold-text.ts';
import { sayWarning, warningTone } from '../../frame/warning-text.ts';
import { takeLine } from '../../line-in-hand.ts';
import type { LineBeside } from '../../outlook/beside.ts';
import type { Watch } from '../../outlook/watch.ts';
import { Icon } from '../../ui/Icon.tsx';
import { linesWords } from '../../words/all-lines.ts';
import { warningWords } from '../../words/warning.ts';
import { formatCount, formatTime, say } from '../../words/words.ts';
import './beside-lines.css';

interface BesideProps {
  readonly beside: readonly LineBeside[];
  /** The watch over the line in hand. */
  readonly here: Watch;
}

export function BesideLines({ beside, here }: BesideProps) {
  return (
    <div class="beside-lines">
      {beside.map((each) => (
        <Row key={each.line} {...each} here={here} />
      ))}
    </div>
  );
}

function Row({ line, watch, here }: LineBeside & Pick<BesideProps, 'here'>) {
  const app = useApp();
  const floor = useFloor();
  const words = say(linesWords);
  const outlook = watch.outlook.value;
  const walks = watch.walks.value;
  const nowMs = app.nowMs.value;
  const glance = lineGlance(floor, line, { nowMs, outlook, walks });
  if (!glance) return null;
  const { zone, name } = glance;
  const loudest = loudestOf(watch.warnings.value);
  const tone = loudest === null ? '' : warningTone(loudest);
  const isAlone = (floor.crews.get(line) ?? 1) === 1 && (floor.crews.get(app.line.value ?? '') ?? 1) === 1;
  // What hangs on a line that stands, or on a pace that nobody counts, calls nobody to two places.
  const holds = holdText(outlook) !== null || holdText(here.outlook.value) !== null;
  const togetherMs = isAlone && !holds ? walksTogetherMs(here.walks.value, walks) : null;
  const open = watch.warnings.value.length;
  return (
    <button
      type="button"
      class={`beside-line ${tone}`}
      data-testid={`beside-${line}`}
      data-state={glance.state}
      data-level={loudest?.warning.level ?? 'quiet'}
      onClick={() => takeLine(app, line)}
    >
      <Icon name={tone === '' ? stateLooks[glance.state].icon : tone === 'stop' ? 'warn' : 'bell'} />
      <b>{name}</b>
      <span class="say" {...(loudest === null ? {} : { role: 'alert' })}>
        {loudest === null ? (
          told(glance)
        ) : (
          <>
            <b class="code">{loudest.slot}</b> {sayWarning(loudest, { outlook, nowMs, zone }).short}
            {open > 1 && ` ${say(warningWords).shortMore(open - 1)}`}
          </>
        )}
      </span>
      {togetherMs !== null && <span class="also">{words.together(formatTime(togetherMs, zone))}</span>}
      <span class="hidden">{say(warningWords).showLine(name)}</span>
      <Icon name="right" />
    </button>
  );

  /** How it stands and where to walk next. */
  function told(seen: LineGlance): string {
    const state = words.states[seen.state];
    const of = seen.run ? `${formatCount(seen.run.done)} / ${formatCount(seen.run.wanted)}` : '';
    const isLooking = outlook === null || walks === null;
    return [state, of, sayNext(seen, { nowMs, isLooking })].filter((text) => text !== '').join(' · ');
  }
}
