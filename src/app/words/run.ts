import { area } from './words.ts';

/** Beginning, stopping, counting, setting right and ending a run: what its dialogs say. */
export const runWords = area('run');
