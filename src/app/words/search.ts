import { area } from './words.ts';

/** One field that finds anything. */
export const searchWords = area('search');
