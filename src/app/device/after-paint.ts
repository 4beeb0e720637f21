// After the frame that is being made: what a person waits for is drawn first, the rest of the screen follows.

/** A page that draws no frames, or is never idle, goes on after this long. */
const LATEST_MS = 100;

/** Does something once the next frame has been drawn and nothing that a person waits for is to be done. Answers with what keeps it from being done. */
export function afterPaint(work: () => void): () => void {
  let isDone = false;
  const once = () => {
    if (isDone) return;
    isDone = true;
    clearTimeout(timer);
    work();
  };
  const timer = setTimeout(once, LATEST_MS);
  requestAnimationFrame(() => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(once);
    else setTimeout(once, 0); // not every browser tells when it is idle
  });
  return () => {
    isDone = true;
    clearTimeout(timer);
  };
}
