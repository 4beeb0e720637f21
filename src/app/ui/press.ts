// Is a tap a tremble of a gloved hand? Method: the same button again within a moment, with nothing touched or typed in between.
// Refused: the moment alone; who presses a button, then another, then the first again means all three.

/** Second taps within this time are a tremble, not a wish. */
const REPEAT_MS = 400;

let last: { readonly button: Element; readonly atMs: number } | null = null;

/** True where this tap on a button is a tremble of the one before; `atMs`: the event's own time. Every tap must be told. */
export function isTremble(button: Element, atMs: number): boolean {
  if (last?.button === button && atMs - last.atMs < REPEAT_MS) return true;
  last = { button, atMs };
  return false;
}

/** Follows what is touched and typed anywhere on the page, for `isTremble()`. */
export function followTouches(): void {
  const forget = ({ target }: Event) => {
    if (last && !(target instanceof Node && last.button.contains(target))) last = null;
  };
  for (const kind of ['pointerdown', 'input', 'keydown'])
    addEventListener(kind, forget, { capture: true, passive: true });
}
