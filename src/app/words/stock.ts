import { area } from './words.ts';

/** Reels that the log knows, what the store must bring, and blocking material. */
export const stockWords = area('stock');
