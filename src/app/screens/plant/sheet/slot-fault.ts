// What is wrong with a slot for a part, in words.

import type { Words } from '../../../words/areas.ts';
import type { SlotFault } from './board-model.ts';

/** A fault as a sentence. */
export function sayFault(words: Words<'board'>, fault: SlotFault): string {
  switch (fault.code) {
    case 'overlap':
      return words.faults.overlap(fault.part, fault.slot);
    case 'lane-width':
      return words.faults['lane-width'](fault.part);
    case 'look-alike':
      return words.faults['look-alike'](fault.part, fault.slot);
    case 'off-line':
    case 'on-trays':
    case 'no-tray':
      return words.faults[fault.code];
    default:
      return words.faults[fault.code](fault.positions);
  }
}
