// Whose is a scan on a tablet that serves several lines? Method: the one line that knows the scanned slot; without a slot, the line on which the
// scanned reel stands. Refused: to go by the screen that happens to be open, since whoever serves two lines looks at one and stands at the
// other; to guess where both lines have a slot of that name, since a reel would then be judged for the wrong product.

import type { Scan } from '../labels/scan.ts';
import type { Desk, DeskView } from './model.ts';
import { laneFor, namedIn } from './named-in.ts';
import { takeScan } from './take-scan.ts';

/** The line that a scan is for: that in hand unless it plainly is another's. Pure; reads the label once more where several lines are served. */
export function lineOfScan(desk: Desk, scan: Scan, view: DeskView): string {
  const { floor, line, beside = [] } = view;
  if (beside.length === 0) return line;
  const slotLines = scan.codes
    .map(({ text }) => namedIn(view, text).flatMap((each) => (each.is === 'slot' ? [each.line] : [])))
    .filter((lines) => lines.length > 0);
  if (slotLines.length > 0) {
    const [only, ...more] = [line, ...beside].filter((each) =>
      slotLines.every((known) => known.includes(each)),
    );
    return only === undefined || more.length > 0 ? line : only;
  }
  // A slot in hand says whose the next reel is.
  if (desk.slot !== null) return line;
  const taken = takeScan(desk, scan, { floor, line });
  const reel = taken.reel ?? taken.old;
  const at = reel?.reel == null ? undefined : floor.reels.get(reel.reel)?.at;
  const on = at ? laneFor(view, at) : line;
  return beside.includes(on) ? on : line;
}

/** True where a line beside, with a setup of its own, gives another answer than what is said before any slot is known. */
export function isOpenBeside<T>(
  { floor, beside = [] }: DeskView,
  desk: Desk,
  answerAt: (view: DeskView) => T | null,
): boolean {
  return (
    desk.slot === null && beside.some((line) => floor.chosen.has(line) && answerAt({ floor, line }) === null)
  );
}
