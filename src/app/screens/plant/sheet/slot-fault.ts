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
    case 'off-line':
      return words.faults['off-line'];
    default:
      return words.faults[fault.code](fault.positions);
  }
}
