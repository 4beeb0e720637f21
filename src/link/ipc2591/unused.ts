// Messages of a machine that nothing is made of: named and counted, and told now and then, so that an engineer sees what is not understood.

import type { Now, StationDesk } from '../station-desk.ts';

/** Told so long after the first of them, ms. */
const TOLD_AFTER_MS = 60_000;
/** So many names are told. */
const NAMES_MOST = 12;

/** What was not used of one machine. */
export interface Unused {
  readonly add: (name: string, now: Now) => void;
  /** Tells what is due; `isEnd`: all of it. */
  readonly tick: (now: Now, isEnd: boolean) => Promise<unknown> | null;
}

/** Opens it with nothing in it. */
export function openUnused(desk: StationDesk): Unused {
  const names = new Set<string>();
  let times = 0;
  let sinceMs = 0;
  return {
    add: (name, now) => {
      if (times === 0) sinceMs = now.ms;
      times += 1;
      if (names.size < NAMES_MOST) names.add(name.replace(/^CFX\./, ''));
    },
    tick: (now, isEnd) => {
      if (times === 0 || (!isEnd && now.ms - sinceMs < TOLD_AFTER_MS)) return null;
      const said = times;
      times = 0;
      return desk.notice('not-used', [...names].sort().join(', '), now, said);
    },
  };
}
