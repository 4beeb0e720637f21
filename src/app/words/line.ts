import { area } from './words.ts';

/** The running line: run, forecast, warnings, splices. */
export const lineWords = area('line');
