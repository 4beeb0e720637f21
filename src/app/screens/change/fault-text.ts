// Why a setup cannot be built on a line, one sentence a fault: which feeder, where, how many positions over.

import type { SetupFault } from '../../../../shared/changeover/diff.ts';
import { changeWords } from '../../words/change.ts';
import { say } from '../../words/words.ts';

/** A fault of a setup as a sentence. */
export function faultText({ code, slot, part, over, with: clash }: SetupFault): string {
  const { faults } = say(changeWords);
  if (over !== undefined && over > 0) return faults.over(slot, part, over);
  const neighbour = clash ? `${clash.part} (${clash.slot})` : '';
  return faults[code](slot, part, neighbour);
}
