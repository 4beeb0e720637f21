// What the store holds for a line's run, computed off the page's thread. Apart from the watch, since nothing asks for it before the store's
// screen is opened.

import { lifeOnShelf } from '../../../shared/desk/floor-life.ts';
import { shelfSteps } from '../../../shared/floor/shelf.ts';
import type { SupplyAnswer, SupplyQuestion } from '../../../shared/forecast/supply.ts';
import type { Outlook } from '../../../shared/outlook/line.ts';
import { type Supply, supplyQuestion, toSupply } from '../../../shared/outlook/supply.ts';
import type { App } from '../app.ts';
import { inSlices, takeSlice } from '../device/slices.ts';
import { type AskWorker, startAskWorker } from './ask-worker.ts';

/** Has the supply computed for an outlook; the answer comes by `take`, unless a newer question took its place. */
export type SupplyAsked = (of: Outlook, take: (supply: Supply) => void) => void;

/** Makes ready to compute; the worker starts with the first question. */
export function startSupply(app: App): SupplyAsked {
  const supplier: AskWorker<SupplyQuestion, readonly SupplyAnswer[]> = startAskWorker(
    () => new Worker(new URL('../../worker/supply.ts', import.meta.url), { type: 'module' }),
    async () => (await import('../../../shared/forecast/supply.ts')).answerSupply,
  );
  let stop = () => {};
  return (of, take) => {
    stop();
    const ask = () => {
      const floor = app.store.floor();
      const lifeOf = lifeOnShelf(floor, of.line, app.clock.nowMs());
      const { question, slots } = supplyQuestion(floor, of, lifeOf);
      supplier(question, (answer) => take(toSupply(app.store.floor(), of, { answer, slots }, lifeOf)));
    };
    // With thousands of packages the first look at the store would hold the page up.
    const { line, run, pace } = of;
    const steps = shelfSteps(app.store.floor(), { line, setup: run.setup, nowMs: pace.nowMs });
    if (takeSlice(steps) === undefined) stop = inSlices(steps, ask);
    else ask();
  };
}
