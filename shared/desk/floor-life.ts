// What a verdict is asked of a reel's floor life: what is left of it, and how long the reel is to stand on its slot; and what the log
// is told of it where only the label knows that it has one.

import { isLimited } from '../floor/airing.ts';
import type { FitLife } from '../floor/fits.ts';
import type { Wish } from '../floor/kinds.ts';
import { wantedOn } from '../floor/left.ts';
import type { FloorState, Reel } from '../floor/state.ts';
import type { Verdict, VerifyAct } from '../floor/vocabulary.ts';
import { type ReelComing, reelLastsSeconds } from '../forecast/reel-lasts.ts';
import { formatMoment } from '../kit/moment.ts';
import { moistureOfParts, moistureOfSlot, reelLife } from '../moisture/reel-life.ts';
import type { ReelInHand } from './model.ts';

/** The floor-life part of a verdict's question; null where the reel's time out of the bag has no limit. */
export function floorLifeOf(
  floor: FloorState,
  asked: Omit<ReelComing, 'quantity'> & { readonly reel: Pick<ReelInHand, 'reel' | 'quantity' | 'msl'> },
  nowMs: number,
): FitLife | null {
  const { reel, ...coming } = asked;
  const part = moistureOfSlot(wantedOn(floor, asked.setup, asked.slot));
  const life = reelLife(floor, reel.reel, { line: asked.line, part, label: reel.msl, nowMs });
  if (life === null || life.leftSeconds === null) return null;
  const neededSeconds = reelLastsSeconds(floor, { ...coming, quantity: reel.quantity }, nowMs);
  return { leftSeconds: life.leftSeconds, neededSeconds, shortBake: life.shortBake };
}

/**
 * What is left of the floor life of reels off the line, for a pick list; null where a reel's time out of the bag has no limit. How long
 * one is to stand open on its slot is not known before it comes. Cost: one walk over the setups, then a look a reel.
 */
export function lifeOnShelf(
  floor: FloorState,
  line: string,
  nowMs: number,
): (reel: Reel, part: string) => FitLife | null {
  const parts = moistureOfParts(floor);
  return (reel, part) => {
    const life = reelLife(floor, reel.reel, { line, part: parts.get(part) ?? null, nowMs });
    if (life === null || life.leftSeconds === null) return null;
    return { leftSeconds: life.leftSeconds, neededSeconds: null, shortBake: life.shortBake };
  };
}

/**
 * What is written beside a verdict: that the bag is open, where the label states a limiting level and the log does not have the reel on
 * the floor yet. An entry of its own, since a tablet of an older version must still read the verdict. A refused reel stays in its bag.
 */
export function openedWishes(
  floor: FloorState,
  judged: {
    readonly act: VerifyAct;
    readonly verdict: Verdict;
    readonly reel: ReelInHand;
    readonly part: string | null;
  },
  nowMs: number,
): readonly Wish[] {
  const { act, verdict, reel: inHand, part } = judged;
  const { reel, msl, supplierPart, quantity, lot, dateCode, via } = inHand;
  if (reel === null || msl === null || !isLimited(msl) || act === 'sweep' || verdict === 'refused') return [];
  if (floor.airings.get(reel)?.stays.at(-1)?.air === 'floor') return [];
  const facts = { reel, part: part ?? inHand.part, supplierPart, quantity, lot, dateCode, msl, via };
  const air = { air: 'floor', from: formatMoment(nowMs), celsius: null, humidity: null } as const;
  return [{ kind: 'reel.aired', payload: { ...facts, ...air } }];
}

/** What is written beside a scan: the day after which the reel must not be used, where its label says one that the log does not have yet. */
export function datedWishes(
  floor: FloorState,
  { reel, expires }: { readonly reel: string | null; readonly expires?: string | null },
): readonly Wish[] {
  if (reel === null || !expires || floor.expiries.get(reel) === expires) return [];
  return [{ kind: 'reel.dated', payload: { reel, expires } }];
}
