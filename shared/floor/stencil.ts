// Which jars lie on a line's stencil? Apart from how they stand, since what folds the log asks it too.

import type { Jar } from './fold-paste.ts';
import type { FloorState } from './state.ts';

/** Jars whose paste may be on a line's stencil and was not used up, in the order in which they came. */
export function stencilJars(state: FloorState, line: string): readonly Jar[] {
  return (state.stencils.get(line) ?? []).flatMap((name) => {
    const jar = state.jars.get(name);
    return jar === undefined || jar.told.at(-1)?.says === 'empty' ? [] : [jar];
  });
}
