// What is in hand when the tablet goes from one of its lines to the other: a reel is in the hand and comes along, a slot waits on its line.
// Refused: to put all down, which loses what was scanned; to take a slot along, as the other line may have another slot of that name.

import { type Desk, emptyDesk } from '../../../shared/desk/model.ts';
import { takeLine, tellLine } from '../line-in-hand.ts';
import { type DeskState, goOn } from './state.ts';

const isEmpty = ({ mode, slot, feeder, reel, partial }: Desk) =>
  mode === 'work' && slot === null && feeder === null && reel === null && partial === null;

/** The desk follows the line in hand, whoever changed it by a tap: call it with each change. What waits on the new line comes back. */
export function followLine(state: DeskState): void {
  const { app, desk, left, shown } = state;
  const [from, line] = [state.line, app.line.peek()];
  if (line === from) return;
  if (shown.peek()) goOn(state);
  state.line = line;
  const now = desk.peek();
  const waiting = left.get(line ?? '');
  if (waiting === undefined && now.slot === null && now.mode === 'work') return;
  if (from !== null && !isEmpty(now)) left.set(from, now);
  left.delete(line ?? '');
  desk.value = waiting ?? emptyDesk;
}

/** A scan is for the other line: what is in hand goes there with it, as it does from slot to slot; the slot waits where it is. */
export function bringToLine(state: DeskState, line: string): void {
  const { app, desk, left } = state;
  const [from, now] = [state.line, desk.peek()];
  const carried = carriedOf(now);
  const waiting = left.get(line);
  if (from !== null && now.slot !== null && now.old === null)
    left.set(from, { ...now, reel: null, partial: null, question: null, told: null });
  if (isEmpty(carried)) left.delete(line);
  state.line = line;
  desk.value = isEmpty(carried) ? { ...(waiting ?? carried), question: now.question } : carried;
  takeLine(app, line);
  tellLine(app, line);
}

/** What a person carries: the reel, or a feeder that no slot was scanned for yet. */
function carriedOf(now: Desk): Desk {
  if (now.slot === null) return now;
  const { via, partial, question } = now;
  return { ...emptyDesk, via, partial, question, reel: now.old ?? now.reel };
}
