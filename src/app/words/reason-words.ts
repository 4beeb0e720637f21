// The shape of what is said of a verdict's reason, in every language.

import type { ReasonCode } from '../../../shared/verdict/reasons.ts';

/** Facts of a reason as words need them: everything as text. */
export interface ReasonFacts {
  readonly [fact: string]: string;
}

/** Title, sentence and next act of every reason. */
export type ReasonWords = Readonly<
  Record<
    ReasonCode,
    { readonly title: string; readonly say: (f: ReasonFacts) => string; readonly act: string }
  >
>;

/** Reasons about bakes, labels of level 6, reels without an id and those long gone. */
export type MoistureReasons = Pick<
  ReasonWords,
  'bake-hours-over' | 'label-time-missing' | 'reel-unnamed' | 'reel-gone' | 'floor-life-short'
>;

/** Reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store. */
export type PlantReasons = Pick<
  ReasonWords,
  | 'feeder-unknown'
  | 'feeder-type'
  | 'feeder-drive'
  | 'feeder-height'
  | 'feeder-care'
  | 'maker-not-listed'
  | 'date-code-old'
  | 'date-code-unknown'
  | 'older-in-store'
  | 'value-outside'
  | 'value-unsure'
  | 'value-unmeasured'
  | 'value-unknown'
  | 'value-within'
>;

/** On what a bake's hours rest, in words. */
export type TableWords = Readonly<Record<'own' | 'copy' | 'memory', string>>;

/** On what the table's hours rest; older entries do not say, and then they were from memory. */
export function restsOn(facts: ReasonFacts, table: TableWords): string {
  const { source } = facts;
  if (facts['wanted'] === undefined || facts['wanted'] === '') return '';
  return source === 'own' || source === 'copy' ? table[source] : table.memory;
}
