import { area } from './words.ts';

/** Changing the line over: what differs, the steps, the checklist, the release. */
export const changeWords = area('change');
