import { area } from './words.ts';

/** Making ready off the line: pick list and carts. */
export const kitWords = area('kit');
