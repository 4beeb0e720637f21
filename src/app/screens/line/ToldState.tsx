// In which state does the machine say that it stands or waits, and since when? Nothing where it works, or is not heard.

import { isWaiting } from '../../../../shared/floor/told-states.ts';
import type { Outlook } from '../../../../shared/outlook/line.ts';
import { useApp } from '../../app.ts';
import { stateWord } from '../../state-word.ts';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { formatSpan, formatTime, say } from '../../words/words.ts';

/** Cycles that a machine may wait between panels without a word of it. */
const WAITS_CYCLES = 2;

export function ToldState({ outlook }: { readonly outlook: Outlook }) {
  const app = useApp();
  const now = outlook.told?.now ?? null;
  if (now === null) return null;
  const zone = app.store.floor().lines.get(outlook.line)?.zone ?? 'UTC';
  const seconds = Math.max(0, app.nowMs.value - now.fromMs) / 1000;
  if (isWaiting(now.code) && seconds < WAITS_CYCLES * outlook.pace.panelSeconds) return null;
  return (
    <span class="chip care" data-testid="told-state">
      <Icon name="pause" size={18} />
      {say(lineWords).machineStands(stateWord(now.code), formatTime(now.fromMs, zone), formatSpan(seconds))}
    </span>
  );
}
