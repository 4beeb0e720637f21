// Which blocked reels stand on the slots of several lines, for a tablet that serves them? Lanes of one conveyor feed from the same slots: a reel is told
// once, with the panels of all lanes that take from its slot, served by the tablet or not, as any of them may carry its parts.

import { type BlockedTape, blockedTapes } from './blocks.ts';
import { linesFeeding } from './lanes.ts';
import { type FloorState, needKey } from './state.ts';
import { perPanelOf } from './wanted.ts';

/**
 * Blocked reels on the slots of several lines, each once: told of the first of these lines whose run takes from the slot, else of the first that
 * builds something, else of the first; with the panels of all lanes of the conveyor that take from it, and the run of the first that does.
 */
export function blockedOn(state: FloorState, lines: readonly string[]): readonly BlockedTape[] {
  const all = new Set([...lines, ...lines.flatMap((line) => linesFeeding(state, line))]);
  const setupOf = ({ run }: BlockedTape) => state.runs.get(run ?? '')?.setup ?? '';
  const takes = (each: BlockedTape) => perPanelOf(state, setupOf(each), each.slot) > 0;
  const one = new Map<string, BlockedTape[]>();
  for (const each of [...all].flatMap((line) => blockedTapes(state, line))) {
    const key = needKey(each.line, each.slot, each.tape.entry);
    one.set(key, [...(one.get(key) ?? []), each]);
  }
  return [...one.values()].flatMap((told) => {
    const served = told.filter(({ line }) => lines.includes(line));
    const teller = served.find(takes) ?? served.find(({ run }) => run !== null) ?? served[0];
    if (!teller) return [];
    const [first, ...more] = told.filter(takes);
    // Of a run whose setup is not known nobody can say that it takes nothing.
    const untaken = state.setups.has(setupOf(teller)) ? { ...teller, ...none } : teller;
    const counted = first ? more.reduce(withPanels, first) : untaken;
    // A lane whose run is over has no panels of now to add, and carries it all the same.
    const wasThereBefore = told.some((each) => each.wasThereBefore);
    return [{ ...counted, wasThereBefore, line: teller.line }];
  });
}

const none = { sinceLoaded: 0, sinceBlocked: 0 };

function withPanels(all: BlockedTape, lane: BlockedTape): BlockedTape {
  return {
    ...all,
    sinceLoaded: all.sinceLoaded + lane.sinceLoaded,
    sinceBlocked: all.sinceBlocked + lane.sinceBlocked,
  };
}
