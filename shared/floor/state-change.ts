// What the state holds of changeovers: checklists with their answers, the change itself, carts, the order of jobs.

import type { ChecklistTemplate, Signature } from './checklist.ts';
import type { PayloadOf } from './kinds.ts';

/** What a person answered to one step of a checklist. */
export interface StepAnswer {
  readonly value: string | number | null;
  /** Who, in order; more than one where a step wants several signatures. */
  readonly by: readonly string[];
  readonly atMs: number;
  /** The lead who let a mandatory step be skipped, and why; null where it was done. */
  readonly skipped: { readonly by: string; readonly reason: string } | null;
  /** Signatures of different people; absent where the step has none. */
  readonly signed?: readonly Signature[];
}

/** A checklist that was opened, with its answers. */
export interface Checklist extends Readonly<PayloadOf<'checklist.opened'>> {
  readonly openedMs: number;
  readonly openedBy: string | null;
  /** The tablet that has it in hand. */
  readonly tablet: string;
  readonly answers: ReadonlyMap<string, StepAnswer>;
  readonly closedMs: number | null;
}

/** The change of a line from one setup to the next, from the last good panel to the release. */
export interface Changeover extends Readonly<PayloadOf<'changeover.began'>> {
  readonly beganMs: number;
  readonly releasedMs: number | null;
  readonly releasedBy: string | null;
  /** The entry that released it. */
  readonly released: string | null;
  /** Later entries that released it too, on tablets that had not heard of the first; absent: none. */
  readonly releasedAgain?: readonly string[];
  /** The first entry that cancelled it, and when; one that is released all the same counts as released until a lead says what is true. */
  readonly dropped: { readonly entry: string; readonly atMs: number } | null;
  /** Newest measurement and newest look of each slot. */
  readonly measured: readonly (Readonly<PayloadOf<'panel.measured'>> & {
    readonly atMs: number;
    readonly by: string | null;
  })[];
  readonly looked: readonly (Readonly<PayloadOf<'panel.looked'>> & {
    readonly atMs: number;
    readonly by: string | null;
  })[];
}

/** True for one that was cancelled and that nobody released. */
export function isDropped({ releasedMs, dropped }: Pick<Changeover, 'releasedMs' | 'dropped'>): boolean {
  return dropped !== null && releasedMs === null;
}

/** A feeder made ready off the line. */
export type CartPlace = Readonly<PayloadOf<'cart.filled'>> & { readonly atMs: number };

/** The order of jobs that somebody kept for a line, who and when. */
export type KeptPlan = Readonly<PayloadOf<'plan.kept'>> & {
  readonly by: string | null;
  readonly atMs: number;
};

/** Changeovers as the log says. */
export interface ChangeState {
  /** `template` -> its versions, oldest first. */
  readonly templates: Map<string, readonly ChecklistTemplate[]>;
  readonly checklists: Map<string, Checklist>;
  /** All changeovers, oldest first, those that were cancelled too. */
  readonly changeovers: Map<string, Changeover>;
  /** Line -> changeover that is neither released nor cancelled. */
  readonly changing: Map<string, string>;
  /** Cart -> slot -> what is ready for it. */
  readonly carts: Map<string, ReadonlyMap<string, CartPlace>>;
  /** Line -> the newest order of jobs kept. */
  readonly plans: Map<string, KeptPlan>;
}

/** No changeover before any entry. */
export function emptyChange(): ChangeState {
  return {
    templates: new Map(),
    checklists: new Map(),
    changeovers: new Map(),
    changing: new Map(),
    carts: new Map(),
    plans: new Map(),
  };
}
