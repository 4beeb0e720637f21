// Does this feeder serve this slot? The one answer that the verdict, the slots of a line, a changeover's moves and whoever sends for a
// feeder are built on. Method: what its record says (tape width, pitches), what its type says (feeder-misfits.ts), and whether it was set
// aside; what nobody knows of it speaks for it.
// Refused: each list comparing widths of its own; they sent people for feeders that the verdict then refused.

import { compareText } from '../log/order.ts';
import { type TypeMisfit, typeMisfits } from './feeder-misfits.ts';
import { typeOf } from './feeder-types.ts';
import type { SetupSlot } from './kinds.ts';
import type { FloorState } from './state.ts';

/** Why a feeder does not serve a slot; widths and pitches in mm. */
export type FeederMisfit =
  | TypeMisfit
  | { readonly code: 'feeder-aside'; readonly why: string }
  | { readonly code: 'feeder-width'; readonly wanted: number; readonly found: number }
  | { readonly code: 'feeder-pitch'; readonly wanted: number; readonly found: string };

/** Whether the slot takes the feeder, and each thing that speaks against it. */
export interface FeederFit {
  readonly fits: boolean;
  readonly reasons: readonly FeederMisfit[];
}

/** Does this feeder serve this slot? `isThere`: it stands there already, so that it is not asked whether it was set aside. */
export function feederFits(
  state: FloorState,
  feeder: string,
  wanted: SetupSlot,
  { isThere = false }: { readonly isThere?: boolean } = {},
): FeederFit {
  const { tapeWidthMm, pitchMm } = wanted;
  const known = state.feeders.get(feeder);
  const aside = state.setAside.get(feeder);
  const reasons: FeederMisfit[] = [];
  if (aside && !isThere) reasons.push({ code: 'feeder-aside', why: aside.reason });
  if (known && tapeWidthMm !== null && known.tapeWidthMm !== tapeWidthMm)
    reasons.push({ code: 'feeder-width', wanted: tapeWidthMm, found: known.tapeWidthMm });
  // No pitch listed: it has any.
  if (known && pitchMm !== null && known.pitchesMm.length > 0 && !known.pitchesMm.includes(pitchMm))
    reasons.push({ code: 'feeder-pitch', wanted: pitchMm, found: known.pitchesMm.join(' / ') });
  reasons.push(...typeMisfits(state, feeder, wanted));
  return { fits: reasons.length === 0, reasons };
}

/** All that `feederFits` asks of a feeder, as one text: feeders of the same text serve the same slots. */
export function feederNature(state: FloorState, feeder: string | null): string {
  if (feeder === null) return '';
  const known = state.feeders.get(feeder);
  const type = typeOf(state, feeder)?.type ?? null;
  return JSON.stringify([known?.tapeWidthMm, known?.pitchesMm, type, state.setAside.has(feeder)]);
}

/** Listed feeders that serve a slot and stand on no slot and no cart, by name. */
export function freeFeeders(state: FloorState, wanted: SetupSlot): readonly string[] {
  const inUse = new Set([...state.slots.values()].map(({ feeder }) => feeder));
  for (const places of state.carts.values()) for (const { feeder } of places.values()) inUse.add(feeder);
  return [...state.feeders.keys()]
    .filter((feeder) => !inUse.has(feeder) && feederFits(state, feeder, wanted).fits)
    .sort(compareText);
}
