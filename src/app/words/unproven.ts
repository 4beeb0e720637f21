import { area } from './words.ts';

/** Entries whose right nothing proves, and what a lead says of them. */
export const unprovenWords = area('unproven');
