import { area } from './words.ts';

/** Jars of solder paste. */
export const pasteWords = area('paste');
