import { area } from './words.ts';

/** The demo's own sentences. */
export const demoWords = area('demo');
