import { area } from './words.ts';

/** What one shift hands over to the next. */
export const handoverWords = area('handover');
