import { area } from './words.ts';

/** Types of feeders, and the lengths of tape in them. */
export const feederTypeWords = area('feeder-types');
