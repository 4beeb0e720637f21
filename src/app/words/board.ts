import { area } from './words.ts';

/** From a placement file and a bill of materials to slots on a line. */
export const boardWords = area('board');
