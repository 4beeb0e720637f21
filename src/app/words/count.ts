import { area } from './words.ts';

/** Counting a reel, what is left at unload, and what feeders lose. */
export const countWords = area('count');
