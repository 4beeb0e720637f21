// What a practice label is, what it promises, and the groups in which labels are shown.

import type { FloorState } from '../shared/floor/state.ts';
import type { Verdict, VerifyAct } from '../shared/floor/vocabulary.ts';
import type { ReasonCode } from '../shared/verdict/reasons.ts';
import type { LabelSymbol, ReelFacts } from './reels.ts';

/** Groups, in order. */
export const practiceGroups = [
  'Reels to splice next',
  'Reels to load',
  'Reels taken by a rule',
  'Reels for a lead to decide',
  'Reels that are refused',
  'Slots',
  'Feeders',
  'Carts',
  'Badges',
  'Panels',
] as const;

/** Every reel of this lot is refused. */
export const blockedLot = 'LT-7781-Q';

/** The plant's feeder carts. */
export const carts = ['CART-1', 'CART-2', 'CART-3'] as const;

/** A label on the screen or on the sheet. */
export interface PracticeLabel {
  readonly id: string;
  readonly group: (typeof practiceGroups)[number];
  readonly title: string;
  readonly hint: string;
  readonly codes: readonly LabelSymbol[];
}

/** What a reel's label promises: what it says, and the verdict where the hint tells to put it. */
export interface PracticePromise {
  readonly act: VerifyAct;
  readonly slot: string;
  readonly feeder: string | null;
  readonly facts: ReelFacts;
  readonly verdict: Verdict;
  /** The reason that must be among those given; null = accepted whatever the notes. */
  readonly reason: ReasonCode | null;
}

/** A label with its promise; null for labels that are no reel. */
export interface Practice {
  readonly label: PracticeLabel;
  readonly promise: PracticePromise | null;
}

/** The floor for which labels are made. */
export interface PracticeScene {
  readonly state: FloorState;
  readonly line: string;
  readonly nowMs: number;
}
