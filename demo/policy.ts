// Whom the simulated hands obey: given the floor as the log says, which slots to walk to now. The one given here is what a
// careful operator does with a splice list: go when a window is open by the count, and take along what is open on the way.

import { compareSlots } from '../shared/floor/address.ts';
import { slotLeft } from '../shared/floor/remaining.ts';
import type { FloorState } from '../shared/floor/state.ts';
import { wantedOn } from '../shared/floor/wanted.ts';
import { windowParts } from './placing.ts';
import { lineFigures } from './plant.ts';

/** What a policy sees: never the truth, only the log's state. Asked after every panel while a hand is free. */
export interface PolicyView {
  readonly nowMs: number;
  readonly state: FloorState;
  readonly line: string;
  readonly run: string;
  readonly setup: string;
  readonly panelSeconds: number;
  /** Slots to which somebody is on the way. */
  readonly inHand: ReadonlySet<string>;
  readonly freeHands: number;
}

/** Slots of each walk that begins now, one walk a free hand, in the order in which they are served. */
export type SplicePolicy = (view: PolicyView) => readonly (readonly string[])[];

/** Share of the window that the walk lets pass first, since a count may be off. */
const INTO_WINDOW = 0.3;

/** Goes by the count: walks when a slot is well inside its window on arrival, and serves all that are. */
export const spliceByCount: SplicePolicy = (view) => {
  const run = view.state.runs.get(view.run);
  if (!run) return [];
  const arrivePanels = lineFigures.walkSeconds / view.panelSeconds;
  const ripe: string[] = [];
  for (const loaded of view.state.slots.values()) {
    if (loaded.line !== view.line || view.inHand.has(loaded.slot)) continue;
    const wanted = wantedOn(view.state, view.setup, loaded.slot);
    if (!wanted || wanted.perPanel === 0 || wanted.pitchMm === null) continue;
    const left = slotLeft(view.state, loaded, lineFigures.loss);
    if (left.parts === null || left.runningIndex < loaded.tapes.length - 1) continue;
    if (left.parts / wanted.perPanel > run.panelsWanted - run.done) continue;
    const { opens, closes } = windowParts(wanted.pitchMm);
    const onArrival = left.parts - wanted.perPanel * arrivePanels;
    if (onArrival <= opens - (opens - closes) * INTO_WINDOW) ripe.push(loaded.slot);
  }
  return ripe.length === 0 ? [] : [ripe.sort(compareSlots)];
};
