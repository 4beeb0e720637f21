// Which slots for several new boards at once, so that the fewest feeders are put in over all of them in their order?
// Method: board after board, each beside those before it (propose.ts), and beside that one search over all of them (assign.ts); what puts in fewer feeders
// counts, board after board where both put in as many. Refused: the search over all alone, which knows neither trays nor look-alikes.

import { assignSlots } from './assign.ts';
import { collide, type LinePlaces, linePlaces, positionKey, positionsOfKind, takenKeys } from './places.ts';
import {
  freeLine,
  innerSlots,
  keepOut,
  keyOf,
  outerSlots,
  type PlacedPart,
  type ProposalQuestion,
  type ProposedPart,
  proposeSlots,
  settleFirst,
  type WantedPart,
} from './propose.ts';

/** The parts of each board, in the order in which they are built. */
export type BoardParts = readonly (readonly WantedPart[])[];

type Place = Omit<ProposalQuestion, 'parts'>;
type Answer = readonly (readonly ProposedPart[])[];

function oneAfterTheOther(place: Place, boards: BoardParts): Answer {
  const before: PlacedPart[] = [];
  return boards.map((parts) => {
    const found = proposeSlots({ ...place, parts, elsewhere: [...before, ...place.elsewhere] });
    for (const [at, { part, slot }] of found.entries())
      if (slot !== null) before.push({ part, slot, width: parts[at]?.width ?? 1 });
    return found;
  });
}

/** Every part once, as the first board with it wants it, with the most placements of any. */
function allParts(boards: BoardParts): readonly WantedPart[] {
  const all = new Map<string, WantedPart>();
  for (const part of boards.flat()) {
    const known = all.get(keyOf(part.part));
    const perPanel = Math.max(part.perPanel, known?.perPanel ?? 0);
    all.set(keyOf(part.part), { ...(known ?? part), perPanel });
  }
  return [...all.values()];
}

/** One search over all boards; null where it finds no room. What a person said, what comes on trays and what stands on lanes stays as the first answer has it. */
function searchedOver(place: Place, boards: BoardParts, first: Answer): Answer | null {
  const { standing, elsewhere } = place;
  const all = allParts(boards);
  const question: ProposalQuestion = { ...place, parts: all };
  const places = linePlaces(
    place.line,
    [...standing, ...elsewhere].map(({ slot }) => slot),
  );
  const settled = settleFirst(question, places);
  const still = new Set(
    all.flatMap(({ part, isOnTray }) =>
      isOnTray === true || settled.get(keyOf(part))?.isFixed === true ? [keyOf(part)] : [],
    ),
  );
  const blocked = new Set(keepOut(question, places, settled).flat());
  for (const [board, found] of first.entries())
    for (const [at, { part, slot }] of found.entries())
      if (slot !== null && still.has(keyOf(part)))
        for (const key of takenKeys(places, slot, boards[board]?.[at]?.width ?? 1))
          blocked.add(positionKey(key));
  for (const key of positionsOfKind(places, true)) blocked.add(key);
  const { line, back } = freeLine(places, blocked);
  const inner = innerSlots(back, places);
  const loaded = all.flatMap(({ part, width }) => {
    const there = still.has(keyOf(part)) ? undefined : settled.get(keyOf(part));
    const slot = there === undefined || there.keys.some((key) => blocked.has(key)) ? null : inner(there.slot);
    return slot === null ? [] : [{ slot, part: keyOf(part), width }];
  });
  const jobs = boards.map((parts, at) => ({
    id: String(at),
    parts: parts
      .filter(({ part }) => !still.has(keyOf(part)))
      .map(({ part, width, perPanel }) => ({ part: keyOf(part), width, perPanel })),
  }));
  const answer = assignSlots({ line, loaded, jobs });
  if (!answer.ok) return null;
  return first.map((found, board) => {
    const slots = outerSlots(answer.value, places, back, board);
    return found.map((each) => {
      const slot = slots.get(keyOf(each.part));
      return slot === undefined ? each : { part: each.part, slot, reason: null };
    });
  });
}

/** Feeders put in over all boards in their order, moved ones too; a part without a slot counts as many as there are parts. */
function changesOver(places: LinePlaces, place: Place, boards: BoardParts, answer: Answer): number {
  interface Feeder {
    readonly part: string;
    readonly keys: readonly string[];
  }
  const feeder = (part: string, slot: string, width: number): Feeder => ({
    part: keyOf(part),
    keys: takenKeys(places, slot, width),
  });
  let there = place.standing.map(({ part, slot, width }) => feeder(part, slot, width));
  let changes = 0;
  for (const [board, found] of answer.entries()) {
    const wanted = found.flatMap(({ part, slot }, at) => {
      if (slot === null) changes += boards.flat().length;
      return slot === null ? [] : [feeder(part, slot, boards[board]?.[at]?.width ?? 1)];
    });
    const isThere = ({ part, keys }: Feeder) =>
      there.some((each) => each.part === part && each.keys.join() === keys.join());
    changes += wanted.filter((each) => !isThere(each)).length;
    const taken = wanted.flatMap(({ keys }) => keys);
    there = [...wanted, ...there.filter(({ keys }) => !collide(keys, taken))];
  }
  return changes;
}

/** Proposes slots for boards that are built one after the other, each in the order of its parts. Deterministic; never fails. It is a proposal for feeders, not a placement program. */
export function proposeTogether(place: Place, boards: BoardParts): Answer {
  const first = oneAfterTheOther(place, boards);
  if (boards.length < 2) return first;
  const other = searchedOver(place, boards, first);
  if (other === null) return first;
  const places = linePlaces(
    place.line,
    [...place.standing, ...place.elsewhere].map(({ slot }) => slot),
  );
  const count = (answer: Answer) => changesOver(places, place, boards, answer);
  return count(other) < count(first) ? other : first;
}
