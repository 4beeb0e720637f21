import { area } from './words.ts';

/** What is wrong with the tablet's clock, and what to do. */
export const clockWords = area('clock');
