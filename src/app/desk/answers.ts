// What a person taps at the desk: answers to its questions, and ways on from what it shows.

import { emptyDesk, leaveQuestion as left, takeKnown } from '../../../shared/desk/model.ts';
import type { Recognised } from '../../../shared/floor/recognise.ts';
import type { MeasuredPart } from '../../../shared/floor/value-check.ts';
import { bringToLine, takeShown } from './lines.ts';
import { type DeskState, goOn, viewOf } from './state.ts';
import { setDesk, settle } from './taking.ts';

/** Which of the things that a code may be it is. */
export function chooseKnown(state: DeskState, known: Recognised): void {
  const { desk, judgement } = state;
  const { question } = desk.value;
  if (known.is === 'slot' && known.line !== state.line) bringToLine(state, known.line, known.slot);
  const seen = viewOf(state);
  if (question?.ask === 'which' && seen && judgement)
    settle(state, judgement.answerWhich(desk.value, known, seen), question.rest);
  else setDesk(state, takeKnown({ ...desk.value, question: null }, known));
}

/** Which meaning a text on a label has. */
export function chooseMeaning(state: DeskState, field: string, value: string): void {
  const { app, desk, judgement } = state;
  const seen = viewOf(state);
  const via = desk.value.reel?.via;
  if (!seen || !judgement || via === undefined || via === 'machine') return;
  const next = judgement.answerMeaning(desk.value, field, value, seen);
  settle(state, next, { codes: [], via, atMs: app.clock.nowMs() });
}

/** What a label is that reads like the running reel's: that reel, or a second one. */
export function chooseRunsHere(state: DeskState, isSecond: boolean): void {
  const { desk, judgement } = state;
  if (judgement) setDesk(state, judgement.answerRunsHere(desk.value, isSecond));
}

/** Whether a reel that reads like an earlier one is that reel. */
export function chooseCameBefore(state: DeskState, isSame: boolean): void {
  const { desk, judgement } = state;
  if (judgement) setDesk(state, judgement.answerCameBefore(desk.value, isSame));
}

/** What a part off the reel in hand measures; null: it cannot be measured. */
export function chooseValue(state: DeskState, measured: MeasuredPart | null): void {
  const { desk, judgement } = state;
  if (judgement) setDesk(state, judgement.answerValue(desk.value, measured));
}

/** The reel that was scanned as the running one is what stands there: the slot is checked with it. */
export function standsHere(state: DeskState): void {
  const { desk, judgement } = state;
  if (judgement) setDesk(state, judgement.checkStanding(desk.value));
}

/** The label that comes code by code has no more. */
export function takeEnough(state: DeskState): void {
  const { desk, judgement } = state;
  const seen = viewOf(state);
  if (seen && judgement) setDesk(state, judgement.takeEnough(desk.value, seen));
}

/** What a question was about is dropped, the rest of the task stays. */
export function leaveQuestion(state: DeskState): void {
  setDesk(state, left(state.desk.value));
}

/** How many pieces are on the reel in hand. */
export function setQuantity(state: DeskState, quantity: number): void {
  const { desk } = state;
  const last = takeShown(state);
  const reel = last?.reel ?? desk.value.reel;
  if (!reel) return;
  const slot = last?.slot ?? desk.value.slot;
  setDesk(state, {
    ...desk.value,
    told: null,
    slot,
    atSlot: true,
    feeder: last?.feeder ?? desk.value.feeder,
    reel: { ...reel, quantity, basis: 'typed' },
  });
}

/** The refused reel stays in hand for another slot. */
export function carryOn(state: DeskState): void {
  const { desk } = state;
  const last = takeShown(state);
  if (!last) return;
  const { mode, via } = desk.value;
  desk.value = { ...emptyDesk, mode, via, reel: last.reel };
}

/** Asks for the verdict again, on what is in hand. */
export function askAgain(state: DeskState): void {
  takeShown(state);
  setDesk(state, { ...state.desk.value, told: null });
}

/** Puts all down on the line in hand; what a shown verdict of another line leaves waits there. */
export function clearDesk(state: DeskState): void {
  const { desk } = state;
  goOn(state);
  desk.value = { ...emptyDesk, mode: desk.value.mode === 'sweep' ? 'sweep' : 'work' };
}

/** Takes the shown verdict back. Resolves when that is durable. */
export async function undoVerdict(state: DeskState): Promise<void> {
  const last = state.shown.value;
  if (!last) return;
  const reason = 'taken back on the verdict screen';
  const payload = { of: last.entry, line: last.line, slot: last.slot, reason };
  await state.app.write([{ kind: 'entry.corrected', payload }]);
  state.shown.value = null;
}
