// The walks and the supply that an outlook asks for, computed at once: what the page has done by workers.

import type { FloorState } from '../../../shared/floor/state.ts';
import { answerSupply } from '../../../shared/forecast/supply.ts';
import { answerWalks } from '../../../shared/forecast/walks.ts';
import type { Outlook } from '../../../shared/outlook/line.ts';
import { type Supply, supplyQuestionSteps, supplySteps } from '../../../shared/outlook/supply.ts';
import { toWalkPlan, type WalkOptions, type WalkPlan, walkQuestion } from '../../../shared/outlook/walks.ts';
import { toTheEnd } from '../../to-the-end.ts';

/** Lays out the walks of one or more operators at once. */
export function planWalks(outlook: Outlook, options: WalkOptions): WalkPlan {
  const { question, slots } = walkQuestion(outlook, options);
  return toWalkPlan(answerWalks(question), slots);
}

/** What must come, by when. */
export function lineSupply(floor: FloorState, outlook: Outlook): Supply {
  const { question, slots } = toTheEnd(supplyQuestionSteps(floor, outlook));
  return toTheEnd(supplySteps(floor, outlook, { answer: answerSupply(question), slots }));
}
