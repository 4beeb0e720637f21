import { area } from './words.ts';

/** The report of a shift. */
export const shiftWords = area('shift');
