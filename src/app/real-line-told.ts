// What is said of the real lines while somebody practises on this tablet.

import type { ReadonlySignal } from '@preact/signals';
import { loudestOf, type SlotOutlook } from '../../shared/outlook/line.ts';
import type { App } from './app.ts';
import { slotToTell } from './line-in-hand.ts';
import { practiceWords } from './words/practice.ts';
import { warningWords } from './words/warning.ts';
import { formatSpan, formatTime, say } from './words/words.ts';

/** The loudest open warning of the watched lines as a sentence, with its line where the tablet serves several; null where none is open. */
export function realLineTold(
  real: Pick<App, 'beside' | 'store' | 'nowMs'>,
  watches: readonly { readonly warnings: ReadonlySignal<readonly SlotOutlook[]> }[],
): string | null {
  const loudest = loudestOf(watches.flatMap(({ warnings }) => warnings.value));
  if (!loudest || loudest.warning.level === 'quiet') return null;
  const { line } = loudest.loaded;
  const zone = real.store.floor().lines.get(line)?.zone ?? 'UTC';
  const runOutMs = loudest.forecast.runOutMs.expected;
  const inSeconds = Math.max(0, (runOutMs - real.nowMs.value) / 1000);
  const sentence = say(warningWords)[loudest.warning.level](
    formatSpan(inSeconds),
    formatTime(runOutMs, zone),
  );
  return say(practiceWords).real(slotToTell(real, line, loudest.slot), sentence);
}
