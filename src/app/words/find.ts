import { area } from './words.ts';

/** Labels that the camera passes over: found, and swept. */
export const findWords = area('find');
