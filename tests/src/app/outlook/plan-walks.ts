// The walks that an outlook asks for, planned at once: what the page has done by a worker in two steps.

import { answerWalks } from '../../../../shared/forecast/walks.ts';
import type { Outlook } from '../../../../src/app/outlook/model.ts';
import {
  toWalkPlan,
  type WalkPlan,
  type WalkWish,
  walkQuestion,
} from '../../../../src/app/outlook/rounds.ts';

/** Lays out the walks of one or more operators at once. */
export function planWalks(outlook: Outlook, wish: WalkWish): WalkPlan {
  const { question, slots } = walkQuestion(outlook, wish);
  return toWalkPlan(answerWalks(question), slots);
}
