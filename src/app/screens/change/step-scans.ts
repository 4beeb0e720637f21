// Scans for the steps of the checklist on the screen: tells the desk which step is next, keeps what it gives back, and says what was wrong.

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { ChecklistView } from '../../../../shared/checklist/answers.ts';
import { currentScanStep } from '../../../../shared/checklist/current.ts';
import type { ChecklistStep } from '../../../../shared/floor/checklist.ts';
import { judgeStepScan, type StepAsks, type StepScan } from '../../../../shared/floor/step-scan.ts';
import { useApp } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { isIdle } from '../../frame/camera-task.ts';
import { checklistWords } from '../../words/checklist.ts';
import { say } from '../../words/words.ts';

/** What the cards of the steps need of it. */
export interface StepScans {
  /** The step that the next scan answers; null where none does. */
  readonly next: string | null;
  /** What was scanned for a step and is not what it asks for; null where nothing was. */
  readonly wrongOf: (step: string) => string | null;
  /** The field of a step has the focus, or none has. */
  readonly focus: (step: string | null) => void;
  /** A code typed into the field of a step. */
  readonly typed: (step: ChecklistStep, text: string) => void;
  readonly forget: () => void;
}

interface StepScansAsked {
  readonly line: string;
  readonly view: ChecklistView;
  /** False where nobody may answer here and now. */
  readonly mayAnswer: boolean;
  /** Keeps an answer; says whether it is durable. */
  readonly onAnswer: (step: ChecklistStep, value: string) => Promise<boolean>;
}

export function useStepScans(desk: DeskRun, asked: StepScansAsked): StepScans {
  const app = useApp();
  const [focused, setFocused] = useState<string | null>(null);
  const [chosen, setChosen] = useState<string | null>(null);
  const [wrong, setWrong] = useState<{ readonly step: string; readonly text: string } | null>(null);
  const next = asked.mayAnswer ? currentScanStep(asked.view, focused ?? chosen) : null;
  const isMeant = next !== null && next.step === focused;

  function settle(step: ChecklistStep, judged: StepScan): void {
    const words = say(checklistWords);
    if (judged.ok)
      void asked.onAnswer(step, judged.value).then((isKept) => {
        // Told wherever it came from: the camera lies over the list, and of a field that goes with its answer nothing is heard.
        if (isKept) app.notice.value = { tone: 'go', text: words.scanKept(judged.value) };
      });
    const text = judged.ok
      ? null
      : `${words.scannedIs[judged.is](judged.name)} ${words.scanWants[step.wants ?? 'other']}`;
    setWrong(text === null ? null : { step: step.step, text });
  }

  function onScan(judged: StepScan): void {
    if (next !== null) settle(next, judged);
  }

  const newest = useRef(onScan);
  newest.current = onScan;
  const asks = next === null ? null : asksOf(asked.view, next);
  useLayoutEffect(() => {
    if (asks === null) return;
    const own = { line: asked.line, asks, isMeant, onScan: (judged: StepScan) => newest.current(judged) };
    desk.step.value = own;
    return () => {
      if (desk.step.peek() === own) desk.step.value = null;
    };
  }, [asked.line, next?.step, isMeant, asks?.taken.join('\n')]);

  // What is in hand waits for its own next code.
  const isForStep = isMeant || isIdle(desk.desk.value);
  return {
    next: isForStep ? (next?.step ?? null) : null,
    wrongOf: (step) => (wrong?.step === step ? wrong.text : null),
    focus: (step) => {
      setFocused(step);
      if (step !== null) setChosen(step);
    },
    typed: (step, text) =>
      settle(step, judgeStepScan(app.store.floor(), asked.line, asksOf(asked.view, step), [text])),
    forget: () => setWrong(null),
  };
}

/** What a step asks, with the codes that steps of other kinds were answered with: none of them is the answer here. */
function asksOf(view: ChecklistView, { wants, expects }: ChecklistStep): StepAsks {
  const taken = view.steps.flatMap(({ step: other, answer }) =>
    other.kind === 'scan' && other.wants !== wants && typeof answer?.value === 'string' ? [answer.value] : [],
  );
  return { wants: wants ?? 'other', expects, taken };
}
