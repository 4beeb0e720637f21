// Loads a component when it is first drawn. Small on purpose: one promise, one state; `preact/compat` was refused for its size.

import type { ComponentChildren, ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

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
    load().then((component) => {
      loaded = component;
      return component;
    });
  function Lazy(props: P): ComponentChildren {
    const [ready, setReady] = useState(() => loaded);
    const [error, setError] = useState<unknown>(null);
    useEffect(() => {
      if (loaded) return;
      fetched().then((component) => setReady(() => component), setError);
    }, []);
    if (error) throw error;
    const Ready = ready;
    return Ready ? <Ready {...props} /> : waiting;
  }
  // A part that was fetched before stands at once when it is first drawn.
  return Object.assign(Lazy, { preload: () => void fetched().catch(() => undefined) }); // the first drawing asks again
}
