// How do several operators share a line's splices?
// Method: the line is cut into stretches, one each, at every place in turn; then single splices that are missed change hands while that
// helps. Each one's walks are planned as if alone. Not proven best: two people who may cross each other's way are a matter for them.

import { scheduleWalks, type WalkSchedule, type WalkScheduleAsk } from './walk-schedule.ts';

/** One operator's walks. `needs`: the places in the list that are theirs; `plan` counts needs by that same list. */
export interface CrewShare {
  readonly operator: string;
  readonly needs: readonly number[];
  readonly plan: WalkSchedule;
}

/** What sharing needs: the walks' question, who is there, and the slots in walking order (those not listed come last, by address). */
export interface CrewAsk {
  readonly walks: WalkScheduleAsk;
  /** One or more names, each once. */
  readonly operators: readonly string[];
  readonly walkingOrder: readonly string[];
}

/** Search effort for each of the many plans tried; see `SearchRules`. */
const TRY_EFFORT = 1000;

function planOf(ask: CrewAsk, operator: string, needs: readonly number[]): CrewShare {
  const plan = scheduleWalks({
    effort: TRY_EFFORT,
    ...ask.walks,
    splices: needs.map((need) => ask.walks.splices[need]!),
  });
  return {
    operator,
    needs,
    plan: {
      ...plan,
      walks: plan.walks.map((walk) => ({
        ...walk,
        splices: walk.splices.map((splice) => ({ ...splice, need: needs[splice.need]! })),
      })),
      missed: plan.missed.map((missed) => ({ ...missed, need: needs[missed.need]! })),
    },
  };
}

/** Missed first, then walks, then the busiest one's splices: smaller is better. */
function isBetter(a: readonly CrewShare[], b: readonly CrewShare[]): boolean {
  const sum = (shares: readonly CrewShare[], of: (share: CrewShare) => number) =>
    shares.reduce((total, share) => total + of(share), 0);
  const missed = sum(a, (share) => share.plan.missed.length) - sum(b, (share) => share.plan.missed.length);
  if (missed !== 0) return missed < 0;
  const walks = sum(a, (share) => share.plan.walks.length) - sum(b, (share) => share.plan.walks.length);
  if (walks !== 0) return walks < 0;
  const busiest = (shares: readonly CrewShare[]) => Math.max(...shares.map((share) => share.needs.length));
  return busiest(a) < busiest(b);
}

function byWalkingOrder(ask: CrewAsk): number[] {
  const place = new Map(ask.walkingOrder.map((slot, i) => [slot, i]));
  const { splices } = ask.walks;
  return splices
    .map((_, need) => need)
    .sort((a, b) => {
      const x = splices[a]!.slot;
      const y = splices[b]!.slot;
      const far = ask.walkingOrder.length;
      return (place.get(x) ?? far) - (place.get(y) ?? far) || (x < y ? -1 : x > y ? 1 : a - b);
    });
}

/** Cuts the walking order in two at the best place; the rest of the crew shares the second part in the same way. */
function split(ask: CrewAsk, order: readonly number[], operators: readonly string[]): CrewShare[] {
  const [first, ...others] = operators;
  if (first === undefined) return [];
  if (others.length === 0) return [planOf(ask, first, order)];
  let best: CrewShare[] | null = null;
  const step = Math.max(1, Math.floor(order.length / 12));
  for (let cut = 0; cut <= order.length; cut += step) {
    const tried = [planOf(ask, first, order.slice(0, cut)), ...split(ask, order.slice(cut), others)];
    if (best === null || isBetter(tried, best)) best = tried;
  }
  return best ?? [];
}

function handOver(ask: CrewAsk, shares: readonly CrewShare[]): CrewShare[] | null {
  for (const giver of shares) {
    for (const { need, reason } of giver.plan.missed) {
      if (reason !== 'crowdedOut') continue; // nobody alone could do it either
      for (const taker of shares) {
        if (taker === giver) continue;
        const tried = shares.map((share) => {
          if (share === taker) return planOf(ask, share.operator, [...share.needs, need]);
          if (share === giver)
            return planOf(
              ask,
              share.operator,
              share.needs.filter((other) => other !== need),
            );
          return share;
        });
        if (isBetter(tried, shares)) return tried;
      }
    }
  }
  return null;
}

/** Shares the splices among the operators: fewest missed, then fewest walks in all, then the load as even as may be. */
export function shareWalks(ask: CrewAsk): CrewShare[] {
  if (ask.operators.length === 0)
    throw new RangeError('Cannot share walks as someone must be there: current value is []');
  let shares = split(ask, byWalkingOrder(ask), ask.operators);
  for (let better = handOver(ask, shares); better !== null; better = handOver(ask, shares)) shares = better;
  return shares;
}
