import { area } from './words.ts';

/** All lines of the plant at one glance, on a tablet and on the wall. */
export const linesWords = area('all-lines');
