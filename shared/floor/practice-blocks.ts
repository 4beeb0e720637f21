// What is under a block on a practice floor. Cuts and joins are history, which is not copied: what is under a block by them alone is told
// by its name, so that practice holds back what work does.

import { type Block, isUnderBlock } from './blocks.ts';
import type { DraftEntry } from './kinds.ts';
import type { FloorState } from './state.ts';

/**
 * The blocks as entries, and a block of its own for each package on which one stands by what is in it alone. `copied`: the reels that the practice
 * floor is told of. What a block reaches there by itself gets none, so that lifting the block sets it free.
 */
export function blocksForPractice(state: FloorState, copied: readonly DraftEntry[]): DraftEntry[] {
  const blocks = [...state.blocks.values()];
  const labels = new Map(copied.flatMap(labelOf));
  /** As the practice floor knows things. */
  const there = { madeOf: new Map(), reels: new Map(), forgotten: new Map() };
  const isUnderThere = (block: Block, reel: string) =>
    isUnderBlock(there, block, { reel, lot: null, part: null, ...labels.get(reel) });
  return [
    ...blocks.map(({ block, reel, lot, part, reason }) => blocked({ block, reel, lot, part, reason })),
    ...[...state.madeOf.keys()].flatMap((reel) => {
      const { lot = null, part = null } = state.reels.get(reel) ?? {};
      const found = blocks.find(
        (block) => isUnderBlock(state, block, { reel, lot, part }) && !isUnderThere(block, reel),
      );
      return found ? [blocked({ block: reel, reel, lot: null, part: null, reason: found.reason })] : [];
    }),
  ];
}

const blocked = (payload: Pick<Block, 'block' | 'reel' | 'lot' | 'part' | 'reason'>): DraftEntry => ({
  kind: 'material.blocked',
  payload,
});

/** What the practice floor is told of a reel. */
function labelOf({ kind, payload }: DraftEntry): [string, Pick<Block, 'lot' | 'part'>][] {
  if ((kind !== 'reel.put' && kind !== 'reel.verified') || payload.reel === null) return [];
  return [[payload.reel, { lot: payload.lot, part: payload.part }]];
}
