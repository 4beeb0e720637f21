import { area } from './words.ts';

/** Parts that are measured before they feed. */
export const valueWords = area('values');
