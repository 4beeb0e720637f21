// Loads a component when it is first drawn. Small on purpose: one promise, one state; `preact/compat` was refused for its size.

import type { ComponentChildren, ComponentType } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Scan } from '../../../shared/labels/scan.ts';
import { useApp } from '../app.ts';
import { withWords } from '../words/fetch.ts';
import { PartAway } from './PartAway.tsx';

/**
 * A component whose code arrives with its first use; `waiting` stands in meanwhile. Where it is out of reach, its place says so and a tap
 * tries again; the rest of the page goes on.
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
    const [isAway, setAway] = useState(false);
    const isGone = useRef(false);
    const arrived = (component: ComponentType<P>) => setReady(() => component);
    useEffect(() => {
      // It may have arrived since the drawing, before this effect was run.
      if (loaded) arrived(loaded);
      else fetched().then(arrived, () => setAway(true));
      return () => {
        isGone.current = true;
      };
    }, []);
    const again = () => {
      setAway(false);
      fetched().then(arrived, async () => {
        // A browser may keep a failed load for as long as the page lives: a page made anew asks again, where there is one to be had.
        if ((await canReload()) && !isGone.current) location.reload();
        else setAway(true);
      });
    };
    const Ready = ready;
    if (Ready) return <Ready {...props} />;
    return isAway ? <PartAway onAgain={again} /> : waiting;
  }
  // A part that was fetched before stands at once when it is first drawn.
  return Object.assign(Lazy, { preload: () => void fetched().catch(() => undefined) }); // the first drawing asks again
}

/** True where the page itself can be fetched now. */
function canReload(): Promise<boolean> {
  return fetch(location.pathname, { method: 'HEAD', cache: 'no-store' }).then(
    ({ ok }) => ok,
    () => false,
  );
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
