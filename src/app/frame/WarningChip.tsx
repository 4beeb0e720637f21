// The loudest open warning of the lines that the tablet serves, in the top bar of every screen but the line's, which says it in full, and
// over the number of the exit. It goes only with its warning; a tap goes to its line.

import { loudestOpen, type OpenWarning } from '../../../shared/outlook/loudest-open.ts';
import { useApp, useFloor } from '../app.ts';
import { slotToTell, takeLine } from '../line-in-hand.ts';
import { address } from '../router.ts';
import { Icon } from '../ui/Icon.tsx';
import { SaidOnce } from '../ui/SaidOnce.tsx';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';
import { sayWarning, toSayOf, warningsTold, warningTone } from './warning-text.ts';

export function WarningChip(props: {
  /** What is open on the lines that the tablet serves. */
  readonly open: readonly OpenWarning[];
  /** Leaves what lies over the screen, as the navigation does. */
  readonly onLeave: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(warningWords);
  const { open, onLeave } = props;
  const loudest = loudestOpen(open);
  if (!loudest) return null;
  const { line } = loudest.outlook;
  const nameOf = (each: OpenWarning) => slotToTell(app, each.outlook.line, each.slot.slot);
  const at = ({ outlook }: OpenWarning) => ({
    outlook,
    nowMs: app.nowMs.value,
    zone: floor.lines.get(outlook.line)?.zone ?? 'UTC',
  });
  const said = sayWarning(loudest.slot, at(loudest));
  const all = open.map((each) => toSayOf(each.slot, nameOf(each), () => at(each)));
  const more = open.length - 1;
  const slot = nameOf(loudest);
  const whole = `${slot} ${said.long}${more > 0 ? ` ${words.more(more)}` : ''}`;
  const tone = warningTone(loudest.slot);
  return (
    <div class="warned">
      <SaidOnce all={all} told={warningsTold} />
      <a
        class={`chip ${tone}`}
        href={address('line')}
        title={whole}
        data-testid="warning"
        data-level={loudest.slot.warning.level}
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
          {open.length}
        </b>
      </a>
    </div>
  );
}
