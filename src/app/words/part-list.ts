import { area } from './words.ts';

/** The plant's list of its parts, look-alikes, and lists that come as a file. */
export const partListWords = area('part-list');
