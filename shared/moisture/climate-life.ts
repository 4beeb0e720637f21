// What is the whole floor life of a level and package class in one climate?
// Method: table 7-1 for levels 2a to 5a; one year for level 2 up to 30 °C and 60 %, beyond that the row of 2a (a rule of this tool); no limit
// for level 1; the time on the label for level 6. Where the table ends no life is known, and it counts as none.

import {
  type TableLevel,
  tableFloorLife,
  tableHumidities,
  tableLevels,
  tableTemperatures,
} from './derating.ts';
import {
  type MoistureLevel,
  type PackageClass,
  packageClasses,
  standardClimate,
  standardLifeSeconds,
} from './levels.ts';
import { type FloorLifeNote, floorLifeNote } from './notes.ts';
import type { Climate } from './timeline.ts';

/** What a floor life depends on besides the climate. */
export interface PartMoisture {
  readonly level: MoistureLevel;
  /** Null: not known; the shortest of the classes counts. */
  readonly packageClass: PackageClass | null;
  /** Level 6: the time on the label in seconds; null = not known. */
  readonly timeOnLabelSeconds: number | null;
}

/** A floor life in one climate and what is to be said about it. */
export interface ClimateLife {
  /** Seconds; `Infinity` = no limit, 0 = no life is known. */
  readonly seconds: number;
  readonly notes: readonly FloorLifeNote[];
}

function isTableLevel(level: MoistureLevel): level is TableLevel {
  return (tableLevels as readonly MoistureLevel[]).includes(level); // widened for the look-up only
}

function roundingNotes(
  climate: Climate,
  row: { readonly celsius: number; readonly humidity: number },
): FloorLifeNote[] {
  const exact =
    (tableTemperatures as readonly number[]).includes(climate.celsius) &&
    (tableHumidities as readonly number[]).includes(climate.humidity);
  if (exact) return [];
  const facts = { ...climate, rowCelsius: row.celsius, columnHumidity: row.humidity };
  return [floorLifeNote('roundedUp', facts)];
}

function shortestTableLife(
  level: TableLevel,
  packageClass: PackageClass | null,
  climate: Climate,
): ClimateLife {
  let seconds = Number.POSITIVE_INFINITY;
  let notes: readonly FloorLifeNote[] = [];
  for (const oneClass of packageClass === null ? packageClasses : [packageClass]) {
    const life = tableFloorLife(level, oneClass, climate);
    if (life === null) return { seconds: 0, notes: [floorLifeNote('outsideTable', { ...climate })] };
    seconds = Math.min(seconds, life.seconds);
    notes = roundingNotes(climate, life);
  }
  return { seconds, notes };
}

/** The whole floor life in one climate. */
export function climateLife(part: PartMoisture, climate: Climate): ClimateLife {
  const { level, packageClass } = part;
  const mild = isMildClimate(climate);
  if (level === '1') {
    const beyond = climate.celsius > 30 || climate.humidity > 85;
    return { seconds: Number.POSITIVE_INFINITY, notes: beyond ? [floorLifeNote('aboveLevelOne')] : [] };
  }
  if (level === '6') return { seconds: part.timeOnLabelSeconds ?? 0, notes: [] };
  if (isTableLevel(level)) return shortestTableLife(level, packageClass, climate);
  if (mild) return { seconds: standardLifeSeconds[level] ?? 0, notes: [] };
  const derated = shortestTableLife('2a', packageClass, climate);
  return { seconds: derated.seconds, notes: [floorLifeNote('levelTwoDerated'), ...derated.notes] };
}

/** Whether a climate is no worse than the standard one, 30 °C and 60 %. */
export function isMildClimate(climate: Climate): boolean {
  return climate.celsius <= standardClimate.celsius && climate.humidity <= standardClimate.humidity;
}
