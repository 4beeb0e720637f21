// Why a reel was refused, is held for a lead, or what decided in its favour. Codes travel; the words for people live in the app.

import { fitVerdicts } from '../floor/fits.ts';
import type { Verdict } from '../floor/vocabulary.ts';

/**
 * Every reason and what it makes of the verdict. `refused` wins over `held`, `held` over `accepted`.
 * An `accepted` reason is a note: it says by which rule the reel was taken.
 */
export const reasonVerdicts = {
  ...fitVerdicts,
  'unknown-slot': 'refused',
  'slot-not-in-setup': 'refused',
  'slot-loaded': 'refused',
  'slot-empty': 'refused',
  'slot-on-cart': 'refused',
  'not-in-setup': 'refused',
  'wrong-for-lane': 'refused',
  'kept-for-lane': 'refused',
  'reel-elsewhere': 'refused',
  'reel-here': 'refused',
  'reel-on-cart': 'refused',
  'feeder-elsewhere': 'refused',
  'feeder-aside': 'refused',
  'feeder-lanes': 'refused',
  'feeder-on-cart': 'refused',
  'feeder-width': 'refused',
  'feeder-pitch': 'refused',
  'feeder-type': 'refused',
  'feeder-drive': 'refused',
  'feeder-height': 'refused',
  'no-quantity': 'held',
  'value-outside': 'refused',
  'value-unsure': 'held',
  'value-unmeasured': 'held',
  'value-unknown': 'held',
  'reel-unnamed': 'held',
  'reel-gone': 'held',
  'feeder-unknown': 'held',
  'not-the-loaded-reel': 'refused',
  'older-in-store': 'accepted',
  'mixed-lots': 'accepted',
  'same-label': 'accepted',
  'quantity-corrected': 'accepted',
  'feeder-care': 'accepted',
  'value-within': 'accepted',
} as const satisfies Record<string, Verdict>;

export type ReasonCode = keyof typeof reasonVerdicts;

/** All codes. */
export const reasonCodes = Object.keys(reasonVerdicts) as readonly ReasonCode[]; // Object.keys forgets the key type

/** A reason with the facts that its words need. */
export interface Reason {
  readonly code: ReasonCode;
  readonly [fact: string]: string | number | boolean | null | readonly string[];
}

/** The verdict that a list of reasons adds up to: accepted where none speaks against. */
export function verdictOf(reasons: readonly Reason[]): Verdict {
  const each = reasons.map((reason) => reasonVerdicts[reason.code]);
  if (each.includes('refused')) return 'refused';
  return each.includes('held') ? 'held' : 'accepted';
}
