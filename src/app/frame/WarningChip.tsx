// The loudest open warning, in the top bar of every screen but the line's, whose band says it in full. It goes only with its warning.

import { loudestOf, type SlotOutlook } from '../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../app.ts';
import type { Watch } from '../outlook/watch.ts';
import { address } from '../router.ts';
import { Icon } from '../ui/Icon.tsx';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';
import { sayWarning, warningTone } from './warning-text.ts';

export function WarningChip(props: {
  readonly warnings: readonly SlotOutlook[];
  readonly watch: Watch;
  /** Leaves what lies over the screen, as the navigation does. */
  readonly onLeave: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(warningWords);
  const { warnings, watch, onLeave } = props;
  const loudest = loudestOf(warnings);
  if (!loudest) return null;
  const zone = floor.lines.get(loudest.loaded.line)?.zone ?? 'UTC';
  const said = sayWarning(loudest, { outlook: watch.outlook.value, nowMs: app.nowMs.value, zone });
  const more = warnings.length - 1;
  const whole = `${loudest.slot} ${said.long}${more > 0 ? ` ${words.more(more)}` : ''}`;
  const tone = warningTone(loudest);
  return (
    <div class="warned" role="alert">
      <a
        class={`chip ${tone}`}
        href={address('line')}
        title={whole}
        data-testid="warning"
        data-level={loudest.warning.level}
        onClick={onLeave}
      >
        <Icon name={tone === 'stop' ? 'warn' : 'bell'} size={20} />
        <span class="hidden">
          {whole} {words.show}
        </span>
        <span class="brief" aria-hidden="true">
          <b class="code">{loudest.slot}</b>
          <span class="short">{said.short}</span>
          {more > 0 && <span>{words.shortMore(more)}</span>}
        </span>
        <b class="many" aria-hidden="true">
          {warnings.length}
        </b>
      </a>
    </div>
  );
}
