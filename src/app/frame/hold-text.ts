// What every moment that is told of a line hangs on: a pace that nobody counted, or a line that stands.

import type { Outlook } from '../../../shared/outlook/line.ts';
import { lineWords } from '../words/line.ts';
import { say } from '../words/words.ts';

/** The words to stand beside each moment; null where the line runs and is counted, or nothing is being built. */
export function holdText(
  outlook: {
    readonly counting: Pick<Outlook['counting'], 'ceased'>;
    readonly stands: boolean;
  } | null,
): string | null {
  const words = say(lineWords);
  if (outlook?.counting.ceased) return words.ifPace;
  return outlook?.stands ? words.ifStarts : null;
}
