// Who walks when, all in one question: rounds of one or more operators, held on to, with cures for what is missed first.
// Method: figures in, figures out, so that a page can hand the question to a worker and match the answer with its slots.

import { shareRounds } from './crew.ts';
import { type Cure, curesFor } from './cure.ts';
import { type KnownRound, type MissedSplice, planRounds, type Round, type RoundsAsk } from './rounds.ts';

/** What is asked. */
export interface WalkQuestion {
  readonly rounds: RoundsAsk;
  /** How many people, 1 or more. */
  readonly operators: number;
  /** The slots as people walk past them. */
  readonly walkingOrder: readonly string[];
  /** For each splice: parts that its reel loses a second, placed and lost. */
  readonly partsPerSecond: readonly number[];
  /** Missed splices whose cures are looked for, soonest first: each costs some fifteen plans. */
  readonly cured: number;
  /** Keeps who does what even where somebody is missed. */
  readonly keepShares: boolean;
  /** The plan last shown, one list an operator. */
  readonly known?: readonly (readonly KnownRound[])[];
}

/** What is answered: one share an operator; cures of the missed splices in order of time. */
export interface WalkAnswer {
  readonly shares: readonly WalkShare[];
  readonly cures: readonly (readonly Cure[])[];
}

/** Plans the walks. Cost: one plan for one person; for several, a hundred where they share anew. */
export function answerWalks(question: WalkQuestion): WalkAnswer {
  const shares = shared(question);
  const missed = shares.flatMap((share) => share.missed).sort((a, b) => a.byMs - b.byMs);
  const cures = missed.slice(0, question.cured).map(({ need }) =>
    curesFor({
      rounds: question.rounds,
      need,
      partsPerSecond: question.partsPerSecond[need] ?? 0,
      secondPerson: true,
      secondSlot: true,
    }),
  );
  return { shares, cures };
}

/** One operator's walks; needs count by the question's splices. */
export interface WalkShare {
  readonly rounds: readonly Round[];
  readonly missed: readonly MissedSplice[];
}

function shared(question: WalkQuestion): readonly WalkShare[] {
  const { rounds: ask, known, operators } = question;
  if (operators <= 1) {
    const previous = known?.[0];
    return [planRounds(previous === undefined ? ask : { ...ask, previous })];
  }
  const held = known?.length === operators ? heldShares(question, known) : null;
  // Sharing anew costs a hundred plans: only where somebody would be missed.
  if (held !== null && (question.keepShares || held.every((share) => share.missed.length === 0))) return held;
  const names = Array.from({ length: operators }, (_, index) => String(index));
  const { walkingOrder } = question;
  const fresh = shareRounds({ rounds: ask, operators: names, walkingOrder }).map((share) => share.plan);
  if (held === null) return fresh;
  return isWorse(held, fresh) ? fresh : held;
}

function isWorse(held: readonly WalkShare[], fresh: readonly WalkShare[]): boolean {
  const sum = (shares: readonly WalkShare[], of: (share: WalkShare) => number) =>
    shares.reduce((total, share) => total + of(share), 0);
  const missed = sum(held, (share) => share.missed.length) - sum(fresh, (share) => share.missed.length);
  const rounds = sum(held, (share) => share.rounds.length) - sum(fresh, (share) => share.rounds.length);
  return missed > 0 || (missed === 0 && rounds > 0);
}

/** Each operator keeps the slots that were theirs; new ones go to whoever has a neighbour in the walking order. */
function heldShares(
  { rounds: ask, walkingOrder }: WalkQuestion,
  known: readonly (readonly KnownRound[])[],
): readonly WalkShare[] {
  const owner = new Map<string, number>();
  known.forEach((rounds, operator) => {
    for (const slot of rounds.flatMap((round) => round.slots)) owner.set(slot, operator);
  });
  let last = 0;
  for (const slot of walkingOrder) {
    const there = owner.get(slot);
    if (there === undefined) owner.set(slot, last);
    else last = there;
  }
  return known.map((previous, operator) => {
    const mine = ask.splices
      .map((_, need) => need)
      .filter((need) => owner.get(ask.splices[need]?.slot ?? '') === operator);
    const plan = planRounds({
      ...ask,
      splices: mine.flatMap((need) => ask.splices[need] ?? []),
      previous,
    });
    const back = <T extends { readonly need: number }>(each: T): T => ({
      ...each,
      need: mine[each.need] ?? 0,
    });
    return {
      rounds: plan.rounds.map((round) => ({ ...round, splices: round.splices.map(back) })),
      missed: plan.missed.map(back),
    };
  });
}
