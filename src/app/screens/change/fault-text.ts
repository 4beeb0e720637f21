// Why a setup cannot be built on a line, one sentence a fault: which feeder, where, how many positions over, how long the bank is.

import type { SetupFault } from '../../../../shared/changeover/diff.ts';
import { changeWords } from '../../words/change.ts';
import { say } from '../../words/words.ts';

/** A fault of a setup as a sentence. */
export function faultText({ code, slot, part, over, last, with: clash }: SetupFault): string {
  const { faults } = say(changeWords);
  if (over !== undefined && over > 0) return faults.over(slot, part, over);
  if (last !== undefined) return faults.pastEnd(slot, part, last);
  const neighbour = clash ? `${clash.part} (${clash.slot})` : '';
  return faults[code](slot, part, neighbour);
}
