// Plans walks off the page's thread.

import type { WalkAnswer, WalkQuestion } from '../../../shared/forecast/walks.ts';
import { type Aside, startAside } from './aside.ts';

/** Asks for walks. */
export type Planner = Aside<WalkQuestion, WalkAnswer>;

/** A planner of walks; its worker starts with the first question. */
export function startPlanner(): Planner {
  return startAside(
    () => new Worker(new URL('../../worker/walks.ts', import.meta.url), { type: 'module' }),
    async () => (await import('../../../shared/forecast/walks.ts')).answerWalks,
  );
}
