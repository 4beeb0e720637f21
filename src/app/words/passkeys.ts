import { area } from './words.ts';

/** Passkeys: who has which, and what they prove of an entry. */
export const passkeysWords = area('passkeys');
