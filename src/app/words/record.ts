import { area } from './words.ts';

/** An entry on paper: what it proves, or why it does not yet; and a paper that is scanned. */
export const recordWords = area('record');
