// Carts as scans name them, what docking one writes, and why a place of one stays on it.

import type { Docking, UnfitPlace } from '../../../../shared/changeover/docking.ts';
import { unloadedFacts } from '../../../../shared/desk/unloaded.ts';
import type { DraftEntry } from '../../../../shared/floor/kinds.ts';
import { recognise } from '../../../../shared/floor/recognise.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import { kitWords } from '../../words/kit.ts';
import { say } from '../../words/words.ts';

/** The cart that a scan names; null where it names none that the log knows, or may name something else as well. */
export function cartIn(floor: FloorState, line: string, scan: Pick<Scan, 'codes'>): string | null {
  const [code, ...others] = scan.codes;
  if (!code || others.length > 0) return null;
  const [known, ...more] = recognise(floor, line, code.text);
  return known?.is === 'cart' && more.length === 0 ? known.cart : null;
}

/** What docking writes, in one go: each reel that goes off, uncounted, then the cart. */
export function dockingEntries(
  floor: FloorState,
  cart: string,
  more: { readonly line: string; readonly setup: string; readonly docking: Docking },
): readonly DraftEntry[] {
  const { line, setup, docking } = more;
  return [
    ...docking.off.map((loaded) => ({
      kind: 'reel.unloaded' as const,
      payload: {
        ...unloadedFacts(floor, loaded),
        cart,
        via: 'machine' as const,
        quantity: null,
        basis: null,
      },
    })),
    {
      kind: 'cart.docked' as const,
      payload: { cart, line, setup, slots: docking.ready.map(({ slot }) => slot) },
    },
  ];
}

/** Why a place stays on the cart, in words: with what stands in its way, and on which line. */
export function sayUnfit(floor: Pick<FloorState, 'lines'>, { place, why, at }: UnfitPlace): string {
  const isOfFeeder = why === 'feeder-loaded' || why === 'neighbour';
  const line = at === null ? '' : (floor.lines.get(at.line)?.name ?? at.line);
  const slot = at?.slot ?? '';
  const thing = (isOfFeeder ? place.feeder : place.reel) ?? place.part;
  return say(kitWords).unfit[why]({ thing, line, slot, at: at === null ? '' : `${line} ${slot}` });
}
