import { area } from './words.ts';

/** Guided practice: its steps, and what was seen of each. */
export const guideWords = area('guide');
