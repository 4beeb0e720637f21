import { area } from './words.ts';

/** Frame of every screen: navigation, top bar, dock, sign-in, faults. */
export const shellWords = area('shell');
