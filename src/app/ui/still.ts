// What comes and goes by itself above other things moves them; not under a finger that is on its way to one of them. Method: it waits until nothing
// touches the page and a press is over. Refused: room kept for what may come, as on a small tablet that is room for a row of what is due.

import { useEffect, useRef, useState } from 'preact/hooks';

/** A press is over by then, ms: what follows a finger that was lifted has been done. */
const SETTLED_MS = 600;

const down = new Set<number>();
let liftedMs = Number.NEGATIVE_INFINITY;
const waiting = new Set<() => void>();
let timer: ReturnType<typeof setTimeout> | undefined;

/** Follows every finger on the page. To be called once, before anything that waits for them. */
export function followFingers(): void {
  const lift = ({ pointerId }: PointerEvent) => {
    if (down.delete(pointerId)) liftedMs = performance.now();
    settle();
  };
  addEventListener('pointerdown', ({ pointerId }) => void down.add(pointerId), {
    capture: true,
    passive: true,
  });
  for (const kind of ['pointerup', 'pointercancel'] as const)
    addEventListener(kind, lift, { capture: true, passive: true });
  // What is lifted over another window is told to nobody here.
  addEventListener('blur', () => {
    down.clear();
    settle();
  });
}

function settle(): void {
  clearTimeout(timer);
  if (down.size > 0 || waiting.size === 0) return;
  const restMs = liftedMs + SETTLED_MS - performance.now();
  if (restMs > 0) {
    timer = setTimeout(settle, restMs);
    return;
  }
  for (const act of [...waiting]) {
    waiting.delete(act);
    act();
  }
}

/** Does something once no finger is on the page and none was a moment ago, at once where that is so. Answers how to give it up. */
export function whenStill(act: () => void): () => void {
  waiting.add(act);
  settle();
  return () => void waiting.delete(act);
}

/**
 * What is shown of a thing that comes and goes by itself: it comes once the page is still, and goes then; what it says follows at once
 * while it is there, and stays as it was last while it is about to go. `fromFirst`: it belongs to a screen that is being opened, so that it stands in
 * the first drawing unless a finger is down.
 */
export function useWhenStill<T>(wanted: T | null, fromFirst = false): T | null {
  const [isShown, setShown] = useState(fromFirst && wanted !== null && down.size === 0);
  const last = useRef<T | null>(null);
  if (wanted !== null) last.current = wanted;
  const isWanted = wanted !== null;
  useEffect(
    () => (isShown === isWanted ? undefined : whenStill(() => setShown(isWanted))),
    [isShown, isWanted],
  );
  return isShown ? last.current : null;
}
