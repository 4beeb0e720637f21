// The facts of a verdict's reason as texts for its sentence.

import type { Reason } from '../../../shared/verdict/reasons.ts';
import type { ReasonFacts } from '../words/reason-words.ts';
import { formatCount, formatFigure, formatSpan } from '../words/words.ts';

/** Figures of a measurement. */
const measured: ReadonlySet<string> = new Set([
  'nominal',
  'least',
  'most',
  'quantity',
  'uncertainty',
  'guard',
]);

/** Numbers of placements, which may be large: written with their thousands apart. */
const counts: ReadonlySet<string> = new Set(['placed', 'after']);

/** Spans in words, figures as people write them, lists with commas; what is not known is empty. */
export function reasonFacts(reason: Reason): ReasonFacts {
  const facts: Record<string, string> = {};
  for (const [key, value] of Object.entries(reason)) {
    if (key.endsWith('Seconds') && typeof value === 'number') facts[key] = formatSpan(Math.max(0, value));
    else if (key === 'hours' && typeof value === 'number') facts[key] = String(Math.round(value * 10) / 10);
    else if (counts.has(key) && typeof value === 'number') facts[key] = formatCount(value);
    else if (measured.has(key) && typeof value === 'number') facts[key] = formatFigure(value);
    else facts[key] = Array.isArray(value) ? value.join(', ') : value === null ? '' : String(value);
  }
  const { least, most, guard } = reason;
  if (typeof least === 'number' && typeof most === 'number' && typeof guard === 'number') {
    // What a reading must lie between, once the guard band is kept from both limits.
    const isLeft = least + guard <= most - guard;
    facts['from'] = isLeft ? formatFigure(least + guard) : '–';
    facts['to'] = isLeft ? formatFigure(most - guard) : '–';
  }
  return facts;
}
