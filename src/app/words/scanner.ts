import { area } from './words.ts';

/** Testing the scanner: what to set, what arrived, what is wrong. */
export const scannerWords = area('scanner');
