import { area } from './words.ts';

/** The plant: setups, people, rules, this tablet. */
export const plantWords = area('plant');
