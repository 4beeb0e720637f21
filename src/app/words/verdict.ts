import { area } from './words.ts';

/** The verdict screen. */
export const verdictWords = area('verdict');
