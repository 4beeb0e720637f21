import { area } from './words.ts';

/** How sync stands, in a few words for the top bar, and why it does not go on. */
export const syncWords = area('sync');
