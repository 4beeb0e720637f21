import { area } from './words.ts';

/** The warning above every screen. */
export const warningWords = area('warning');
