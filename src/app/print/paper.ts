// Which paper this tablet prints on: the size chosen here, else the plant's first, else a roll that most label printers have.

import type { FloorState } from '../../../shared/floor/state.ts';
import { FIRST_PAPER, type Paper } from '../../../shared/labels/label-paper.ts';
import type { Preferences } from '../store/preferences.ts';

/** A paper under its name; `isPlants`: the plant entered it. */
export interface NamedPaper extends Paper {
  readonly size: string;
  readonly isPlants: boolean;
}

/** The paper in use. `fallback`: what the one is called that nobody entered. */
export function paperInUse(floor: FloorState, preferences: Preferences, fallback: string): NamedPaper {
  const sizes = floor.labelSizes;
  const chosen = sizes.get(preferences.labelSize ?? '') ?? sizes.values().next().value;
  return chosen === undefined
    ? { ...FIRST_PAPER, size: fallback, isPlants: false }
    : { ...chosen, isPlants: true };
}
