// What the store holds for a line's run, computed beside the work in hand: what there is and what comes of it in slices of the page's thread, since a store
// of thousands of packages costs more to hand over than to look through; who takes what by a worker. Apart from the watch, since nothing asks for it before
// the store's screen is opened.

import { lifeOnShelf } from '../../../shared/desk/floor-life.ts';
import { shelfSteps } from '../../../shared/floor/shelf.ts';
import type { SupplyAnswer, SupplyQuestion } from '../../../shared/forecast/supply.ts';
import type { Outlook } from '../../../shared/outlook/line.ts';
import {
  type Supply,
  type SupplyAsk,
  supplyQuestionSteps,
  supplySteps,
} from '../../../shared/outlook/supply.ts';
import type { App } from '../app.ts';
import { inSlices } from '../device/slices.ts';
import { type AskWorker, startAskWorker } from './ask-worker.ts';
import { ofOneMoment } from './one-moment.ts';

/** Has the supply computed for an outlook; the answer comes by `take`, unless a newer question took its place. */
export type SupplyAsked = (of: Outlook, take: (supply: Supply) => void) => void;

/** Makes ready to compute; the worker starts with the first question. */
export function startSupply(app: Pick<App, 'store' | 'clock'>): SupplyAsked {
  const supplier: AskWorker<SupplyQuestion, readonly SupplyAnswer[]> = startAskWorker(
    () => new Worker(new URL('../../worker/supply.ts', import.meta.url), { type: 'module' }),
    async () => (await import('../../../shared/forecast/supply.ts')).answerSupply,
  );
  let stopAsking = () => {};
  let stopTaking = () => {};
  return (of, take) => {
    // An answer on its way is taken all the same: where looks come faster than answers, there would be none.
    stopAsking();
    const asking = ofOneMoment(app.store, () => askSteps(app, of));
    stopAsking = inSlices(asking, ({ question, slots }) => {
      supplier(question, (answer) => {
        stopTaking();
        const taking = ofOneMoment(app.store, () => takeSteps(app, of, { answer, slots }));
        stopTaking = inSlices(taking, take);
      });
    });
  };
}

function* askSteps(
  { store, clock }: Pick<App, 'store' | 'clock'>,
  of: Outlook,
): Generator<undefined, SupplyAsk> {
  const floor = store.floor();
  const { line, run, pace } = of;
  yield* shelfSteps(floor, { line, setup: run.setup, nowMs: pace.nowMs });
  yield;
  const lifeOf = lifeOnShelf(floor, line, clock.nowMs());
  yield;
  return yield* supplyQuestionSteps(floor, of, lifeOf);
}

function* takeSteps(
  { store, clock }: Pick<App, 'store' | 'clock'>,
  of: Outlook,
  answered: { readonly answer: readonly SupplyAnswer[] } & Pick<SupplyAsk, 'slots'>,
): Generator<undefined, Supply> {
  const floor = store.floor();
  const lifeOf = lifeOnShelf(floor, of.line, clock.nowMs());
  yield;
  return yield* supplySteps(floor, of, answered, lifeOf);
}
