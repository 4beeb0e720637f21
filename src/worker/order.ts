// The order worker: a question in, the best order so far out, several times a second, until the budget is spent.
// Method: the search goes step by step and hands over what it has; the page ends the worker to cancel, and keeps the last answer.
// Refused: a message to stop, which a busy worker would not hear.

import { finishOrder, startOrder, workOfSeconds } from '../../shared/changeover/order-jobs.ts';
import type { OrderReply, OrderRequest } from './order-protocol.ts';

const port = self as unknown as {
  postMessage(reply: OrderReply): void;
  onmessage: ((event: MessageEvent<OrderRequest>) => void) | null;
}; // the same two members in a page and in a worker

/** Milliseconds between two answers. */
const TELL_MS = 150;

port.onmessage = ({ data: { question, seed, seconds } }) => {
  const started = startOrder(question, { seed, budget: workOfSeconds(seconds) });
  if (!started.ok) return port.postMessage({ kind: 'refused', problems: started.error });
  let toldMs = Number.NEGATIVE_INFINITY;
  const startMs = performance.now();
  for (;;) {
    const step = started.value.next();
    const nowMs = performance.now();
    // The budget is work; on a slow tablet the clock ends it, so that nobody waits four times as long.
    const isOver = step.done === true || nowMs - startMs > seconds * 4000;
    if (!isOver && nowMs - toldMs < TELL_MS) continue;
    toldMs = nowMs;
    port.postMessage({ kind: isOver ? 'done' : 'step', answer: finishOrder(question, step.value) });
    if (isOver) return;
  }
};
