import { area } from './words.ts';

/** Pictures of labels that are kept as evidence. */
export const picturesWords = area('pictures');
