import { area } from './words.ts';

/** Panels between the machines and the place of counting. */
export const inLineWords = area('in-line');
