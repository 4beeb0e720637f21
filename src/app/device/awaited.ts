// While somebody waits for an answer, from the first keys of a scan until its verdict is drawn, what nobody waits for holds still: the clock's
// beat, the next look at the line, the signing of what was written. It comes right after. Refused: idle moments alone, since between two keys of
// a scanner, and while an entry is being written, a page is idle, and what begins then stands in the verdict's way.

import { afterPaint } from './after-paint.ts';

/** What holds still goes on after this long at the latest, ms: a label comes more slowly from some scanners. Work in pieces counts it from its beginning. */
export const LATEST_MS = 1000;

let waits = 0;
const held = new Set<() => void>();

/** Somebody waits from now on. Answers with what says, once, that the answer is there: it is drawn first, then goes on what held still. */
export function somebodyWaits(): () => void {
  waits += 1;
  return () =>
    afterPaint(() => {
      waits -= 1;
      if (waits === 0) for (const goOn of [...held]) goOn();
    });
}

/** Does something now, or as soon as nobody waits for an answer; after `latestMs`, 0 or more, in any case. */
export function unlessAwaited(work: () => void, latestMs = LATEST_MS): void {
  if (waits === 0) {
    work();
    return;
  }
  const goOn = () => {
    clearTimeout(timer);
    if (held.delete(goOn)) work();
  };
  held.add(goOn);
  const timer = setTimeout(goOn, latestMs);
}
