import { area } from './words.ts';

/** The plant's name, and a file for a second plant. */
export const thisPlantWords = area('this-plant');
