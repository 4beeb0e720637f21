import { area } from './words.ts';

/** Messages that reach a lead while the app is closed. */
export const pushWords = area('push');
