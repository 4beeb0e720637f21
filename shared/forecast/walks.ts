// Who walks when, all in one question: walks of one or more operators, held on to, with remedies for what is missed first.
// Method: figures in, figures out, so that a page can hand the question to a worker and match the answer with its slots.

import { shareWalks } from './crew.ts';
import { type Remedy, remediesFor } from './remedy.ts';
import {
  type KnownWalk,
  type MissedSplice,
  scheduleWalks,
  type Walk,
  type WalkScheduleAsk,
} from './walk-schedule.ts';

/** What is asked. */
export interface WalkQuestion {
  readonly walks: WalkScheduleAsk;
  /** How many people, 1 or more. */
  readonly operators: number;
  /** The slots as people walk past them. */
  readonly walkingOrder: readonly string[];
  /** For each splice: parts that its reel loses a second, placed and lost. */
  readonly partsPerSecond: readonly number[];
  /** Missed splices whose remedies are looked for, soonest first: each costs some fifteen plans. */
  readonly remediesFor: number;
  /** Keeps who does what even where somebody is missed. */
  readonly keepShares: boolean;
  /** The plan last shown, one list an operator. */
  readonly known?: readonly (readonly KnownWalk[])[];
}

/** What is answered: one share an operator; remedies of the missed splices in order of time. */
export interface WalkAnswer {
  readonly shares: readonly WalkShare[];
  readonly remedies: readonly (readonly Remedy[])[];
}

/** Plans the walks. Cost: one plan for one person; for several, a hundred where they share anew. */
export function answerWalks(question: WalkQuestion): WalkAnswer {
  const shares = shared(question);
  const missed = shares.flatMap((share) => share.missed).sort((a, b) => a.byMs - b.byMs);
  const remedies = missed.slice(0, question.remediesFor).map(({ need }) =>
    remediesFor({
      walks: question.walks,
      need,
      partsPerSecond: question.partsPerSecond[need] ?? 0,
      secondPerson: true,
      secondSlot: true,
    }),
  );
  return { shares, remedies };
}

/** One operator's walks; needs count by the question's splices. */
export interface WalkShare {
  readonly walks: readonly Walk[];
  readonly missed: readonly MissedSplice[];
}

function shared(question: WalkQuestion): readonly WalkShare[] {
  const { walks: ask, known, operators } = question;
  if (operators <= 1) {
    const previous = known?.[0];
    return [scheduleWalks(previous === undefined ? ask : { ...ask, previous })];
  }
  const held = known?.length === operators ? heldShares(question, known) : null;
  // Sharing anew costs a hundred plans: only where somebody would be missed.
  if (held !== null && (question.keepShares || held.every((share) => share.missed.length === 0))) return held;
  const names = Array.from({ length: operators }, (_, index) => String(index));
  const { walkingOrder } = question;
  const fresh = shareWalks({ walks: ask, operators: names, walkingOrder }).map((share) => share.plan);
  if (held === null) return fresh;
  return isWorse(held, fresh) ? fresh : held;
}

function isWorse(held: readonly WalkShare[], fresh: readonly WalkShare[]): boolean {
  const sum = (shares: readonly WalkShare[], of: (share: WalkShare) => number) =>
    shares.reduce((total, share) => total + of(share), 0);
  const missed = sum(held, (share) => share.missed.length) - sum(fresh, (share) => share.missed.length);
  const walks = sum(held, (share) => share.walks.length) - sum(fresh, (share) => share.walks.length);
  return missed > 0 || (missed === 0 && walks > 0);
}

/** Each operator keeps the slots that were theirs; new ones go to whoever has a neighbour in the walking order. */
function heldShares(
  { walks: ask, walkingOrder }: WalkQuestion,
  known: readonly (readonly KnownWalk[])[],
): readonly WalkShare[] {
  const owner = new Map<string, number>();
  known.forEach((walks, operator) => {
    for (const slot of walks.flatMap((walk) => walk.slots)) owner.set(slot, operator);
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
    const plan = scheduleWalks({
      ...ask,
      splices: mine.flatMap((need) => ask.splices[need] ?? []),
      previous,
    });
    const back = <T extends { readonly need: number }>(each: T): T => ({
      ...each,
      need: mine[each.need] ?? 0,
    });
    return {
      walks: plan.walks.map((walk) => ({ ...walk, splices: walk.splices.map(back) })),
      missed: plan.missed.map(back),
    };
  });
}
