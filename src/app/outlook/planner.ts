// Plans walks off the page's thread.

import type { WalkAnswer, WalkQuestion } from '../../../shared/forecast/walks.ts';
import { type AskWorker, startAskWorker } from './ask-worker.ts';

/** Asks for walks. */
export type Planner = AskWorker<WalkQuestion, WalkAnswer>;

/** A planner of walks; its worker starts with the first question. */
export function startPlanner(): Planner {
  return startAskWorker(
    () => new Worker(new URL('../../worker/walks.ts', import.meta.url), { type: 'module' }),
    async () => (await import('../../../shared/forecast/walks.ts')).answerWalks,
  );
}
