import { area } from './words.ts';

/** Editing checklists. */
export const templateWords = area('template');
