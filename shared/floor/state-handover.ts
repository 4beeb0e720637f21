// What the state holds of handovers. Shapes only.

import type { PayloadOf } from './kinds.ts';

/** The second signature. */
export type Taken = Readonly<Pick<PayloadOf<'shift.taken'>, 'by' | 'came' | 'more' | 'known'>> & {
  readonly entry: string;
  readonly atMs: number;
};

/** A handover that the lead going off signed. */
export type Handed = Readonly<Omit<PayloadOf<'shift.handed'>, 'checked' | 'passkey'>> & {
  readonly entry: string;
  readonly atMs: number;
  /** Null while no other lead took it. */
  readonly taken: Taken | null;
};

/** The part of the state that handovers stand in. */
export interface HandoverState {
  /** Line -> its handovers, the newest last. */
  readonly handovers: Map<string, readonly Handed[]>;
}

/** None yet. */
export function emptyHandovers(): HandoverState {
  return { handovers: new Map() };
}
