// What a scanned text names on the lines that a tablet serves: all that the line in hand knows, and slots and panels of the lines beside it.
// A slot that two lanes of a conveyor feed from is one thing: it is looked at for the lane that takes from it, the one in hand where both do.

import { setupTaking, sharesSlots } from '../floor/lanes.ts';
import { type Recognised, recognise } from '../floor/recognise.ts';
import { type FloorState, slotKey } from '../floor/state.ts';
import { perPanelOf } from '../floor/wanted.ts';
import type { DeskView } from './model.ts';

/** All that a text may name; the line in hand first. The same code on two lines is two things, and a person is asked. */
export function namedIn(view: DeskView, text: string): readonly Recognised[] {
  const { floor, line, beside = [] } = view;
  const elsewhere = beside.flatMap((other) => recognise(floor, other, text));
  const all = [
    ...recognise(floor, line, text),
    ...elsewhere.filter(({ is }) => is === 'slot' || is === 'panel'),
  ];
  const seen = new Set<string>();
  return all.flatMap((each): readonly Recognised[] => {
    if (each.is !== 'slot') return [each];
    const key = slotKey(each.line, each.slot);
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ ...each, line: laneFor(view, each) }];
  });
}

/** The line among those that a tablet serves for which a slot is asked: of lanes that share it the first that takes from it, the one in hand before others. */
export function laneFor(
  { floor, line, beside = [] }: DeskView,
  at: { readonly line: string; readonly slot: string },
): string {
  const lanes = [line, ...beside].filter((each) => sharesSlots(each, at.line));
  return lanes.find((each) => takesFrom(floor, each, at.slot)) ?? lanes[0] ?? at.line;
}

function takesFrom(floor: FloorState, line: string, slot: string): boolean {
  return perPanelOf(floor, setupTaking(floor, line) ?? '', slot) > 0;
}
