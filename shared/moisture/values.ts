// Which values are in force: the shipped ones or a plant's own, taken from its licensed copy?
// Method: a plant's own value stands in for the shipped one cell by cell; what it leaves out stays as shipped, and each answer says on
// which kind of value it rests. Refused: a second whole table, in which one forgotten cell would be a life without a limit.

import type { MoistureRuling } from '../floor/moisture-rules.ts';

/** On what a value rests: a plant's own copy, a published copy that it was compared with, or memory. */
export const valueSources = ['own', 'copy', 'memory'] as const;

/** One of the three. */
export type ValueSource = (typeof valueSources)[number];

/** The edition that the shipped tables are meant to follow. */
export const SHIPPED_EDITION = 'IPC/JEDEC J-STD-033B.1 to D';

/** The weakest of some sources: memory before copy before own. */
export function weakestSource(sources: readonly ValueSource[]): ValueSource {
  if (sources.includes('memory')) return 'memory';
  return sources.includes('copy') ? 'copy' : 'own';
}

/** A plant's own values as the tables ask for them; null where it entered none. */
export type OwnValues = Pick<MoistureRuling, 'lives' | 'bakes'>;
