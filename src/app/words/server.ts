import type { WireCode } from '../../../shared/wire/codes.ts';
import type { Words } from './areas.ts';
import { area } from './words.ts';

/** Why a call brought nothing. */
export type Cause = WireCode | 'unreachable' | 'unreadable' | 'other-plant';

/** Tablets and their server. */
export const serverWords = area('server');

/** Why a call brought nothing, in words. */
export function sayCause(words: Words<'server'>, code: string): string {
  return words.causes[code as Cause] ?? words.otherCause(code); // an unknown code finds nothing
}
