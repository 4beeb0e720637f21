import { area } from './words.ts';

/** Packages of moisture-sensitive parts, and the plant's own values of the moisture standard. */
export const packagesWords = area('packages');
