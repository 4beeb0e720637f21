import { area } from './words.ts';

/** Floor life of moisture-sensitive reels: what is left, since when they lie open, drying and baking. */
export const moistureWords = area('moisture');
