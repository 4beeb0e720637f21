// What the lists of reels ask the camera to find: reels by their ids where a list names them, else any reel of a part. Pure.

import type { KitRow } from '../../../shared/changeover/kit.ts';
import type { SetupProgress } from '../../../shared/floor/progress.ts';
import type { Supply } from '../../../shared/outlook/supply.ts';
import type { FindList } from './find-model.ts';

function listOf(
  setup: string | null,
  wanted: {
    readonly reels: readonly (readonly [reel: string, slots: readonly string[]])[];
    readonly parts: readonly (readonly [part: string, slots: readonly string[]])[];
  },
): FindList {
  const join = (pairs: readonly (readonly [string, readonly string[]])[]) => {
    const joined = new Map<string, readonly string[]>();
    for (const [name, slots] of pairs)
      joined.set(name, [...new Set([...(joined.get(name) ?? []), ...slots])]);
    return joined;
  };
  return { setup, reels: join(wanted.reels), parts: join(wanted.parts) };
}

/** What a changeover's pick list fetches. Where it names reels, others of the part are not asked for. */
export function listOfKit(setup: string, rows: readonly KitRow[]): FindList {
  return listOf(setup, {
    reels: rows.flatMap(({ reels, slots }) => reels.map(({ reel }) => [reel, slots] as const)),
    parts: rows.flatMap(({ part, slots, reels, enough }) =>
      enough !== 'sure' && reels.length === 0 ? [[part, slots] as const] : [],
    ),
  });
}

/** What the run that is built still needs; null: it is not known yet, or nothing is built. */
export function listOfSupply(setup: string | null, supply: Supply | null): FindList {
  return listOf(setup, {
    reels: (supply?.slots ?? []).flatMap(({ slot, waiting }) =>
      waiting.map(({ reel }) => [reel, [slot.slot]] as const),
    ),
    parts: (supply?.picks ?? []).map(
      ({ part, slots }) => [part, slots.flatMap((each) => each.split(' '))] as const,
    ),
  });
}

/** What a line still misses for its setup. */
export function listOfMissing({ setup, slots }: SetupProgress): FindList {
  return listOf(setup, {
    reels: [],
    parts: slots.flatMap(({ phase, slot, wanted }) =>
      phase === 'missing' ? [[wanted.part, [slot]] as const] : [],
    ),
  });
}
