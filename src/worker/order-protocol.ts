// What the page and the order worker say to each other.

import type { OrderAnswer } from '../../shared/order/jobs.ts';
import type { OrderProblem, OrderQuestion } from '../../shared/order/problem.ts';

/** A question, with the seed and the seconds that the search may take. */
export interface OrderRequest {
  readonly question: OrderQuestion;
  readonly seed: number;
  readonly seconds: number;
}

/** The best so far, the end, or why no order can be. */
export type OrderReply =
  | { readonly kind: 'step' | 'done'; readonly answer: OrderAnswer }
  | { readonly kind: 'refused'; readonly problems: readonly OrderProblem[] };
