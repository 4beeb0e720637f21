import { area } from './words.ts';

/** Signing in, PINs, clearing a held reel. */
export const peopleWords = area('people');
