// How a checklist stands: which steps are answered, which answers fall short, what may be done next, whether it can be closed.

import type { ChecklistStep, ChecklistTemplate } from '../setup/checklist.ts';
import type { StepAnswer } from '../setup/state.ts';
import { type ChangeFacts, isAsked } from './checklist-steps.ts';

/** How one step stands. `short` = answered, but not within what it asks. */
export const stepStates = ['open', 'waiting', 'done', 'short', 'skipped', 'not-asked'] as const;
export type StepState = (typeof stepStates)[number];

/** One step with its state. */
export interface StepView {
  readonly step: ChecklistStep;
  readonly state: StepState;
  readonly answer: StepAnswer | null;
}

/** A checklist against its answers. */
export interface ChecklistView {
  readonly steps: readonly StepView[];
  readonly done: number;
  readonly asked: number;
  /** Mandatory steps that are neither done nor skipped by a lead. */
  readonly missing: readonly string[];
  readonly canClose: boolean;
}

/** Says whether an answer fits its step; a number outside its limits, a wrong scan or a wrong choice does not. */
export function answerFits(step: ChecklistStep, answer: StepAnswer): boolean {
  const { value } = answer;
  switch (step.kind) {
    case 'tick':
    case 'photo':
      return value !== null;
    case 'note':
      return typeof value === 'string' && value.trim() !== '';
    case 'measure':
      return (
        typeof value === 'number' &&
        Number.isFinite(value) &&
        (step.least === null || value >= step.least) &&
        (step.most === null || value <= step.most)
      );
    case 'scan':
      return typeof value === 'string' && value !== '' && (step.expects === null || value === step.expects);
    case 'choice':
      return (
        typeof value === 'string' && (step.right.length === 0 ? step.options : step.right).includes(value)
      );
    case 'sign':
      return new Set(answer.by).size >= step.signatures;
  }
}

/**
 * How a checklist stands. `isStopped`: whether the line stands now; steps that need it wait until then. Answers to steps that the
 * template does not have are left alone.
 */
export function viewChecklist(
  template: ChecklistTemplate,
  answers: ReadonlyMap<string, StepAnswer>,
  now: { readonly facts: ChangeFacts; readonly isStopped: boolean },
): ChecklistView {
  const steps = template.steps.map((step): StepView => {
    const answer = answers.get(step.step) ?? null;
    if (!isAsked(step, now.facts)) return { step, state: 'not-asked', answer };
    if (!answer)
      return { step, state: step.time === 'stopped' && !now.isStopped ? 'waiting' : 'open', answer };
    if (answer.skipped) return { step, state: 'skipped', answer };
    return { step, state: answerFits(step, answer) ? 'done' : 'short', answer };
  });
  const asked = steps.filter((view) => view.state !== 'not-asked');
  const missing = asked
    .filter((view) => view.step.mandatory && view.state !== 'done' && view.state !== 'skipped')
    .map((view) => view.step.step);
  return {
    steps,
    done: asked.filter((view) => view.state === 'done' || view.state === 'skipped').length,
    asked: asked.length,
    missing,
    canClose: missing.length === 0,
  };
}
