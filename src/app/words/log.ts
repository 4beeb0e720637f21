import { area } from './words.ts';

/** The log: list, filters, export. */
export const logWords = area('log');
