// What finished reels showed of a feeder's losses, gathered as the log tells it. Kept raw (what was put on, what was left, what
// was placed) and part by part, so that the law behind it may change without a new log; newest few hundred a part.

import { entryId } from '../log/entry.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import type { Finished, FloorState, Ledger, SlotState } from './state.ts';

/** Finished reels kept a part. */
const KEPT = 300;

/** How the end of a ledger was told. */
export interface LedgerEnd {
  readonly entry: string;
  readonly atMs: number;
  readonly placed: number;
  readonly endParts: number;
  readonly endSd: number;
  readonly told: Finished['told'];
}

/** What would be evidence once the end is known; null where the start is not. */
export function openEvidence(
  slot: Pick<SlotState, 'line' | 'slot' | 'feeder' | 'tapes'>,
  ledger: Ledger,
  placed: number,
): Omit<Finished, 'entry' | 'atMs' | 'endParts' | 'endSd' | 'told'> | null {
  const part = slot.tapes.at(-1)?.part ?? '';
  if (ledger.parts === null || placed <= 0 || part === '') return null;
  return {
    ...{ chain: ledger.chain, line: slot.line, slot: slot.slot, feeder: slot.feeder ?? '', part },
    startParts: ledger.parts,
    startSd: Math.sqrt(ledger.variance),
    placements: placed,
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
  keepEvidence(state, { ...open, entry, atMs, endParts, endSd, told });
}

/** Keeps what a count or a full reel shows, and takes away what a corrected entry had shown. */
export function foldLoss(
  state: FloorState,
  entry: EntryOf<'reel.calibrated' | 'reel.counted' | 'entry.corrected'>,
): void {
  if (entry.kind === 'reel.calibrated') {
    calibrate(state, entry.payload);
    return;
  }
  if (entry.kind === 'reel.counted') {
    if (entry.payload.slot === null)
      countedOff(state, entry.payload, { entry: entryId(entry), atMs: entry.hlc.ms });
    return;
  }
  for (const [part, reels] of state.finished) {
    const left = reels.filter((reel) => reel.entry !== entry.payload.of);
    if (left.length !== reels.length) state.finished.set(part, left);
  }
}

/** Measured and weighed figures may come one after the other: what is null leaves the older figure. */
function calibrate(
  state: FloorState,
  { part, parts, outerMm, hubMm, massG, emptyG }: PayloadOf<'reel.calibrated'>,
): void {
  const before = state.fullReels.get(part);
  state.fullReels.set(part, {
    part,
    measured: outerMm !== null && hubMm !== null ? { parts, outerMm, hubMm } : (before?.measured ?? null),
    weighed: massG !== null && emptyG !== null ? { parts, massG, emptyG } : (before?.weighed ?? null),
  });
}

/** A reel that came off uncounted is counted now, away from the line. */
function countedOff(
  state: FloorState,
  facts: PayloadOf<'reel.counted'>,
  at: { readonly entry: string; readonly atMs: number },
): void {
  const reel = facts.reel === null ? undefined : state.reels.get(facts.reel);
  if (!reel?.cameOff || reel.at !== null) return;
  keepEvidence(state, { ...reel.cameOff, ...at, endParts: facts.quantity, endSd: facts.sd, told: 'count' });
  state.reels.set(reel.reel, { ...reel, cameOff: null });
}
