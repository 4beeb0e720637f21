import { area } from './words.ts';

/** The walks to come, and splices that none of them reaches. */
export const walksWords = area('walks');
