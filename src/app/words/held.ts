import { area } from './words.ts';

/** Panels that are held since wrong material may be on them. */
export const heldWords = area('held');
