// What is wrong with a sheet, in the language in use. English is the core's own sentence; the others are made from the same
// code and facts.

import { area } from './words.ts';

/** One sentence or two for a problem: what, and what to do. */
export const sheetProblemWords = area('sheet-problems');
