import { area } from './words.ts';

/** The first panel of a changeover: what is looked at, what is measured. */
export const firstPanelWords = area('first-panel');
