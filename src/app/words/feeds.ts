import { area } from './words.ts';

/** What feeds a slot: what it comes in, and how more of it comes on. */
export const feedWords = area('feeds');
