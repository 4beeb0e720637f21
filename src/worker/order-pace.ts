// How does a search whose budget is work end in the time that somebody waits for, on a slow tablet too?
// Method: it begins with the work that a present-day core does in that time. When a tenth of the time is over, the pace so far
// tells whether it will end in time; if not, it begins again with the work that this device does in what is left.
// Refused: the clock alone, which would stop a slow device in the middle of its cooling, where orders are still poor.

import { ok, type Result } from '../../shared/kit/result.ts';
import { type OrderState, startOrder, workOfSeconds } from '../../shared/order/jobs.ts';
import type { OrderProblem, OrderQuestion } from '../../shared/order/problem.ts';

/** Parts of the time: until the code is warm, and until the pace is judged. */
const WARM_SHARE = 0.03;
const JUDGED_SHARE = 0.1;
/** A search that would take less than this many times its time is left alone. */
const BEARABLE = 1.2;

/** As `startOrder`, in about `seconds` by the clock `nowMs`, or less; the states before a second beginning may be the better ones. */
export function startPaced(
  question: OrderQuestion,
  { seed, seconds }: { readonly seed: number; readonly seconds: number },
  nowMs: () => number,
): Result<Generator<OrderState, OrderState>, readonly OrderProblem[]> {
  const startMs = nowMs();
  const spent = () => (nowMs() - startMs) / 1000;
  const budget = workOfSeconds(seconds);
  const started = startOrder(question, { seed, budget });
  if (!started.ok) return started;

  function* paced(first: Generator<OrderState, OrderState>): Generator<OrderState, OrderState> {
    let warm: { readonly at: number; readonly share: number } | null = null;
    for (let step = first.next(); ; step = first.next()) {
      if (step.done === true) return step.value;
      yield step.value;
      const at = spent();
      const { share } = step.value;
      if (at < WARM_SHARE * seconds) continue;
      warm ??= { at, share };
      if (at < JUDGED_SHARE * seconds) continue;
      if (share <= warm.share || at <= warm.at) break;
      const pace = (share - warm.share) / (at - warm.at);
      const left = seconds - at;
      if ((1 - share) / pace < BEARABLE * left) break;
      const again = startOrder(question, { seed, budget: Math.max(1, Math.round(pace * budget * left)) });
      if (again.ok) return yield* again.value;
      break;
    }
    return yield* first;
  }
  return ok(paced(started.value));
}
