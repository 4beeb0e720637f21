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
import { type MoistureLevel, type PackageClass, standardClimate, standardLifeSeconds } from './levels.ts';
import { type FloorLifeNote, floorLifeNote } from './notes.ts';
import type { Climate } from './timeline.ts';
import { type OwnValues, type ValueSource, weakestSource } from './values.ts';

/** What a floor life depends on besides the climate. */
export interface PartMoisture {
  readonly level: MoistureLevel;
  /** The classes that it may belong to, never empty; the shortest life of them counts. */
  readonly packageClasses: readonly PackageClass[];
  /** Level 6: the time on the label in seconds; null = not known. */
  readonly timeOnLabelSeconds: number | null;
  /** The plant's own values of the tables, null where it entered none. */
  readonly own: OwnValues | null;
}

/** A floor life in one climate and what is to be said about it. */
export interface ClimateLife {
  /** Seconds; `Infinity` = no limit, 0 = no life is known. */
  readonly seconds: number;
  /** The class whose life is the shortest here; null where classes do not matter. */
  readonly packageClass: PackageClass | null;
  /** On what the life rests. */
  readonly source: ValueSource;
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

function shortestTableLife(level: TableLevel, part: PartMoisture, climate: Climate): ClimateLife {
  let shortest: ClimateLife | null = null;
  const sources: ValueSource[] = [];
  for (const packageClass of part.packageClasses) {
    const life = tableFloorLife(level, packageClass, climate, part.own);
    if (life === null) break;
    sources.push(life.source);
    if (shortest !== null && life.seconds >= shortest.seconds) continue;
    shortest = {
      packageClass,
      seconds: life.seconds,
      source: life.source,
      notes: roundingNotes(climate, life),
    };
  }
  if (shortest !== null) return { ...shortest, source: weakestSource(sources) };
  return {
    seconds: 0,
    packageClass: null,
    source: 'memory',
    notes: [floorLifeNote('outsideTable', { ...climate })],
  };
}

/** Levels whose standard life was seen in published data sheets. */
const SEEN_LEVELS: readonly MoistureLevel[] = ['1', '2a', '3', '5'];

/** The whole floor life in one climate. */
export function climateLife(part: PartMoisture, climate: Climate): ClimateLife {
  const { level } = part;
  const mild = isMildClimate(climate);
  const plain = { packageClass: null, notes: [] } as const;
  if (level === '1') {
    const beyond = climate.celsius > 30 || climate.humidity > 85;
    const notes = beyond ? [floorLifeNote('aboveLevelOne')] : [];
    return { ...plain, seconds: Number.POSITIVE_INFINITY, source: 'copy', notes };
  }
  if (level === '6') return { ...plain, seconds: part.timeOnLabelSeconds ?? 0, source: 'own' };
  if (isTableLevel(level)) return shortestTableLife(level, part, climate);
  const source = SEEN_LEVELS.includes(level) ? 'copy' : 'memory';
  const whole = standardLifeSeconds[level] ?? 0;
  if (mild) return { ...plain, seconds: whole, source };
  const derated = shortestTableLife('2a', part, climate);
  // A drier but warmer climate than the standard one never gives more than the standard one.
  const seconds = Math.min(whole, derated.seconds);
  return { ...derated, seconds, notes: [floorLifeNote('levelTwoDerated'), ...derated.notes] };
}

/** Whether a climate is no worse than the standard one, 30 °C and 60 %. */
export function isMildClimate(climate: Climate): boolean {
  return climate.celsius <= standardClimate.celsius && climate.humidity <= standardClimate.humidity;
}
