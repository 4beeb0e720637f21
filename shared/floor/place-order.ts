// In which order does a person walk along the store's places?

import { compareNatural } from './address.ts';

/** Walking order of the store: places by name, numbers within them by value (`R2` before `R10`); what has no place (empty) comes last. */
export function comparePlaces(a: string, b: string): number {
  return a === '' || b === '' ? Number(a === '') - Number(b === '') : compareNatural(a, b);
}
