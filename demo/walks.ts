// How a hand splices: walks, finds the window open, not yet open or closed, and splices where it can. What the hand finds is
// the truth, not the count: a window that the count calls open may not be.

import { type Floor, type Hand, loadSlot, spliceSlot, unloadSlot } from './hands.ts';
import { windowParts } from './placing.ts';
import { lineFigures } from './plant.ts';
import type { ShiftTruth } from './world.ts';

type Walk = ShiftTruth['walks'][number];

/** Seconds that a hand waits beside a slot whose tape is about to leave the hub. */
const WAIT_SECONDS = 90;
/** How long a slot is left alone after a walk in vain, ms. */
const LEAVE_MS = 180_000;

/** What a walk needs besides the floor. */
export interface Walking {
  readonly inHand: Set<string>;
  readonly panelSeconds: number;
}

/** Sends a hand on a walk; it is free again when the last slot is served. */
export function startWalk(
  floor: Floor,
  hand: Hand,
  going: Walking & { readonly slots: readonly string[]; readonly nowMs: number },
): void {
  const { slots, nowMs, inHand } = going;
  const walk: Walk = { leftMs: nowMs, slots, spliced: 0, vain: 0, late: 0, vainParts: 0 };
  floor.world.truth.walks.push(walk);
  for (const slot of slots) inHand.add(slot);
  hand.freeMs = Number.POSITIVE_INFINITY;
  const waitsLeft = { seconds: WAIT_SECONDS };
  const serve = (index: number, atMs: number) => {
    const slot = slots[index];
    if (slot === undefined) {
      hand.freeMs = atMs;
      return;
    }
    const found = findWindow(floor, slot, going.panelSeconds);
    const next = (dueMs: number) => {
      waitsLeft.seconds = WAIT_SECONDS;
      serve(index + 1, dueMs);
    };
    if (found === 'soon' && waitsLeft.seconds > 0) {
      waitsLeft.seconds -= 15;
      floor.agenda.at(atMs + 15_000, (dueMs) => serve(index, dueMs));
    } else if (found === 'open') {
      const seconds = lineFigures.spliceSeconds * (0.8 + 0.6 * floor.world.chance());
      floor.agenda.at(atMs + seconds * 1000, (dueMs) => {
        finishSplice(floor, { slot, walk, inHand, who: hand.person, atMs: dueMs });
        next(dueMs);
      });
    } else {
      giveUp(floor, found, { slot, walk, inHand, atMs });
      next(atMs);
    }
  };
  floor.agenda.at(nowMs + walkMs(floor), (atMs) => serve(0, atMs));
}

function walkMs(floor: Floor): number {
  return lineFigures.walkSeconds * 1000 * (0.7 + 0.6 * floor.world.chance());
}

type Found = 'open' | 'soon' | 'not-yet' | 'closed' | 'done';

function findWindow(floor: Floor, slot: string, panelSeconds: number): Found {
  const there = floor.world.slots.get(slot);
  const tape = there?.tapes[0];
  if (!there || !tape || there.tapes.length > 1) return 'done';
  const { opens, closes } = windowParts(there.wanted.pitchMm ?? 4);
  if (tape.left < closes) return 'closed';
  if (tape.left <= opens) return 'open';
  const seconds = ((tape.left - opens) / there.wanted.perPanel) * panelSeconds;
  return seconds <= WAIT_SECONDS ? 'soon' : 'not-yet';
}

interface Serving {
  readonly slot: string;
  readonly walk: Walk;
  readonly inHand: Set<string>;
  readonly atMs: number;
}

function finishSplice(floor: Floor, serving: Serving & { readonly who: string }): void {
  const found = findWindow(floor, serving.slot, 1);
  if (found !== 'open') {
    giveUp(floor, found, serving);
    return;
  }
  spliceSlot(floor, serving.slot, serving);
  serving.inHand.delete(serving.slot);
  serving.walk.spliced += 1;
}

/** A closed window stays in hand: nobody walks there again until the line stands and the slot is loaded anew. */
function giveUp(floor: Floor, found: Found, { slot, walk, inHand, atMs }: Serving): void {
  if (found === 'closed') {
    walk.late += 1;
    return;
  }
  if (found !== 'done') {
    walk.vain += 1;
    const there = floor.world.slots.get(slot);
    const { opens } = windowParts(there?.wanted.pitchMm ?? 4);
    walk.vainParts += Math.max(0, (there?.tapes[0]?.left ?? opens) - opens);
  }
  floor.agenda.at(atMs + LEAVE_MS, () => void inHand.delete(slot));
}

/** The line stands dry: the nearest hand takes the empty reel off and loads a new one. Returns when the line can go on. */
export function reloadDry(floor: Floor, slot: string, stop: Walking & { readonly atMs: number }): number {
  const { atMs, inHand } = stop;
  const free = floor.hands
    .filter((hand) => hand.freeMs <= atMs + 60_000)
    .sort((a, b) => a.freeMs - b.freeMs)[0];
  // With both operators on a walk, the lead comes.
  const startMs = Math.max(atMs, free?.freeMs ?? atMs + 120_000) + walkMs(floor);
  const doneMs = startMs + (100 + 80 * floor.world.chance()) * 1000;
  const who = free?.person ?? floor.lead;
  if (free) free.freeMs = doneMs;
  const wanted = floor.world.slots.get(slot)?.wanted;
  if (!wanted) throw new RangeError(`Cannot load anew as slot must be loaded: current value is ${slot}`);
  floor.agenda.advance(doneMs - 60_000);
  unloadSlot(floor, slot, { who, atMs: doneMs - 60_000, empty: true });
  floor.agenda.advance(doneMs);
  loadSlot(floor, wanted, { who, atMs: doneMs });
  inHand.delete(slot);
  return doneMs;
}
