// The open warnings of several watched lines, each with the outlook that gives it.

import type { OpenWarning } from '../../../shared/outlook/loudest-open.ts';
import type { Watch } from './watch.ts';

/** All that is open on watched lines, line by line. */
export function openOn(watches: readonly Pick<Watch, 'outlook' | 'warnings'>[]): readonly OpenWarning[] {
  return watches.flatMap(({ warnings, outlook: { value: outlook } }) =>
    outlook ? warnings.value.map((slot) => ({ slot, outlook })) : [],
  );
}
