import { area } from './words.ts';

/** Labels that the plant prints: what stands on them, how they are asked for, and on which paper. */
export const printWords = area('print');
