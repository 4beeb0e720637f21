import { area } from './words.ts';

/** What parts come in, trays and tubes, and feeders while a job runs. */
export const packWords = area('packs');
