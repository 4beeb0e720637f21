import { area } from './words.ts';

/** Loading a line for its setup, and the sweep over a loaded line. */
export const loadWords = area('load');
