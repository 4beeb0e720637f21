import { area } from './words.ts';

/** The dock: what is scanned, what is wanted, and what it asks about a code. */
export const dockWords = area('dock');
