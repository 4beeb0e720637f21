// Escape closes what it is pressed over, from the moment that this is seen.

import { useLayoutEffect, useRef } from 'preact/hooks';

/** Does `close` at Escape, unless somebody took that key, or something that `above` selects lies over it: that is closed first. */
export function useEscape(close: () => void, above = 'dialog[open]'): void {
  const newest = useRef(close);
  newest.current = close;
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented) return;
      if (document.querySelector(above) === null) newest.current();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [above]);
}
