import type { EntryKind, PayloadOf } from '../../../shared/floor/kinds.ts';
import { area } from './words.ts';

type NamesOf<P> = P extends unknown ? keyof P : never;

/** The name of every fact that an entry may hold: one without words is a compile error. */
export type FactName = NamesOf<PayloadOf<EntryKind>> & string;

/** What an entry's facts are called, and their values where a number or a code alone says too little. */
export const factWords = area('log-facts');
