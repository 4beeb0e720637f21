// Facts of what the camera saw: labels passed over, and pictures kept.

import { type FactName, factWords } from '../../words/log-facts.ts';
import { say } from '../../words/words.ts';
import { number, oneOf, type Say, text, withUnit, yesNo } from './plain-sayings.ts';

/** How each of them is told. */
export const pictureSayings = {
  looks: number,
  copies: number,
  belongs: oneOf(() => say(factWords).belongings),
  evidence: yesNo,
  days: withUnit('d'),
  megabytes: withUnit('MB'),
  sha256: text,
  bytes: withUnit('B'),
} as const satisfies Partial<Record<FactName, Say>>;
