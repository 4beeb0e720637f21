// What is said of the real lines while somebody practises on this tablet.

import { loudestOpen, type OpenWarning } from '../../shared/outlook/loudest-open.ts';
import type { App } from './app.ts';
import { slotToTell } from './line-in-hand.ts';
import { practiceWords } from './words/practice.ts';
import { warningWords } from './words/warning.ts';
import { formatSpan, formatTime, say } from './words/words.ts';

/** The loudest of what is open on the watched lines as a sentence, with its line where the tablet serves several; null where none is open. */
export function realLineTold(
  real: Pick<App, 'beside' | 'store' | 'nowMs'>,
  open: readonly OpenWarning[],
): string | null {
  const loudest = loudestOpen(open);
  if (!loudest) return null;
  const { slot, outlook } = loudest;
  const { line } = outlook;
  const { level } = slot.warning;
  if (level === 'quiet') return null;
  const zone = real.store.floor().lines.get(line)?.zone ?? 'UTC';
  const runOutMs = slot.forecast.runOutMs.expected;
  const inSeconds = Math.max(0, (runOutMs - real.nowMs.value) / 1000);
  const sentence = say(warningWords)[level](formatSpan(inSeconds), formatTime(runOutMs, zone));
  return say(practiceWords).real(slotToTell(real, line, slot.slot), sentence);
}
