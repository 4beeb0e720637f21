// Runs the desk: takes scans, asks for the verdict when everything is there, writes it down, and only then shows it.

import { effect, type Signal, untracked } from '@preact/signals';
import type { Desk, DeskView } from '../../../shared/desk/model.ts';
import type { Recognised } from '../../../shared/floor/recognise.ts';
import type { MeasuredPart } from '../../../shared/floor/value-check.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import type { App } from '../app.ts';
import {
  askAgain,
  carryOn,
  chooseCameBefore,
  chooseKnown,
  chooseMeaning,
  chooseRunsHere,
  chooseValue,
  clearDesk,
  leaveQuestion,
  setQuantity,
  standsHere,
  takeEnough,
  undoVerdict,
} from './answers.ts';
import { followLine } from './lines.ts';
import {
  type DeskOthers,
  goOn,
  type LeftDesk,
  openDesk,
  type ShownVerdict,
  type StepOnScreen,
  viewOf,
} from './state.ts';
import { getReady, setDesk, takeAtDesk } from './taking.ts';

export type { ShownVerdict, StepOnScreen } from './state.ts';

/** The running desk. */
export interface DeskRun {
  readonly desk: Signal<Desk>;
  readonly shown: Signal<ShownVerdict | null>;
  /** Set while an entry is being written: the wells wait. */
  readonly busy: Signal<boolean>;
  /** The scan step that is next on the screen; whoever shows a checklist sets it. */
  readonly step: Signal<StepOnScreen | null>;
  /** What was in hand on lines that were left for another, by line. */
  readonly left: Signal<ReadonlyMap<string, LeftDesk>>;
  readonly view: () => DeskView | null;
  readonly take: (scan: Scan) => boolean;
  /** Fetches what reads labels and judges reels; scans wait for it. */
  readonly getReady: () => Promise<void>;
  readonly chooseSlot: (slot: string | null) => void;
  readonly chooseKnown: (known: Recognised) => void;
  /** What a label is that reads like the running reel's: that reel, or a second one. */
  readonly chooseRunsHere: (isSecond: boolean) => void;
  readonly chooseCameBefore: (isSame: boolean) => void;
  /** What a part off the reel in hand measures; null: it cannot be measured. */
  readonly chooseValue: (measured: MeasuredPart | null) => void;
  /** The refused reel stays in hand and goes to another slot, whose code is wanted then. */
  readonly carryOn: () => void;
  /** Goes on with what came back after a reload. */
  readonly goOnWith: () => void;
  /** Asks for the verdict again, on what is in hand: what stood in its way was put right. */
  readonly again: () => void;
  readonly chooseMeaning: (field: string, value: string) => void;
  /** Leaves a question without an answer: what it was about is dropped, the rest of the task stays. */
  readonly leaveQuestion: () => void;
  readonly setQuantity: (quantity: number) => void;
  /** The label that comes code by code has no more: it is judged as it is. */
  readonly takeEnough: () => void;
  readonly skipOldReel: () => void;
  /** The reel that was scanned as the running one, and is another than the log has there, is what stands there. */
  readonly standsHere: () => void;
  readonly clear: () => void;
  /** Ends the shown verdict: an accepted one goes on, a refused one keeps slot and feeder for the next reel. */
  readonly goOn: () => void;
  readonly undo: () => Promise<void>;
}

/** Makes the desk of an app. */
export function createDesk(app: App, others: DeskOthers): DeskRun {
  const state = openDesk(app, others);
  const { desk, shown, busy, step } = state;
  effect(() => {
    if (app.person.value && desk.peek().told?.tell === 'sign-in')
      setDesk(state, { ...desk.peek(), told: null });
  });
  effect(() => {
    app.line.value;
    untracked(() => followLine(state));
  });
  return {
    desk,
    shown,
    busy,
    step,
    left: state.left,
    view: () => viewOf(state),
    take: (scan) => takeAtDesk(state, scan),
    getReady: () => getReady(state),
    chooseSlot: (slot) =>
      setDesk(state, { ...desk.value, slot, atSlot: false, old: null, told: null, question: null }),
    chooseKnown: (known) => chooseKnown(state, known),
    chooseRunsHere: (isSecond) => chooseRunsHere(state, isSecond),
    chooseCameBefore: (isSame) => chooseCameBefore(state, isSame),
    chooseValue: (measured) => chooseValue(state, measured),
    carryOn: () => carryOn(state),
    goOnWith: () => setDesk(state, { ...desk.value, told: null }),
    again: () => askAgain(state),
    chooseMeaning: (field, value) => chooseMeaning(state, field, value),
    leaveQuestion: () => leaveQuestion(state),
    setQuantity: (quantity) => setQuantity(state, quantity),
    takeEnough: () => takeEnough(state),
    skipOldReel: () => setDesk(state, { ...desk.value, atSlot: true, told: null }),
    standsHere: () => standsHere(state),
    clear: () => clearDesk(state),
    goOn: () => goOn(state),
    undo: () => undoVerdict(state),
  };
}
