// What the number of a machine's state means to people.

import { stationWords } from './words/stations.ts';
import { say } from './words/words.ts';

/** A state by its class: the thousands of SEMI E58. */
export function stateWord(code: number | null): string {
  const words = say(stationWords);
  if (code === null) return words.noState;
  const classes: Readonly<Record<string, string>> = words.states;
  return `${classes[Math.floor(code / 1000)] ?? words.otherState} (${code})`;
}
