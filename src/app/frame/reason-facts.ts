// The facts of a verdict's reason as texts for its sentence.

import type { Reason } from '../../../shared/verdict/reasons.ts';
import type { ReasonFacts } from '../words/reason-words.ts';
import { formatSpan } from '../words/words.ts';

/** Spans in words, figures as people write them, lists with commas; what is not known is empty. */
export function reasonFacts(reason: Reason): ReasonFacts {
  const facts: Record<string, string> = {};
  for (const [key, value] of Object.entries(reason)) {
    if (key.endsWith('Seconds') && typeof value === 'number') facts[key] = formatSpan(Math.max(0, value));
    else if (key === 'hours' && typeof value === 'number') facts[key] = String(Math.round(value * 10) / 10);
    else facts[key] = Array.isArray(value) ? value.join(', ') : value === null ? '' : String(value);
  }
  return facts;
}
