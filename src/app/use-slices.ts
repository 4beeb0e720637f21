// An answer that takes long to work out, for a screen: short ones are there at once, long ones come slice by slice while the page goes on.

import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { inSlices, takeSlice } from './device/slices.ts';

/**
 * What the steps came to; null until they first did, and while newer ones go on what the ones before came to. `make` is asked anew where `of` changes.
 */
export function useSlices<T>(make: () => Iterator<undefined, T>, of: readonly unknown[]): T | null {
  const newest = useRef<{ readonly came: T } | null>(null);
  const [, drawAnew] = useState(0);
  const open = useMemo(() => {
    const steps = make();
    const done = takeSlice(steps);
    if (done === undefined) return steps;
    newest.current = done;
    return null;
  }, of);
  useEffect(() => {
    if (open === null) return undefined;
    return inSlices(open, (came) => {
      newest.current = { came };
      drawAnew((times) => times + 1);
    });
  }, [open]);
  // Steps may come to undefined: that they came to anything is the answer then.
  return newest.current === null ? null : newest.current.came;
}
