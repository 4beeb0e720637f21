// The plant's own moisture values while they are being entered: cells by name over those in force, and the entry that they become.

import type { PayloadOf } from '../../../../../shared/floor/kinds.ts';
import { bakeKey, lifeKey, type MoistureRuling } from '../../../../../shared/floor/moisture-rules.ts';
import type { BakeBody } from '../../../../../shared/floor/vocabulary.ts';
import {
  type BakedLevel,
  type BakeTemperature,
  bakeCell,
  bakeTemperatures,
} from '../../../../../shared/moisture/bake.ts';
import {
  type TableLevel,
  type TableTemperature,
  tableCell,
  tableHumidities,
  tableTemperatures,
} from '../../../../../shared/moisture/derating.ts';
import type { PackageClass } from '../../../../../shared/moisture/levels.ts';

type Ruled = PayloadOf<'moisture.ruled'>;
export type LifeCell = Ruled['lives'][number];
export type BakeCell = Ruled['bakes'][number];

/** What is being entered. */
export interface MoistureDraft {
  readonly edition: string;
  readonly source: string;
  readonly cabinetPauses: boolean;
  readonly lives: ReadonlyMap<string, LifeCell>;
  readonly bakes: ReadonlyMap<string, BakeCell>;
}

/** The values in force as a draft. */
export function moistureDraft(ruling: MoistureRuling | null): MoistureDraft {
  const { edition = '', source = '', cabinetPauses = false, lives = [], bakes = [] } = ruling?.ruled ?? {};
  return {
    edition,
    source,
    cabinetPauses,
    lives: new Map(lives.map((cell) => [lifeKey(cell), cell])),
    bakes: new Map(bakes.map((cell) => [bakeKey(cell), cell])),
  };
}

/** The draft as an entry. */
export function draftToRuled(draft: MoistureDraft): Ruled {
  return {
    edition: draft.edition.trim(),
    source: draft.source.trim(),
    cabinetPauses: draft.cabinetPauses,
    lives: [...draft.lives.values()],
    bakes: [...draft.bakes.values()],
  };
}

/** What keeps a draft from being saved; null = nothing. */
export function draftObstacle(
  draft: MoistureDraft,
  ruling: MoistureRuling | null,
): 'needsEdition' | 'nothingNew' | null {
  const next = draftToRuled(draft);
  const before = draftToRuled(moistureDraft(ruling));
  if (JSON.stringify(next) === JSON.stringify(before)) return 'nothingNew';
  const isOwn = next.cabinetPauses || next.lives.length > 0 || next.bakes.length > 0;
  return isOwn && (next.edition === '' || next.source === '') ? 'needsEdition' : null;
}

/** A draft's cells as the tables take them. */
export function ownOf(draft: MoistureDraft) {
  return {
    lives: new Map([...draft.lives].map(([key, { days }]) => [key, days])),
    bakes: new Map([...draft.bakes].map(([key, { hours }]) => [key, hours])),
  };
}

/** The floor-life table of a class and level as it would be, row by row. */
export function lifeRows(draft: MoistureDraft, packageClass: PackageClass, level: TableLevel) {
  const own = ownOf(draft);
  return [...tableTemperatures].reverse().map((celsius) => ({
    celsius,
    cells: tableHumidities.map((humidity) => ({
      humidity,
      ...tableCell(level, packageClass, { celsius, humidity }, own),
    })),
  }));
}

/** The bake table of a body as it would be, level by level; a cell is null where the table has none. */
export function bakeRows(draft: MoistureDraft, body: BakeBody) {
  const own = ownOf(draft);
  const levels: readonly (BakedLevel | '6')[] =
    body === 'large' ? ['2', '2a', '3', '4', '5', '5a', '6'] : ['2', '2a', '3', '4', '5', '5a'];
  return levels.map((level) => ({
    level,
    cells: bakeTemperatures.flatMap((celsius) =>
      [true, false].map((isLong) => ({
        celsius: celsius as BakeTemperature,
        isLong,
        value: bakeCell(body, level, { celsius, isLong }, own),
      })),
    ),
  }));
}

/** True where a life is longer than that of a drier or cooler cell of its table: worth a second look at the copy. */
export function isOutOfOrder(draft: MoistureDraft, cell: LifeCell): boolean {
  const own = ownOf({ ...draft, lives: new Map(draft.lives).set(lifeKey(cell), cell) });
  const days = (celsius: TableTemperature, humidity: (typeof tableHumidities)[number]) =>
    tableCell(cell.level, cell.class, { celsius, humidity }, own).days ?? Number.POSITIVE_INFINITY;
  const mine = cell.days ?? Number.POSITIVE_INFINITY;
  return tableTemperatures.some((celsius) =>
    tableHumidities.some(
      (humidity) => celsius <= cell.celsius && humidity <= cell.humidity && days(celsius, humidity) < mine,
    ),
  );
}
