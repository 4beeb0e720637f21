import { area } from './words.ts';

/** The lines of the plant, their machines, banks and slots. */
export const lineListWords = area('lines');
