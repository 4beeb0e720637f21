// Whether the person signed in may do an act, as a sentence for a button that may not be pressed.

import { type Act, mayDo } from '../../shared/floor/may.ts';
import { useApp, useFloor } from './app.ts';
import { shellWords } from './words/shell.ts';
import { say } from './words/words.ts';

/** What leaves the floor is not done with a floor that is thrown away. */
const notInPractice: readonly Act[] = ['export-log', 'enrol-tablet'];

/** Null where the act is allowed, else why not. `isTried`: in practice it is gone through, and leaves nothing. */
export function useRefusal(act: Act, isTried = false): string | null {
  const app = useApp();
  const floor = useFloor();
  const words = say(shellWords);
  if (app.practice && !isTried && notInPractice.includes(act)) return words.notInPractice;
  const may = mayDo(act, app.person.value, floor.people.size > 0);
  if (may.may) return null;
  return may.why === 'nobody-signed-in' && may.needs === 'operator'
    ? words.signInFirst
    : words.needsRole(words.roles[may.needs]);
}
