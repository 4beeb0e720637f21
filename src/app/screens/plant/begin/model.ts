// The way from an empty plant to the first accepted reel, and how far along it this plant and this tablet are. What is done is read off
// the floor, so that any tablet can go on where another stopped; what belongs to one tablet is asked of that one.

import { printKey } from '../../../../../shared/floor/fold-print.ts';
import { hasAdder } from '../../../../../shared/floor/may.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { ScreenName } from '../../../router.ts';
import type { Preferences } from '../../../store/preferences.ts';

/** The steps in the order in which they are best taken; none must wait for the one before but where its own screen says so. */
export const steps = [
  'plant',
  'engineer',
  'line',
  'people',
  'product',
  'labels',
  'scanner',
  'label',
  'practice',
  'load',
] as const;
export type Step = (typeof steps)[number];

/** The address of each step, from the app's root. */
export const placesOfSteps: Readonly<Record<Step, readonly [screen: ScreenName, page?: string]>> = {
  plant: ['plant', 'this'],
  engineer: ['plant', 'people'],
  line: ['plant', 'lines'],
  people: ['plant', 'people'],
  product: ['plant', 'sheet'],
  labels: ['plant', 'print'],
  scanner: ['plant', 'scanner'],
  label: ['plant', 'scanner'],
  practice: ['plant', 'practice'],
  load: ['load'],
};

/** True for each step that is done. */
export function doneSteps(
  floor: FloorState,
  tablet: Pick<Preferences, 'scannerTested' | 'labelTested' | 'practised'>,
): Readonly<Record<Step, boolean>> {
  return {
    plant: floor.plant.size > 0,
    engineer: hasAdder(floor.people.values()),
    line: floor.lines.size > 0,
    people: floor.people.size > 1,
    product: floor.setups.size > 0,
    labels: [...floor.prints.keys()].some((key) => key.startsWith(printKey('slot', ''))),
    scanner: tablet.scannerTested,
    label: tablet.labelTested,
    practice: tablet.practised,
    load: floor.slots.size > 0,
  };
}

/** The first step that is not done; null where all are. */
export function nextStep(done: Readonly<Record<Step, boolean>>): Step | null {
  return steps.find((step) => !done[step]) ?? null;
}
