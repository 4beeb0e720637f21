// What a link that answers can do without of the floor, so that its memory does not grow with every reel that a year brings.
// Method: an answer asks what stands on the slots, what was refused there and which reels contradict each other. A reel off the line that nothing
// on a slot, on a cart, on hold or in a contradiction names takes no part in that, and whatever names it next tells all that counts of it; its
// name is kept, since a reel that was never scanned gets another answer. So is it with runs and changeovers that ended, and with floor lives, dates and what was measured, which
// verdicts have judged before. Property: `tests/src/link/floor-thin.test.ts` compares every answer with that of the whole floor.
// What packages were cut off from or joined with is kept, and the lot and part of what is forgotten: a block may name any of them.
// Refused: to forget by age, which would answer of a reel that comes back as of one that nobody knows.

import { addTexts } from '../../shared/floor/gone-reels.ts';
import { isPackageId } from '../../shared/floor/package-name.ts';
import type { Replica } from '../../shared/floor/replica.ts';
import type { FloorState, Reel } from '../../shared/floor/state.ts';

/** Takes out of a replica and its copies what no answer asks for; `known` gets the names of reels that are taken out. */
export function thinReplica(replica: Replica, known: Set<string>): void {
  for (const state of [replica.state, ...replica.marks.map((mark) => mark.state)]) thinState(state, known);
}

/** Takes it out of one state. */
export function thinState(state: FloorState, known: Set<string>): void {
  const named = new Set<string>(state.current.values());
  const { slots, takenOff, conflicts, mended, holds, carts, loose, ready } = state;
  for (const map of [slots, takenOff, conflicts, mended, holds, carts, loose, ready])
    for (const value of map.values()) addTexts(value, named);
  for (const [name, told] of state.reels) {
    const reel = takenUp(state, name, told);
    // An id of the plant's own may yet be told to be that of a package on a slot.
    if (reel.at !== null || named.has(name) || isPackageId(name)) continue;
    state.reels.delete(name);
    state.forgotten.set(name, { lot: reel.lot, part: reel.part });
    known.add(name);
  }
  // A package that came without an id and got one since has that name no more.
  for (const was of state.named.values()) {
    known.delete(was);
    state.forgotten.delete(was);
  }
  const newest = new Map([...state.runs.values()].map((run) => [run.line, run.run]));
  for (const [name, run] of state.runs)
    if (run.phase === 'ended' && !named.has(name) && newest.get(run.line) !== name) state.runs.delete(name);
  // One that goes on keeps its lane; of one that is over nothing is asked.
  const going = new Set(state.changing.values());
  for (const name of state.changeovers.keys()) if (!going.has(name)) state.changeovers.delete(name);
  const { exposures, expiries, labelTimes, values, finished, fullReels } = state;
  for (const map of [exposures, expiries, labelTimes, values, finished, fullReels]) map.clear();
}

/** A reel that is known; one that was forgotten takes up what its label said before, where the new word leaves that open. */
function takenUp(state: FloorState, name: string, told: Reel): Reel {
  const before = state.forgotten.get(name);
  if (before === undefined) return told;
  const reel = { ...told, lot: told.lot ?? before.lot, part: told.part ?? before.part };
  state.reels.set(name, reel);
  state.forgotten.delete(name);
  return reel;
}
