import { area } from './words.ts';

/** What stands on a refusal besides its reason, and the question about a label that reads like the running reel's. */
export const refusalWords = area('refusal');
