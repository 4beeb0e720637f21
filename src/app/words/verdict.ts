import type { ReasonCode } from '../../../shared/verdict/reasons.ts';
import type { Words } from './areas.ts';
import { area, say } from './words.ts';

/** The verdict screen. */
export const verdictWords = area('verdict');

/** What is said of a reason in the log; null for a code that this version does not know, e.g. an older one. */
export function sayReason(code: string): Words<'verdict'>['reasons'][ReasonCode] | null {
  const { reasons } = say(verdictWords);
  return Object.hasOwn(reasons, code) ? reasons[code as ReasonCode] : null; // just looked up
}
