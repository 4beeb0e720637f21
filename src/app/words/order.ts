import { area } from './words.ts';

/** Planning the order of jobs. */
export const orderWords = area('order');
