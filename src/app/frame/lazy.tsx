// Loads a component when it is first drawn. Small on purpose: one promise, one state; `preact/compat` was refused for its size.

import type { ComponentChildren, ComponentType } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import type { Scan } from '../../../shared/labels/scan.ts';
import { useApp } from '../app.ts';
import { withWords } from '../words/fetch.ts';

/**
 * A component whose code arrives with its first use; `waiting` stands in meanwhile. A load that failed is thrown into the
 * next drawing, where the frame's own fault screen meets it.
 */
export function lazy<P extends object>(
  load: () => Promise<ComponentType<P>>,
  waiting: ComponentChildren = null,
): ((props: P) => ComponentChildren) & { readonly preload: () => void } {
  let loaded: ComponentType<P> | null = null;
  const fetched = () =>
    withWords(load()).then((component) => {
      loaded = component;
      return component;
    });
  function Lazy(props: P): ComponentChildren {
    const [ready, setReady] = useState(() => loaded);
    const [error, setError] = useState<unknown>(null);
    useEffect(() => {
      // It may have arrived since the drawing, before this effect was run.
      if (loaded) setReady(() => loaded);
      else fetched().then((component) => setReady(() => component), setError);
    }, []);
    if (error) throw error;
    const Ready = ready;
    return Ready ? <Ready {...props} /> : waiting;
  }
  // A part that was fetched before stands at once when it is first drawn.
  return Object.assign(Lazy, { preload: () => void fetched().catch(() => undefined) }); // the first drawing asks again
}

/** A part that takes scans: what is scanned between the tap and its arrival is kept for it, not taken by what lies below. */
export function lazyTask<P extends object>(
  load: () => Promise<ComponentType<P>>,
): ReturnType<typeof lazy<P>> {
  return lazy(load, <KeepScans />);
}

function KeepScans() {
  const app = useApp();
  useLayoutEffect(() => {
    const kept: Scan[] = [];
    const release = app.scans.take((scan) => kept.push(scan));
    return () => {
      release();
      // The part that takes this place is in hand once the drawing under way is done.
      queueMicrotask(() => {
        for (const scan of kept) app.scans.push(scan);
      });
    };
  }, [app]);
  return <span data-coming hidden />;
}
