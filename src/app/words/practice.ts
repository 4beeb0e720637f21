import { area } from './words.ts';

/** Practising: the mark on every screen, the labels to tap, what is not done there. */
export const practiceWords = area('practice');
