// A feeder and its place as sentences, for every list that names one.

import type { Feeder } from '../../../../../shared/floor/state.ts';
import { partsWords } from '../../../words/parts.ts';
import { say } from '../../../words/words.ts';
import type { FeederPlace } from './model.ts';

/** Which tape it takes and how much room. */
export function tapeText({ tapeWidthMm, pitchesMm, positions }: Feeder): string {
  const words = say(partsWords).feeders;
  const pitch = pitchesMm.length === 0 ? words.any : words.pitch(pitchesMm.join(' / '));
  return `${words.tape(String(tapeWidthMm))} · ${pitch} · ${words.takes(positions)}`;
}

/** Where it is and what is in it. */
export function placeText({ cart, slot, part, reel }: FeederPlace): string {
  const words = say(partsWords).feeders;
  return cart === null ? words.loadedOn(slot, reel ?? part) : words.readyOn(cart, slot, reel ?? part);
}
