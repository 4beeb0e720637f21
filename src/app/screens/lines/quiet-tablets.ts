// Tablets that wrote nothing for a while, though they are in use.

import type { FloorState } from '../../../../shared/floor/state.ts';
import { serverChain } from '../../../../shared/log/server-chain.ts';

/** A tablet that wrote nothing for so long is told, ms. */
const QUIET_MS = 15 * 60_000;
/** One that wrote nothing for longer than this is taken to be put away. */
const PUT_AWAY_MS = 12 * 3_600_000;

/** A tablet that nothing was heard of for a while. */
export interface QuietTablet {
  readonly tablet: string;
  readonly name: string;
  readonly agoMs: number;
}

/**
 * Those that are told, in the log's order. `heard`: tablet -> its newest entry, ms since 1970. The tablet in hand is none of them, nor is the
 * server: it writes only what is done to the plant's tablets, and its silence says nothing.
 */
export function quietTablets(
  floor: Pick<FloorState, 'tablets'>,
  heard: ReadonlyMap<string, number>,
  { nowMs, own }: { readonly nowMs: number; readonly own: string },
): readonly QuietTablet[] {
  return [...floor.tablets.values()].flatMap(({ tablet, name }) => {
    if (tablet === own || tablet === serverChain) return [];
    const agoMs = nowMs - (heard.get(tablet) ?? Number.NEGATIVE_INFINITY);
    return agoMs > QUIET_MS && agoMs < PUT_AWAY_MS ? [{ tablet, name, agoMs }] : [];
  });
}
