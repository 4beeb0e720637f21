// Which blocked reels stand on the slots of several lines, for a tablet that serves them? Lanes of one conveyor feed from the same slots: a reel is told
// once, with the panels of all lanes that take from its slot, as any of them may carry its parts.

import { type BlockedTape, blockedTapes } from './blocks.ts';
import { type FloorState, needKey } from './state.ts';
import { perPanelOf } from './wanted.ts';

/**
 * Blocked reels on the slots of several lines, each once: told of the first lane of its conveyor whose run takes from the slot, with the panels of all
 * that do; else of the first that builds something, else of the first.
 */
export function blockedOn(state: FloorState, lines: readonly string[]): readonly BlockedTape[] {
  const one = new Map<string, BlockedTape[]>();
  for (const each of lines.flatMap((line) => blockedTapes(state, line))) {
    const key = needKey(each.line, each.slot, each.tape.entry);
    one.set(key, [...(one.get(key) ?? []), each]);
  }
  return [...one.values()].flatMap((told) => {
    const taking = told.filter(({ run, slot }) => takes(state, run, slot));
    const first = taking[0] ?? told.find(({ run }) => run !== null) ?? told[0];
    return first ? [taking.reduce(withPanels, { ...first, ...(taking[0] ? noPanels : {}) })] : [];
  });
}

const noPanels = { sinceLoaded: 0, sinceBlocked: 0, wasThereBefore: false };

function takes(state: FloorState, run: string | null, slot: string): boolean {
  return perPanelOf(state, state.runs.get(run ?? '')?.setup ?? '', slot) > 0;
}

function withPanels(all: BlockedTape, lane: BlockedTape): BlockedTape {
  return {
    ...all,
    sinceLoaded: all.sinceLoaded + lane.sinceLoaded,
    sinceBlocked: all.sinceBlocked + lane.sinceBlocked,
    wasThereBefore: all.wasThereBefore || lane.wasThereBefore,
  };
}
