// Which climate does floor life rest on, on one line?
// Method: the highest temperature and humidity that a lead entered for the line's floor, for all the time that nobody recorded a climate for;
// 30 °C and 60 % where none was entered. Beyond the table the whole life of its worst corner counts, and that is said. Refused: going
// on beyond the table by a formula, which the standard does not give.

import type { FloorState } from '../floor/state.ts';
import { tableHumidities, tableTemperatures } from './derating.ts';
import { standardClimate } from './levels.ts';
import type { Climate } from './timeline.ts';

/** The worst climate that the table knows: 35 °C, 90 % relative humidity. */
export const worstTableClimate: Climate = {
  celsius: Math.max(...tableTemperatures),
  humidity: Math.max(...tableHumidities),
};

/** A line's climate: what was entered and what is computed with. °C and % relative humidity. */
export interface LineClimate {
  /** As a lead entered it; 30 °C and 60 % where nobody did. */
  readonly entered: Climate;
  /** False where nobody entered one. */
  readonly isEntered: boolean;
  /** What floor life is computed with: as entered, or the worst climate of the table where that ends before. */
  readonly computed: Climate;
}

/** Whether a climate lies beyond table 7-1: above 35 °C or 90 % relative humidity. */
export function isBeyondTable(climate: Climate): boolean {
  return climate.celsius > worstTableClimate.celsius || climate.humidity > worstTableClimate.humidity;
}

/** The climate of a line's floor; `line` null where a reel belongs to no line: the standard one. */
export function lineClimate(state: Pick<FloorState, 'climates'>, line: string | null): LineClimate {
  const ruled = line === null ? undefined : state.climates.get(line);
  const entered = ruled ?? standardClimate;
  const computed = isBeyondTable(entered) ? worstTableClimate : entered;
  return { entered, isEntered: ruled !== undefined, computed };
}
