// May this reel go on a cart, for a slot of the setup that comes next? Method: the line's own rules, asked as if the line stood
// empty, since it will by the time the cart docks. Refused: leaving the line out altogether; a feeder that stands on it now cannot
// be on a cart as well, so one of the two codes is wrong.

import { isLaneBeside } from '../floor/address.ts';
import { sharesSlots } from '../floor/lanes.ts';
import type { FloorState } from '../floor/state.ts';
import { type Reason, verdictOf } from './reasons.ts';
import { type VerifyAnswer, type VerifyQuestion, verifyReel } from './verify.ts';

/** The floor as the next setup will find it: that setup chosen, nothing on any slot, no changeover open. */
export function floorWhenDocked(state: FloorState, line: string, setup: string): FloorState {
  const chosen = new Map(state.chosen).set(line, setup);
  return { ...state, chosen, slots: new Map(), changing: new Map() };
}

/**
 * Answers for a place on `cart` as `verifyReel` does for a slot; a feeder in use on any line is refused, the slot's own
 * included, and so is whatever a cart carries already: this slot of this setup, this reel, this feeder.
 */
export function verifyForCart(state: FloorState, question: VerifyQuestion, cart: string): VerifyAnswer {
  const answer = verifyReel(floorWhenDocked(state, question.line, question.setup), question);
  const inUse = [...state.slots.values()]
    .filter((slot) => question.feeder !== null && slot.feeder === question.feeder)
    .map(
      (slot): Reason => ({
        code: 'feeder-elsewhere',
        feeder: slot.feeder,
        slot: slot.slot,
        line: slot.line,
      }),
    );
  const reasons = [...inUse, ...sameSlotOnCarts(state, question, cart), ...answer.reasons];
  return { ...answer, reasons, verdict: verdictOf(reasons) };
}

/** What carts carry for the slot asked for; what they carry for other slots is among the line's own rules. */
function sameSlotOnCarts(state: FloorState, question: VerifyQuestion, asked: string): Reason[] {
  const { line, setup, slot, feeder, reel } = question;
  return [...state.carts].flatMap(([cart, places]) =>
    [...places.values()].flatMap((place): Reason[] => {
      const isSamePlace = sharesSlots(place.line, line);
      // The other lanes of a feeder go onto the same cart with it.
      const isTorn = isSamePlace && cart !== asked && isLaneBeside(place.slot, slot);
      if (isTorn && feeder !== null && place.feeder === feeder)
        return [{ code: 'feeder-on-cart', feeder, cart, slot: place.slot }];
      if (place.slot !== slot) return [];
      if (isSamePlace && reel.reel !== null && place.reel === reel.reel)
        return [{ code: 'reel-on-cart', reel: reel.reel, cart, slot }];
      // A cart has one place for a slot, whatever setup it is for.
      if (cart === asked || (isSamePlace && place.setup === setup))
        return [{ code: 'slot-on-cart', cart, slot }];
      if (isSamePlace && feeder !== null && place.feeder === feeder)
        return [{ code: 'feeder-on-cart', feeder, cart, slot }];
      return [];
    }),
  );
}
