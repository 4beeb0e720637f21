// What is in hand when the tablet goes from one of its lines to the other: a reel is in the hand and comes along, a slot waits on its line.
// Refused: to put all down, which loses what was scanned; to take a slot along, as the other line may have another slot of that name; to let
// a scan of one slot go on with what waits at another, which nobody stands in front of any more.

import { type Desk, emptyDesk } from '../../../shared/desk/model.ts';
import { takeLine, tellLine } from '../line-in-hand.ts';
import {
  type DeskState,
  goOn,
  isNothingInHand,
  type LeftDesk,
  leaveDesk,
  longestInHandMs,
  type ShownVerdict,
} from './state.ts';

/** The desk follows the line in hand, whoever changed it by a tap: call it with each change. What waits on the new line comes back. */
export function followLine(state: DeskState): void {
  const { app, desk, shown } = state;
  const [from, line] = [state.line, app.line.peek()];
  if (line === from) return;
  if (shown.peek()) goOn(state);
  state.line = line;
  const now = desk.peek();
  const waiting = arriveAt(state, line);
  if (waiting === null && now.slot === null && now.mode === 'work') return;
  if (from !== null) leaveDesk(state, from, now);
  desk.value = waiting === null ? emptyDesk : backOf(waiting);
}

/**
 * A scan is for the other line: what is in hand goes there with it, as it does from slot to slot; the slot waits where it is. `slot`: the
 * one that the scan names there, null where it names none; what waits at another is dropped.
 */
export function bringToLine(state: DeskState, line: string, slot: string | null): void {
  const { app, desk } = state;
  const [from, now] = [state.line, desk.peek()];
  const carried = carriedOf(now);
  const waiting = arriveAt(state, line)?.desk ?? null;
  if (from !== null && now.slot !== null && now.old === null)
    leaveDesk(state, from, { ...now, reel: null, partial: null, question: null, told: null });
  state.line = line;
  const back = slot !== null && waiting?.slot === slot ? waiting : emptyDesk;
  desk.value = isNothingInHand(carried) ? { ...back, question: now.question } : carried;
  takeLine(app, line);
  tellLine(app, line);
}

/**
 * Ends the shown verdict for an answer to it, and gives it; null where none is shown. One of a line that was left while it was written takes
 * that line in hand again: there its slot is.
 */
export function takeShown(state: DeskState): ShownVerdict | null {
  const { app, shown } = state;
  const last = shown.peek();
  if (last === null) return null;
  shown.value = null; // before the line changes, which ends a verdict as if nobody had answered
  if (last.line === state.line) return last;
  takeLine(app, last.line);
  followLine(state);
  tellLine(app, last.line);
  return last;
}

/** What waits on a line that is taken in hand, and waits there no longer; null where nothing does or it is too old. */
function arriveAt({ app, left }: DeskState, line: string | null): LeftDesk | null {
  const waiting = left.peek().get(line ?? '');
  if (waiting === undefined) return null;
  left.value = new Map([...left.peek()].filter(([each]) => each !== line));
  return app.clock.nowMs() - waiting.atMs <= longestInHandMs ? waiting : null;
}

/** What comes back by a tap says from when it is; a check of the line with nothing in hand just goes on. */
function backOf({ desk, atMs }: LeftDesk): Desk {
  return isNothingInHand({ ...desk, mode: 'work' }) ? desk : { ...desk, told: { tell: 'came-back', atMs } };
}

/** What a person carries: the reel, or a feeder that no slot was scanned for yet. */
function carriedOf(now: Desk): Desk {
  if (now.slot === null) return now;
  const { via, partial, question } = now;
  return { ...emptyDesk, via, partial, question, reel: now.old ?? now.reel };
}
