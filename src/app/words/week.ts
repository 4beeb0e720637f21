import { area } from './words.ts';

/** The line's weeks: shifts, breaks, holidays, overtime, planned stops. */
export const weekWords = area('week');
