// What is this scanned text: a slot, a feeder, a badge, a cart, a place in the store, a panel of the run, or something on a reel's label?
// Only what the plant knows is recognised, and only when the whole text matches; nothing is told from its first letters.
// A text that two lists know is both, and a person is asked.

import { isSameSlot } from './address.ts';
import { thoseWithBadge } from './badge.ts';
import { isPlaceInUse } from './fold-places.ts';
import { isReelKnown } from './gone-reels.ts';
import { standingAt } from './lanes.ts';
import { isOnLinePlace } from './place.ts';
import { hasOwnId } from './reel-id.ts';
import type { FloorState } from './state.ts';

/** One thing that a scanned text names. */
export type Recognised =
  | { readonly is: 'slot'; readonly line: string; readonly slot: string }
  | { readonly is: 'feeder'; readonly feeder: string }
  | { readonly is: 'person'; readonly person: string }
  | { readonly is: 'reel'; readonly reel: string }
  /** A cart that carries something, as far as the log says. */
  | { readonly is: 'cart'; readonly cart: string }
  /** A place in the store at which a reel lies, as far as the log says. */
  | { readonly is: 'place'; readonly place: string }
  | { readonly is: 'panel'; readonly run: string; readonly serial: string };

/** All that a text may name on this line; empty for texts that are not known. Blanks around the text do not count. */
export function recognise(state: FloorState, line: string | null, scanned: string): readonly Recognised[] {
  const text = scanned.trim();
  if (text === '') return [];
  const found: Recognised[] = [];
  for (const place of slotsNamed(state, line, text)) found.push({ is: 'slot', ...place });
  const isFeeder = state.feeders.has(text) || state.ready.has(text) || isFeederInUse(state, text);
  if (isFeeder) found.push({ is: 'feeder', feeder: text });
  for (const { person } of thoseWithBadge(state.people.values(), text)) found.push({ is: 'person', person });
  if (isReelKnown(state, text) && hasOwnId(text)) found.push({ is: 'reel', reel: text });
  if (state.carts.has(text)) found.push({ is: 'cart', cart: text });
  if (isPlaceInUse(state, text)) found.push({ is: 'place', place: text });
  const run = line === null ? undefined : state.runs.get(state.current.get(line) ?? '');
  if (run?.panelPrefix && text.startsWith(run.panelPrefix) && text.length > run.panelPrefix.length) {
    found.push({ is: 'panel', run: run.run, serial: text });
  }
  return found;
}

/** Slots that a text names, each as its setup or the floor writes it: `M1-F-14` on a label is `M1-F-014` of the sheet. */
function slotsNamed(state: FloorState, line: string | null, text: string): { line: string; slot: string }[] {
  const found: { line: string; slot: string }[] = [];
  for (const candidate of line === null ? state.lines.keys() : [line]) {
    const setup = state.setups.get(state.chosen.get(candidate) ?? '');
    const slot =
      setup?.slots.find((wanted) => wanted.slot === text)?.slot ??
      setup?.slots.find((wanted) => isSameSlot(wanted.slot, text))?.slot ??
      loadedAs(state, candidate, text) ??
      (isOnLinePlace(state, candidate, text) ? text : null);
    if (slot !== null) found.push({ line: candidate, slot });
  }
  return found;
}

/** How a loaded slot is written that a text names; null where nothing is loaded there. */
function loadedAs(state: FloorState, line: string, text: string): string | null {
  return standingAt(state, line).find((loaded) => isSameSlot(loaded.slot, text))?.slot ?? null;
}

function isFeederInUse(state: FloorState, text: string): boolean {
  for (const slot of state.slots.values()) if (slot.feeder === text) return true;
  return false;
}

/** True where one of the texts may be somebody's badge, whatever else it may be. */
export function holdsBadge(state: FloorState, line: string | null, texts: readonly string[]): boolean {
  return texts.some((text) => recognise(state, line, text).some(({ is }) => is === 'person'));
}
