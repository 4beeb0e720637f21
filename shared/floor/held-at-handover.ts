// Which reels does the last shift leave held? A hold that a handover lists is told until it is decided, whoever took over.

import { isSameLabel } from './holds.ts';
import type { HandedItem } from './kinds-handover.ts';
import type { FloorState, Hold } from './state.ts';
import type { Handed, HandoverState } from './state-handover.ts';

/** The newest handover of a line; null where there was none. */
export function lastHandover(state: HandoverState, line: string): Handed | null {
  return state.handovers.get(line)?.at(-1) ?? null;
}

/** The hold that a handover lists as it stands now; null where it was decided. The same reel scanned again for the same slot goes on from it. */
export function holdHanded(state: Pick<FloorState, 'holds'>, line: string, item: HandedItem): Hold | null {
  const own = state.holds.get(item.of);
  if (own) return own;
  const { slot, reel } = item;
  if (reel === null) return null;
  const label = { reel, part: null, supplierPart: null, lot: null, dateCode: null };
  for (const hold of state.holds.values())
    if (hold.facts.line === line && hold.facts.slot === slot && isSameLabel(hold.facts, label)) return hold;
  return null;
}

/** Holds that were open at a handover of the line and are open still, each once, the oldest first. Cost: what the handovers list. */
export function heldSinceHandover(
  state: Pick<FloorState, 'holds' | 'handovers'>,
  line: string,
): readonly Hold[] {
  const found = new Set<Hold>();
  for (const { left, taken } of state.handovers.get(line) ?? [])
    for (const item of [...left, ...(taken?.came ?? [])]) {
      const hold = item.what === 'hold' ? holdHanded(state, line, item) : null;
      if (hold) found.add(hold);
    }
  return [...found].sort((a, b) => a.atMs - b.atMs);
}
