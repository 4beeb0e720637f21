// What a reader of labels should know, in the language in use. English is the core's own sentence.

import { area } from './words.ts';

/** One sentence for a warning. */
export const labelWarningWords = area('label-warnings');
