// What the page and the worker that proposes slots say to each other.

import type { ProposalQuestion, ProposedPart, WantedPart } from '../../shared/assign/propose.ts';

/** One question; `id` tells its answer from that of an earlier one. */
export interface AssignRequest {
  readonly id: number;
  readonly question: ProposalQuestion;
  /** The parts of boards that are built before this one and proposed with it. */
  readonly others: readonly (readonly WantedPart[])[];
}

/** The proposal. */
export interface AssignReply {
  readonly id: number;
  readonly parts: readonly ProposedPart[];
  readonly others: readonly (readonly ProposedPart[])[];
}
