// After the frame that is being made: what a person waits for is drawn first, the rest of the screen follows.

/** A hidden page draws no frames; then it is done after this long. */
const HIDDEN_MS = 100;

/** Does something once the next frame has been drawn. */
export function afterPaint(work: () => void): void {
  let isDone = false;
  const once = () => {
    if (isDone) return;
    isDone = true;
    clearTimeout(timer);
    work();
  };
  const timer = setTimeout(once, HIDDEN_MS);
  requestAnimationFrame(() => setTimeout(once, 0));
}
