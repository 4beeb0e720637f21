// One panel's picks on every slot, and what they find: a loss, a joined tape, or nothing.

import type { Chance } from '../shared/kit/chance.ts';
import { lineFigures } from './plant.ts';
import { drawGoodPicks, type ShiftTruth, type TrueSlot, type TrueTape } from './world.ts';

/** Where and when picks are made. */
export interface Picking {
  readonly chance: Chance;
  readonly truth: ShiftTruth;
  readonly run: string;
  readonly panels: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/** Parts left on a tape at which its splice window opens and closes. */
export function windowParts(pitchMm: number): { readonly opens: number; readonly closes: number } {
  return {
    opens: Math.floor((lineFigures.hubToPickMm - lineFigures.trailerMm) / pitchMm),
    closes: Math.floor((lineFigures.intakeToPickMm - lineFigures.trailerMm) / pitchMm),
  };
}

/** Where a slot ran dry: `atMs`, and the placements that the panel still lacks. */
export interface Dry {
  readonly atMs: number;
  readonly lacking: number;
}

/** Places `wanted` parts from a slot; null where all were placed. */
export function placeParts(slot: TrueSlot, wanted: number, picking: Picking): Dry | null {
  const tally = tallyOf(picking.truth, slot.wanted.slot);
  const total = slot.wanted.perPanel;
  const momentOf = (placed: number) =>
    picking.fromMs + ((picking.toMs - picking.fromMs) * (total - wanted + placed)) / total;
  let placed = 0;
  while (placed < wanted) {
    const tape = slot.tapes[0];
    if (!tape) return { atMs: momentOf(placed), lacking: wanted - placed };
    if (tape.left === 0) {
      endTape(slot, tape, { ...picking, atMs: momentOf(placed) });
      continue;
    }
    const run = Math.min(wanted - placed, tape.left, slot.goodPicks);
    placed += run;
    tape.left -= run;
    slot.goodPicks -= run;
    tally.placed += run;
    if (slot.goodPicks === 0 && tape.left > 0 && placed < wanted) {
      tape.left -= 1;
      tally.lost += 1;
      slot.goodPicks = drawGoodPicks(picking.chance, slot.loss);
    }
  }
  noteWindow(slot, picking.toMs);
  return null;
}

function tallyOf(truth: ShiftTruth, slot: string): { placed: number; lost: number } {
  let tally = truth.picks.get(slot);
  if (!tally) {
    tally = { placed: 0, lost: 0 };
    truth.picks.set(slot, tally);
  }
  return tally;
}

function endTape(slot: TrueSlot, tape: TrueTape, at: Picking & { readonly atMs: number }): void {
  slot.tapes.shift();
  at.truth.ends.push({
    slot: slot.wanted.slot,
    reel: tape.label.reel ?? '',
    run: at.run,
    atMs: at.atMs,
    panels: at.panels,
    how: slot.tapes.length > 0 ? 'spliced' : 'dry',
    opensMs: tape.opensMs,
    closesMs: tape.closesMs,
  });
}

function noteWindow(slot: TrueSlot, atMs: number): void {
  const tape = slot.tapes[0];
  if (!tape) return;
  const { opens, closes } = windowParts(slot.wanted.pitchMm ?? 4);
  if (tape.left <= opens) tape.opensMs ??= atMs;
  if (tape.left <= closes) tape.closesMs ??= atMs;
}
