// What a finished reel showed, kept raw. Private to the door `remaining.ts`.

import type { Finished, FloorState, Ledger, SlotState } from '../state.ts';
import { doubtVariance, type PlacedDoubt } from './skips.ts';

/** Finished reels kept a part. */
const KEPT = 300;

/**
 * A deviation as it is kept, to four digits: nobody knows more of it, and the digits beyond cost a new tablet a third of what it is handed.
 */
export function keptSd(sd: number): number {
  return Number(sd.toPrecision(4));
}

/** Placements since a ledger began, and what is not known of them. */
export interface Placed {
  readonly count: number;
  readonly doubt: PlacedDoubt;
}

/** How the end of a ledger was told. */
export interface LedgerEnd {
  readonly entry: string;
  readonly atMs: number;
  readonly placed: Placed;
  readonly endParts: number;
  readonly endSd: number;
  readonly told: Finished['told'];
}

/** What would be evidence once the end is known; null where the start is not. */
export function openEvidence(
  slot: Pick<SlotState, 'line' | 'slot' | 'feeder' | 'tapes'>,
  ledger: Ledger,
  placed: Placed,
): Omit<Finished, 'entry' | 'atMs' | 'endParts' | 'endSd' | 'told'> | null {
  const part = slot.tapes.at(-1)?.part ?? '';
  if (ledger.parts === null || placed.count <= 0 || part === '') return null;
  const variance = doubtVariance(placed.doubt);
  return {
    chain: ledger.chain,
    line: slot.line,
    slot: slot.slot,
    feeder: slot.feeder ?? '',
    part,
    startParts: ledger.parts,
    startSd: keptSd(Math.sqrt(ledger.variance)),
    placements: placed.count,
    ...(variance > 0 ? { placementsSd: keptSd(Math.sqrt(variance)) } : {}),
    ...(placed.doubt.unknown ? { skipsUnknown: true as const } : {}),
    ...(ledger.splices > 0 ? { splices: ledger.splices } : {}),
  };
}

/** Keeps evidence; a chain's newer evidence takes the place of its older. */
export function keepEvidence(state: FloorState, found: Finished): void {
  const others = (state.finished.get(found.part) ?? []).filter((each) => each.chain !== found.chain);
  state.finished.set(found.part, [...others, found].slice(-KEPT));
}

/** The end of a ledger is known: what it shows is kept. Nothing where its start is not known or nothing was placed. */
export function endLedger(
  state: FloorState,
  slot: Pick<SlotState, 'line' | 'slot' | 'feeder' | 'tapes' | 'ledger'>,
  end: LedgerEnd,
): void {
  const open = openEvidence(slot, slot.ledger, end.placed);
  if (!open) return;
  const { entry, atMs, endParts, endSd, told } = end;
  keepEvidence(state, { ...open, entry, atMs, endParts, endSd: keptSd(endSd), told });
}
