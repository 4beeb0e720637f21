import { area } from './words.ts';

/** The help of each screen: three lines to its picture. */
export const helpWords = area('help');
