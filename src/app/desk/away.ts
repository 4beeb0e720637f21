// What the desks away from the line share: that of a cart, and that of a second feeder. Nothing runs there, so that each reel is asked for
// an empty slot; what is told and asked is told and asked alike.

import {
  type Desk,
  type DeskTold,
  type DeskView,
  leaveQuestion,
  takeKnown,
} from '../../../shared/desk/model.ts';
import {
  answerCameBefore,
  answerMeaning,
  answerRunsHere,
  answerWhich,
} from '../../../shared/desk/take-scan.ts';
import { answerValue } from '../../../shared/desk/value-question.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import type { Reason } from '../../../shared/verdict/reasons.ts';
import { floorWhenDocked } from '../../../shared/verdict/verify-cart.ts';
import type { App } from '../app.ts';
import type { DeskRun } from './desk.ts';

/** What a desk does with an answer: the line's, or one away from it. */
export type Answers = Pick<
  DeskRun,
  'chooseKnown' | 'chooseMeaning' | 'chooseRunsHere' | 'chooseCameBefore' | 'chooseValue' | 'leaveQuestion'
>;

/** What is told of a label that cannot be taken, as at the line. */
export type LabelTold = Extract<
  DeskTold,
  { readonly tell: 'half-label' | 'no-part' | 'wrong-keyboard' | 'symbols-missing' }
>;

/** What came of a scan at every desk away from the line. */
export type AwayTold =
  | { readonly tell: 'sign-in' }
  | { readonly tell: 'unknown-code'; readonly text: string }
  | LabelTold
  | { readonly tell: 'held' | 'refused'; readonly reason: Reason | null };

/** What the desk told, as it is said away from the line; null where there is nothing to say. */
export function awayTold(told: DeskTold | null): AwayTold | null {
  switch (told?.tell) {
    case undefined:
      return null;
    case 'half-label':
    case 'no-part':
    case 'wrong-keyboard':
    case 'symbols-missing':
      return told;
    case 'unknown-code':
      return { tell: 'unknown-code', text: told.text };
    case 'unknown-slot':
      return { tell: 'unknown-code', text: told.slot };
    case 'place':
      return { tell: 'unknown-code', text: told.place };
    case 'panel':
      return { tell: 'unknown-code', text: told.serial };
    default:
      return null;
  }
}

/** Nothing on the line, so that each reel is asked for its empty slot. */
export function awayView(app: Pick<App, 'store'>, line: string, setup: string): DeskView {
  return { line, floor: floorWhenDocked(app.store.floor(), line, setup) };
}

/** Whether a reel was opened before is not asked away from the line: one that may have been is held there. */
export function withoutEarlier(desk: Desk): Desk {
  return desk.question?.ask === 'came-before' ? { ...desk, question: null, reel: desk.question.reel } : desk;
}

/** The same label read twice, not two scans that mean something. */
function isSameScan(one: Scan, other: Scan): boolean {
  const textOf = (scan: Scan) => scan.codes.map(({ text }) => text).join('\n');
  return textOf(one) === textOf(other);
}

/** What waits for its turn at a desk away from the line: a scan, or a person's answer. */
export type Todo = { readonly scan: Scan } | { readonly answer: (desk: Desk) => Desk };

export function isSameTodo(one: Todo, other: Todo): boolean {
  return 'scan' in one && 'scan' in other && isSameScan(one.scan, other.scan);
}

/** The desk while somebody must sign in: its reel is scanned again then, but for one off which a part was measured. */
export function withoutUnmeasured(desk: Desk): Desk {
  return desk.reel?.measured === undefined ? { ...desk, reel: null } : desk;
}

/** Answers as at the line; `go` gives the desk to the answer, and judges what is there then. */
export function awayAnswers(go: (answer: (desk: Desk, seen: DeskView) => Desk) => void): Answers {
  return {
    chooseKnown: (known) =>
      go((desk, seen) =>
        desk.question?.ask === 'which'
          ? answerWhich(desk, known, seen)
          : takeKnown({ ...desk, question: null }, known),
      ),
    chooseMeaning: (field, value) => go((desk, seen) => answerMeaning(desk, field, value, seen)),
    chooseRunsHere: (isSecond) => go((desk) => answerRunsHere(desk, isSecond)),
    chooseCameBefore: (isSame) => go((desk) => answerCameBefore(desk, isSame)),
    chooseValue: (measured) => go((desk) => answerValue(desk, measured)),
    leaveQuestion: () => go(leaveQuestion),
  };
}
