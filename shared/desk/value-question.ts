// Asks for a measurement where the line wants one before a reel feeds. Method: the verdict says that it is missing; then it is asked for instead of
// being written down as held, and what was measured goes into the reel in hand. Refused: asking before the verdict; whoever holds a reel
// that is refused anyway would measure for nothing.

import type { DraftEntry } from '../floor/kinds.ts';
import type { FloorState } from '../floor/state.ts';
import { type MeasuredPart, valueCheckOf } from '../floor/value-check.ts';
import type { VerifyAct } from '../floor/vocabulary.ts';
import { wantedOn } from '../floor/wanted.ts';
import type { VerifyAnswer } from '../verdict/verify.ts';
import type { Desk, DeskQuestion, ReelInHand } from './model.ts';

/** The question for a measurement, where nothing but that is missing for a verdict and nobody was asked yet; null else. */
export function valueQuestion(
  floor: FloorState,
  at: { readonly line: string; readonly setup: string; readonly slot: string },
  reel: Pick<ReelInHand, 'measured'>,
  { verdict, part, reasons }: VerifyAnswer,
): DeskQuestion | null {
  const { measured } = reel;
  const wasAsked = measured === null || (measured !== undefined && measured.part === part);
  const misses = reasons.some(({ code }) => code === 'value-unmeasured');
  if (part === null || verdict === 'refused' || !misses || wasAsked) return null;
  const wanted = wantedOn(floor, at.setup, at.slot);
  const note = wanted?.part === part ? wanted.note : undefined;
  const check = valueCheckOf(floor, at.line, { part, note });
  return check === null ? null : { ask: 'value', check };
}

/** What a person measured goes with the reel in hand; null: it cannot be measured, so that a lead decides. */
export function answerValue(desk: Desk, measured: MeasuredPart | null): Desk {
  if (desk.question?.ask !== 'value' || desk.reel === null) return desk;
  return { ...desk, question: null, reel: { ...desk.reel, measured } };
}

/** The entry of what was measured, where the verdict was made with it. */
export function measuredDrafts(
  at: { readonly act: VerifyAct; readonly line: string; readonly setup: string; readonly slot: string },
  reel: ReelInHand,
  { part, reasons }: VerifyAnswer,
): readonly DraftEntry[] {
  const { measured } = reel;
  const counts = reasons.some(({ code }) => code.startsWith('value-') && code !== 'value-unmeasured');
  // What stands ready on a feeder was measured when it was made ready, and told then.
  const isTold = reel.codes.length === 0;
  if (!measured || measured.part !== part || !counts || isTold) return [];
  const { act, line, setup, slot } = at;
  const payload = { act, line, setup, slot, reel: reel.reel, lot: reel.lot, ...measured };
  return [{ kind: 'reel.measured', payload }];
}
