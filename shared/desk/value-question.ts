// Asks for a measurement where the line wants one before a reel feeds. Method: the verdict says that it is missing; then it is asked for instead of
// being written down as held, and what was measured goes into the reel in hand. Refused: asking before the verdict; whoever holds a reel
// that is refused anyway would measure for nothing.

import type { DraftEntry } from '../floor/kinds.ts';
import type { FloorState } from '../floor/state.ts';
import { type MeasuredPart, valueCheckOf } from '../floor/value-check.ts';
import { type VerifyAct, verdicts } from '../floor/vocabulary.ts';
import { wantedOn } from '../floor/wanted.ts';
import { type VerifyAnswer, valueCodes } from '../verdict/verify.ts';
import type { Desk, DeskQuestion, ReelInHand } from './model.ts';

/** The question for a measurement, where nothing but that is missing for a verdict and nobody was asked yet; null else. */
export function valueQuestion(
  floor: FloorState,
  at: { readonly line: string; readonly setup: string; readonly slot: string },
  reel: ReelInHand,
  { verdict, part, reasons }: VerifyAnswer,
): DeskQuestion | null {
  const misses = reasons.some(({ code }) => code === 'value-unmeasured');
  if (part === null || verdict === 'refused' || !misses || reel.measured === null) return null;
  const wanted = wantedOn(floor, at.setup, at.slot);
  const note = wanted?.part === part ? wanted.note : undefined;
  const check = valueCheckOf(floor, at.line, { part, note });
  return check === null ? null : { ask: 'value', check, reel };
}

/** What a person measured goes with the reel in hand; null: it is left unmeasured, so that a lead decides. */
export function answerValue(desk: Desk, measured: MeasuredPart | null): Desk {
  const { question, reel } = desk;
  if (question?.ask !== 'value' || reel === null) return desk;
  if (measured !== null && measured.part !== question.check.part) return desk;
  return { ...desk, question: null, reel: { ...reel, measured, isMeasuredBefore: false } };
}

/** The same reel scanned again keeps what was measured of it a moment ago; so it is where somebody had to sign in between. */
export function keepMeasured(next: Desk, { reel: before }: Pick<Desk, 'reel'>): Desk {
  const { reel } = next;
  if (reel === null || reel.measured !== undefined || before?.measured === undefined) return next;
  const isSame = reel.reel === null ? isSameLabel(reel, before) : reel.reel === before.reel;
  if (!isSame) return next;
  const { measured, isMeasuredBefore = false } = before;
  return { ...next, reel: { ...reel, measured, isMeasuredBefore } };
}

function isSameLabel(one: ReelInHand, other: ReelInHand): boolean {
  return other.reel === null && one.codes.length > 0 && one.codes.join('\n') === other.codes.join('\n');
}

/** The entry of what was measured, where the verdict was made with it: as it was judged then. */
export function measuredDrafts(
  at: { readonly act: VerifyAct; readonly line: string; readonly setup: string; readonly slot: string },
  reel: ReelInHand,
  { part, reasons }: VerifyAnswer,
): readonly DraftEntry[] {
  const { measured, isMeasuredBefore = false } = reel;
  // What was measured when a feeder was made ready was told then.
  if (!measured || measured.part !== part || isMeasuredBefore) return [];
  const { act, line, setup, slot } = at;
  for (const reason of reasons) {
    const verdict = verdicts.find((each) => valueCodes[each] === reason.code);
    const { uncertainty, guard } = reason;
    if (verdict === undefined || typeof uncertainty !== 'number' || typeof guard !== 'number') continue;
    const facts = { act, line, setup, slot, reel: reel.reel, lot: reel.lot };
    return [{ kind: 'reel.measured', payload: { ...facts, ...measured, uncertainty, guard, verdict } }];
  }
  return [];
}
