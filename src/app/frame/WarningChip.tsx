// The loudest open warning of the lines that the tablet serves, in the top bar of every screen but the line's, which says it in full. It goes
// only with its warning; a tap goes to its line.

import { loudestOf } from '../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../app.ts';
import { slotToTell, takeLine } from '../line-in-hand.ts';
import type { Watch } from '../outlook/watch.ts';
import { address } from '../router.ts';
import { Icon } from '../ui/Icon.tsx';
import { SaidOnce } from '../ui/SaidOnce.tsx';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';
import { outlookOf, sayWarning, toSayOf, warningsTold, warningTone } from './warning-text.ts';

export function WarningChip(props: {
  /** The watches over the lines that the tablet serves. */
  readonly watches: readonly Watch[];
  /** Leaves what lies over the screen, as the navigation does. */
  readonly onLeave: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(warningWords);
  const { watches, onLeave } = props;
  const warnings = watches.flatMap((watch) => watch.warnings.value);
  const loudest = loudestOf(warnings);
  if (!loudest) return null;
  const { line } = loudest.loaded;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const said = sayWarning(loudest, { outlook: outlookOf(watches, line), nowMs: app.nowMs.value, zone });
  const all = warnings.map((each) => {
    const its = each.loaded.line;
    return toSayOf(each, slotToTell(app, its, each.slot), {
      outlook: outlookOf(watches, its),
      nowMs: app.nowMs.value,
      zone: floor.lines.get(its)?.zone ?? 'UTC',
    });
  });
  const more = warnings.length - 1;
  const slot = slotToTell(app, line, loudest.slot);
  const whole = `${slot} ${said.long}${more > 0 ? ` ${words.more(more)}` : ''}`;
  const tone = warningTone(loudest);
  return (
    <div class="warned">
      <SaidOnce all={all} told={warningsTold} />
      <a
        class={`chip ${tone}`}
        href={address('line')}
        title={whole}
        data-testid="warning"
        data-level={loudest.warning.level}
        onClick={() => {
          onLeave();
          takeLine(app, line);
        }}
      >
        <Icon name={tone === 'stop' ? 'warn' : 'bell'} size={20} />
        <span class="hidden">
          {whole} {words.show}
        </span>
        <span class="brief" aria-hidden="true">
          <b class="code">{slot}</b>
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
