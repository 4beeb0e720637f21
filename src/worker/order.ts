// The order worker: a question in, the best order so far out, several times a second, until the budget is spent.
// Method: the search goes step by step and hands over what it has; the page ends the worker to cancel, and keeps the last answer.
// Refused: a message to stop, which a busy worker would not hear.

import { finishOrder, type OrderAnswer } from '../../shared/order/jobs.ts';
import { startPaced } from './order-pace.ts';
import type { OrderReply, OrderRequest } from './order-protocol.ts';

const port = self as unknown as {
  postMessage(reply: OrderReply): void;
  onmessage: ((event: MessageEvent<OrderRequest>) => void) | null;
}; // the same two members in a page and in a worker

/** Milliseconds between two answers. */
const TELL_MS = 150;

port.onmessage = ({ data: { question, seed, seconds } }) => {
  const nowMs = () => performance.now();
  const started = startPaced(question, { seed, seconds }, nowMs);
  if (!started.ok) return port.postMessage({ kind: 'refused', problems: started.error });
  let toldMs = Number.NEGATIVE_INFINITY;
  let best: OrderAnswer | null = null;
  const startMs = nowMs();
  for (;;) {
    const step = started.value.next();
    // Paced by its first moments; where the device became slower since, the clock ends it.
    const isOver = step.done === true || nowMs() - startMs > seconds * 2000;
    if (!isOver && nowMs() - toldMs < TELL_MS) continue;
    toldMs = nowMs();
    const answer = finishOrder(question, step.value);
    if (best === null || !isBetter(best, answer)) best = answer;
    port.postMessage({ kind: isOver ? 'done' : 'step', answer: { ...best, share: answer.share } });
    if (isOver) return;
  }
};

/** Less late, or as late with fewer feeders put in. */
function isBetter(one: OrderAnswer, other: OrderAnswer): boolean {
  const late = one.plan.lateMinutes - other.plan.lateMinutes;
  return late < 0 || (late === 0 && one.changes < other.changes);
}
