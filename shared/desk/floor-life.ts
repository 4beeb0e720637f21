// What a verdict is asked of a reel's floor life: what is left of it, and how long the reel is to stand on its slot; and what the log
// is told of it where only the label knows that it has one.

import { isLimited } from '../floor/exposure.ts';
import { type FitLife, partFits } from '../floor/fits.ts';
import type { DraftEntry, SetupSlot } from '../floor/kinds.ts';
import type { FloorState, Reel } from '../floor/state.ts';
import type { Verdict, VerifyAct } from '../floor/vocabulary.ts';
import { wantedOn } from '../floor/wanted.ts';
import { type ReelComing, reelLastsSeconds } from '../forecast/reel-lasts.ts';
import { formatMoment } from '../kit/moment.ts';
import { hotBakeLimitHours } from '../moisture/bake.ts';
import {
  moistureOfParts,
  moistureOfSlot,
  moistureRuling,
  type ReelLife,
  reelLife,
} from '../moisture/reel-life.ts';
import { SHIPPED_EDITION } from '../moisture/values.ts';
import type { ReelInHand } from './model.ts';

/** The floor life of a reel on its way to a slot, with what it rests on; null where its time out of the bag is not limited. */
function lifeOf(floor: FloorState, asked: AskedReel, nowMs: number): ReelLife | null {
  const { reel, line } = asked;
  const wanted = wantedOn(floor, asked.setup, asked.slot);
  const taken = wanted && partTakenFor(floor, asked, wanted);
  return reelLife(floor, reel.reel, {
    line,
    part: moistureOfSlot(floor, wanted, taken),
    label: reel.msl,
    nowMs,
  });
}

/** The site part that the verdict takes a reel for; null where its label names none. */
function partTakenFor(floor: FloorState, { reel, line, setup }: AskedReel, wanted: SetupSlot): string | null {
  const { part = null, supplierPart = null, lot = null } = reel;
  return partFits(floor, { line, setup, wanted }, { reel: reel.reel, part, supplierPart, lot }).part;
}

/** A reel on its way to a slot, as its label says it. */
type AskedReel = Omit<ReelComing, 'quantity'> & {
  readonly reel: Pick<ReelInHand, 'reel' | 'quantity' | 'msl'> &
    Partial<Pick<ReelInHand, 'part' | 'supplierPart' | 'lot'>>;
};

/** A floor life as a verdict takes it; null where it has no limit. */
function fitLife(life: ReelLife | null, neededSeconds: number | null): FitLife | null {
  if (life === null) return null;
  const { leftSeconds, shortBake, wantsLabelTime, hotBakeHours } = life;
  const isHot = hotBakeHours > hotBakeLimitHours;
  // Leads that saw too much heat are asked about in any air.
  if (leftSeconds === null && !isHot) return null;
  return {
    leftSeconds,
    neededSeconds,
    shortBake,
    wantsLabelTime,
    hotBakes: isHot ? { hours: Math.round(hotBakeHours * 10) / 10, most: hotBakeLimitHours } : null,
  };
}

/** The floor-life part of a verdict's question; null where the reel's time out of the bag has no limit. */
export function floorLifeOf(floor: FloorState, asked: AskedReel, nowMs: number): FitLife | null {
  const life = lifeOf(floor, asked, nowMs);
  if (life === null) return null;
  const { reel, ...coming } = asked;
  return fitLife(life, reelLastsSeconds(floor, { ...coming, quantity: reel.quantity }, nowMs));
}

/**
 * On what the floor life of a judged reel rested, for the log: level, classes, climate, what is left, hot bakes, and which values of the
 * standard were in force. Empty where its time out of the bag is not limited. Written after the verdict, in the same append.
 */
export function lifeJudgedDrafts(floor: FloorState, asked: AskedReel, nowMs: number): readonly DraftEntry[] {
  const life = lifeOf(floor, asked, nowMs);
  if (life === null || life.leftSeconds === null) return [];
  const ruling = moistureRuling(floor);
  const { line, slot, reel } = asked;
  return [
    {
      kind: 'reel.life-judged',
      payload: {
        line,
        slot,
        reel: reel.reel,
        part: reel.part ?? null,
        msl: life.level,
        packageClass: [...life.packageClasses].sort().join(' '),
        celsius: life.climate.celsius,
        humidity: life.climate.humidity,
        leftSeconds: Math.round(life.leftSeconds),
        hotHours: Math.round(life.hotBakeHours * 10) / 10,
        edition: life.source === 'own' ? (ruling?.ruled.edition ?? '') : SHIPPED_EDITION,
        restsOn: life.source,
        values: ruling?.entry ?? null,
      },
    },
  ];
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
  return (reel, part) =>
    fitLife(reelLife(floor, reel.reel, { line, part: parts.get(part) ?? null, nowMs }), null);
}

/**
 * What is written beside a verdict: that the bag is open, where the label states a limiting level and the log does not have the reel on
 * the floor yet. An entry of its own, since a tablet of an older version must still read the verdict. A refused reel stays in its bag.
 */
export function openedDrafts(
  floor: FloorState,
  judged: {
    readonly act: VerifyAct;
    readonly verdict: Verdict;
    readonly reel: ReelInHand;
    readonly part: string | null;
  },
  nowMs: number,
): readonly DraftEntry[] {
  const { act, verdict, reel: inHand, part } = judged;
  const { reel, msl, supplierPart, quantity, lot, dateCode, via } = inHand;
  if (reel === null || msl === null || !isLimited(msl) || act === 'sweep' || verdict === 'refused') return [];
  if (floor.exposures.get(reel)?.periods.at(-1)?.air === 'floor') return [];
  const facts = { reel, part: part ?? inHand.part, supplierPart, quantity, lot, dateCode, msl, via };
  const air = { air: 'floor', from: formatMoment(nowMs), celsius: null, humidity: null } as const;
  return [{ kind: 'reel.aired', payload: { ...facts, ...air } }];
}

/** What is written beside a scan: the day after which the reel must not be used, where its label says one that the log does not have yet. */
export function datedDrafts(
  floor: FloorState,
  { reel, expires }: { readonly reel: string | null; readonly expires?: string | null },
): readonly DraftEntry[] {
  if (reel === null || !expires || floor.expiries.get(reel) === expires) return [];
  return [{ kind: 'reel.dated', payload: { reel, expires } }];
}
