// How a checklist stands: which steps are answered, which answers fall short, what may be done next, whether it can be closed.

import {
  type ChecklistStep,
  type ChecklistTemplate,
  type KnownFact,
  signingRoles,
} from '../floor/checklist.ts';
import type { StepAnswer } from '../floor/state.ts';
import type { Role } from '../floor/vocabulary.ts';
import { type ChangeFacts, isAsked } from './steps.ts';

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

/** The roles whose signature a step still lacks, in the order in which it names them. */
export function signaturesLeft(step: ChecklistStep, answer: StepAnswer | null): readonly Role[] {
  const given = (answer?.signed ?? []).map(({ role }) => role);
  return signingRoles(step).filter((role) => {
    const at = given.indexOf(role);
    if (at >= 0) given.splice(at, 1);
    return at < 0;
  });
}

/**
 * Says whether an answer fits its step; a number outside its limits, a wrong scan, a wrong choice or a signature that is missing does
 * not. What is known is never answered. A step from before roles were asked counts different people, however they signed.
 */
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
      return step.roles === undefined
        ? new Set(answer.by).size >= step.signatures
        : signaturesLeft(step, answer).length === 0;
    case 'known':
      return false;
  }
}

/** What the look at a checklist needs to know. */
export interface ChecklistNow {
  readonly facts: ChangeFacts;
  /** Whether the line stands now; steps that need it wait until then. */
  readonly isStopped: boolean;
  /** How much is open of what `known` steps ask; null or absent where nobody can tell, which is not done. */
  readonly known?: Readonly<Partial<Record<KnownFact, number | null>>>;
  /** A closed checklist stays as it was closed, whatever becomes of the line. */
  readonly isClosed?: boolean;
}

/** How a checklist stands. Answers to steps that the template does not have are left alone. */
export function viewChecklist(
  template: ChecklistTemplate,
  answers: ReadonlyMap<string, StepAnswer>,
  now: ChecklistNow,
): ChecklistView {
  const steps = template.steps.map((step): StepView => {
    const answer = answers.get(step.step) ?? null;
    return { step, answer, state: stateOf(step, answer, now) };
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

function stateOf(step: ChecklistStep, answer: StepAnswer | null, now: ChecklistNow): StepState {
  if (!isAsked(step, now.facts)) return 'not-asked';
  if (answer?.skipped) return 'skipped';
  if (step.kind === 'known') {
    const isSo = now.isClosed === true || (step.knows !== undefined && now.known?.[step.knows] === 0);
    if (isSo) return 'done';
  } else if (answer) {
    if (answerFits(step, answer)) return 'done';
    if (step.kind !== 'sign') return 'short'; // a signature that is missing is only open
  }
  return step.time === 'stopped' && !now.isStopped ? 'waiting' : 'open';
}
