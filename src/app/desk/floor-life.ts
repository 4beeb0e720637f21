// What a verdict is asked of a reel's floor life: what is left of it, and how long the reel is to stand on its slot.

import { type ReelComing, reelLastsSeconds } from '../../../shared/forecast/reel-lasts.ts';
import { moistureOfSlot, reelLife } from '../../../shared/moisture/reel-life.ts';
import { wantedOn } from '../../../shared/setup/left.ts';
import type { FloorState } from '../../../shared/setup/state.ts';
import type { VerifyQuestion } from '../../../shared/verdict/verify.ts';
import type { ReelInHand } from './model.ts';

/** The floor-life part of a verdict's question; null where the reel's time out of the bag has no limit. */
export function floorLifeOf(
  floor: FloorState,
  asked: Omit<ReelComing, 'quantity'> & { readonly reel: Pick<ReelInHand, 'reel' | 'quantity' | 'msl'> },
  nowMs: number,
): NonNullable<VerifyQuestion['floorLife']> | null {
  const { reel, ...coming } = asked;
  const part = moistureOfSlot(wantedOn(floor, asked.setup, asked.slot));
  const life = reelLife(floor, reel.reel, { part, label: reel.msl, nowMs });
  if (life === null || life.leftSeconds === null) return null;
  const neededSeconds = reelLastsSeconds(floor, { ...coming, quantity: reel.quantity }, nowMs);
  return { leftSeconds: life.leftSeconds, neededSeconds };
}
