// Which warnings has nobody taken note of for too long? Asked on every tablet of the plant: whoever stands at the line may be away from it.
// Method: what was raised and not answered, as long as its line's own outlook still gives it: a recount or a shorter run makes a warning
// quiet, and no entry says so. Only lines with something raised are looked at, since an outlook costs a walk over the line's slots, and the
// line that is watched anyway is left to its own watch. A slot's warning is told of the lane that runs, once where several do.

import { buildingOn } from '../floor/building.ts';
import { linesFeeding, sharesSlots } from '../floor/lanes.ts';
import { type FloorState, needKey, slotKey } from '../floor/state.ts';
import { compareLevels } from '../floor/vocabulary.ts';
import { lineCalendar } from '../forecast/line-calendar.ts';
import { lineOutlook, needOf } from './line.ts';

/** How long a warning waits for the people of its line before leads elsewhere are told, ms. Common practice; no standard has a figure. */
export const ESCALATE_MS = 180_000;

/** A warning that stands unanswered. Moments in ms since 1970. */
export interface Unanswered {
  /** The line, or the lane of it, that runs short. */
  readonly line: string;
  readonly slot: string;
  readonly need: string;
  readonly level: 'due' | 'late';
  /** When it was raised, at this level or a louder one. */
  readonly atMs: number;
}

/**
 * Warnings at `due` or `late` raised at least `ESCALATE_MS` ago on slots of lines that run, at the level at which they still stand and
 * nobody took note of them, longest waiting first. `without`: lines that are not looked at. What a tablet has not heard of yet it cannot tell: somebody may have answered on one that is offline.
 */
export function unanswered(
  floor: FloorState,
  nowMs: number,
  without: readonly string[] = [],
): readonly Unanswered[] {
  const waiting = new Map<string, Unanswered[]>();
  for (const loaded of floor.slots.values()) {
    const { slot } = loaded;
    const need = needOf(loaded);
    const raised = floor.raised.get(needKey(loaded.line, slot, need));
    if (!raised || (raised.level !== 'due' && raised.level !== 'late')) continue;
    if (nowMs - raised.atMs < ESCALATE_MS) continue;
    const lanes = linesFeeding(floor, loaded.line);
    if (lanes.every((line) => without.includes(line))) continue;
    for (const line of lanes) {
      const warning = { line, slot, need, level: raised.level, atMs: raised.atMs };
      if (isUnheard(floor, warning)) waiting.set(line, [...(waiting.get(line) ?? []), warning]);
    }
  }
  const givenBy = (line: string) => stillGiven(floor, { line, raised: waiting.get(line) ?? [] }, nowMs);
  const given = [...waiting.keys()].filter((line) => !without.includes(line)).flatMap(givenBy);
  // A lane's own watch has told what two lanes give.
  const watched = without.filter(
    (line) => waiting.has(line) && given.some((each) => sharesSlots(each.line, line)),
  );
  const told = new Set(watched.flatMap(givenBy).map(keyOf));
  return onePerNeed(given.filter((each) => !told.has(keyOf(each)))).sort((a, b) => a.atMs - b.atMs);
}

const keyOf = ({ line, slot, need }: Unanswered) => needKey(line, slot, need);

/** Of what several lanes give of one slot, the loudest. */
function onePerNeed(given: readonly Unanswered[]): Unanswered[] {
  const one = new Map<string, Unanswered>();
  for (const each of given) {
    const known = one.get(keyOf(each));
    if (!known || compareLevels(each.level, known.level) > 0) one.set(keyOf(each), each);
  }
  return [...one.values()];
}

/** True while a warning's line runs, its tape is the last on its slot, and nobody took note of it at its level. Cost: a few look-ups. */
export function isUnheard(floor: FloorState, { line, slot, need, level }: Unanswered): boolean {
  const loaded = floor.slots.get(slotKey(line, slot));
  if (loaded === undefined || needOf(loaded) !== need) return false;
  return buildingOn(floor, line)?.phase === 'running' && !isHeard(floor, { line, slot, need, level });
}

function isHeard(
  floor: FloorState,
  { line, slot, need, level }: Pick<Unanswered, 'line' | 'slot' | 'need' | 'level'>,
): boolean {
  const heard = floor.acknowledged.get(needKey(line, slot, need));
  return heard !== undefined && compareLevels(heard.level, level) >= 0;
}

/** A line's raised warnings as loud as its outlook still gives them, without those that somebody took note of. */
function stillGiven(
  floor: FloorState,
  { line, raised }: { readonly line: string; readonly raised: readonly Unanswered[] },
  nowMs: number,
): readonly Unanswered[] {
  const outlook = lineOutlook(floor, line, { nowMs, calendar: lineCalendar(floor, line, nowMs) });
  const now = new Map(outlook?.slots.map(({ slot, warning }) => [slot, warning.level]));
  return raised.flatMap((each) => {
    const given = now.get(each.slot);
    if (given !== 'due' && given !== 'late') return [];
    const level = compareLevels(given, each.level) < 0 ? given : each.level;
    const warning = { ...each, level };
    return isHeard(floor, warning) ? [] : [warning];
  });
}
