import { area } from './words.ts';

/** Where the time of a changeover went. */
export const timesWords = area('times');
