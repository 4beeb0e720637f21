// Why a setup cannot be built on a line, one sentence a fault: which feeder, where, how many positions over, how long the bank is.

import type { SetupFault } from '../../../../shared/changeover/diff.ts';
import type { Words } from '../../words/areas.ts';
import { changeWords } from '../../words/change.ts';
import { say } from '../../words/words.ts';

/** A feeder on the line that its record makes too wide for where it is. */
interface WideFeeder {
  readonly feeder: string;
  readonly positions: number;
}

/** What another lane of the conveyor needs to stay on a slot. */
export interface KeptForLane {
  readonly slot: string;
  readonly part: string;
  readonly lane: string;
}

/** Why a line cannot change over, with what makes it so where that is known. */
export type ChangeFault = SetupFault & { readonly feeder?: WideFeeder; readonly kept?: KeptForLane };

/** A fault of a setup as a sentence; where a loaded feeder or another lane makes it, with its name. */
export function faultText(fault: ChangeFault): string {
  const words = say(changeWords);
  if (fault.kept) return words.faults.keptFor(fault.kept.slot, fault.kept.part, fault.kept.lane);
  const said = sayFault(fault, words.faults);
  return fault.feeder ? `${said} ${words.byFeeder(fault.feeder.feeder, fault.feeder.positions)}` : said;
}

function sayFault(
  { code, slot, part, over, last, with: clash }: SetupFault,
  faults: Words<'change'>['faults'],
): string {
  if (over !== undefined && over > 0) return faults.over(slot, part, over);
  if (last !== undefined) return faults.pastEnd(slot, part, last);
  const neighbour = clash ? `${clash.part} (${clash.slot})` : '';
  return faults[code](slot, part, neighbour);
}
