// The open warnings of several watched lines, each with the outlook that gives it: once, also where lanes give one of the same slot.

import { needKey } from '../../../shared/floor/state.ts';
import { compareLevels } from '../../../shared/floor/vocabulary.ts';
import type { SlotOutlook } from '../../../shared/outlook/line.ts';
import type { OpenWarning } from '../../../shared/outlook/loudest-open.ts';
import type { Watch } from './watch.ts';

/** Of two lanes' warnings of one slot: of one level the one that nothing takes over from, which stops its lane. */
function isLouder(one: SlotOutlook, than: SlotOutlook): boolean {
  const by = compareLevels(one.warning.level, than.warning.level);
  const hasBackup = ({ turn }: SlotOutlook) => (turn?.backup ?? null) !== null;
  return by > 0 || (by === 0 && hasBackup(than) && !hasBackup(one));
}

/** All that is open on watched lines, line by line; of what several lanes give of one slot, the loudest. */
export function openOn(watches: readonly Pick<Watch, 'outlook' | 'warnings'>[]): readonly OpenWarning[] {
  const one = new Map<string, OpenWarning>();
  for (const { warnings, outlook } of watches) {
    const of = outlook.value;
    if (!of) continue;
    for (const slot of warnings.value) {
      const key = needKey(of.line, slot.slot, slot.need);
      const known = one.get(key)?.slot;
      if (!known || isLouder(slot, known)) one.set(key, { slot, outlook: of });
    }
  }
  return [...one.values()];
}
