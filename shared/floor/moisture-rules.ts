// What a plant ruled about moisture: values of its own copy of the standard, and whether very dry cabinets stop the clock. The newest
// entry rules whole; the cells are kept by name, so that a look-up costs one step.

import type { PayloadOf } from './kinds.ts';
import { unsigned } from './passkey.ts';
import type { BakeBody } from './vocabulary.ts';

/** What is known of a part's package, as it was last described. */
export type PartFacts = Readonly<PayloadOf<'part.described'>>;

/** The rules in force, and the entry that set them. */
export interface MoistureRuling {
  /** As entered: the edition as its copy calls itself, which copy or paragraph, whether very dry cabinets pause, the cells. */
  readonly ruled: PayloadOf<'moisture.ruled'>;
  /** `lifeKey` -> days; null = no limit. */
  readonly lives: ReadonlyMap<string, number | null>;
  /** `bakeKey` -> hours. */
  readonly bakes: ReadonlyMap<string, number>;
  readonly entry: string;
  readonly by: string | null;
  readonly atMs: number;
}

/** The one key of the plant's rules in the state. */
export const MOISTURE_RULES = 'plant';

/** The name of a cell of the floor-life table. `celsius` and `humidity` as the table's row and column say. */
export function lifeKey(cell: {
  readonly class: string;
  readonly level: string;
  readonly celsius: number;
  readonly humidity: number;
}): string {
  return `${cell.class} ${cell.level} ${cell.celsius} ${cell.humidity}`;
}

/** The name of a cell of the bake table. `isLong`: the floor life was exceeded by more than 72 h. */
export function bakeKey(cell: {
  readonly body: BakeBody;
  readonly level: string;
  readonly celsius: number;
  readonly isLong: boolean;
}): string {
  return `${cell.body} ${cell.level} ${cell.celsius} ${cell.isLong ? 'long' : 'short'}`;
}

/** The rules that an entry sets. */
export function rulingOf(
  payload: PayloadOf<'moisture.ruled'>,
  told: Pick<MoistureRuling, 'entry' | 'by' | 'atMs'>,
): MoistureRuling {
  return {
    ruled: unsigned(payload),
    lives: new Map(payload.lives.map((cell) => [lifeKey(cell), cell.days])),
    bakes: new Map(payload.bakes.map((cell) => [bakeKey(cell), cell.hours])),
    ...told,
  };
}
