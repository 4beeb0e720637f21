// Which blocked reels stand on the slots of several lines, for a tablet that serves them? Lanes of one conveyor feed from the same slots: a reel is told once.

import { type BlockedTape, blockedTapes } from './blocks.ts';
import { type FloorState, needKey } from './state.ts';

/** Blocked reels on the slots of several lines, each once: told of the first lane of its conveyor that builds something, else of the first. */
export function blockedOn(state: FloorState, lines: readonly string[]): readonly BlockedTape[] {
  const one = new Map<string, BlockedTape>();
  for (const each of lines.flatMap((line) => blockedTapes(state, line))) {
    const key = needKey(each.line, each.slot, each.tape.entry);
    const known = one.get(key);
    if (!known || (known.run === null && each.run !== null)) one.set(key, each);
  }
  return [...one.values()];
}
