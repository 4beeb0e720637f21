import { area } from './words.ts';

/** Supplier parts, feeders and blocks. */
export const partsWords = area('parts');
