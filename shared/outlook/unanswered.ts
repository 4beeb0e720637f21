// Which warnings has nobody taken note of for too long? Asked on every tablet of the plant: whoever stands at the line may be away from it.

import { buildingOn } from '../floor/building.ts';
import { type FloorState, needKey } from '../floor/state.ts';
import { compareLevels } from '../floor/vocabulary.ts';
import { needOf } from './line.ts';

/** How long a warning waits for the people of its line before leads elsewhere are told, ms. Common practice; no standard has a figure. */
export const ESCALATE_MS = 180_000;

/** A warning that stands unanswered. Moments in ms since 1970. */
export interface Unanswered {
  readonly line: string;
  readonly slot: string;
  readonly need: string;
  readonly level: 'due' | 'late';
  /** When it was raised at this level. */
  readonly atMs: number;
}

/**
 * Warnings at `due` or `late` raised at least `ESCALATE_MS` ago on slots of lines that run, which nobody took note of at that level,
 * longest waiting first. What a tablet has not heard of yet it cannot tell: somebody may have answered on one that is offline.
 */
export function unanswered(floor: FloorState, nowMs: number): readonly Unanswered[] {
  const found: Unanswered[] = [];
  for (const loaded of floor.slots.values()) {
    const { line, slot } = loaded;
    const need = needOf(loaded);
    const key = needKey(line, slot, need);
    const raised = floor.raised.get(key);
    if (!raised || (raised.level !== 'due' && raised.level !== 'late')) continue;
    if (nowMs - raised.atMs < ESCALATE_MS || buildingOn(floor, line)?.phase !== 'running') continue;
    const heard = floor.acknowledged.get(key);
    if (heard && compareLevels(heard.level, raised.level) >= 0) continue;
    found.push({ line, slot, need, level: raised.level, atMs: raised.atMs });
  }
  return found.sort((a, b) => a.atMs - b.atMs);
}
