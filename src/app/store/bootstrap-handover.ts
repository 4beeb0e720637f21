// Gives the folded state to a new tablet as a bootstrap snapshot, and takes one in there (see bootstrap.ts): once in the life of a tablet, so fetched when used.

import { applyEntry } from '../../../shared/floor/fold.ts';
import type { Replica } from '../../../shared/floor/replica.ts';
import { chainId } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { type Bootstrap, type ChainEnd, isIn } from './bootstrap.ts';
import { bootstrapKey, entryToRow, type LogDatabase } from './database.ts';
import type { BootstrapPack } from './pack.ts';

/** The bootstrap snapshot that this tablet can give; null where it does not hold and has not folded exactly the whole of every chain. */
export function giveBootstrap(
  fold: string,
  replica: Replica,
  heads: readonly ChainEnd[],
): BootstrapPack | null {
  const oldest = replica.marks[0];
  if (!oldest?.position) return null;
  if (heads.reduce((sum, head) => sum + head.seq, 0) !== replica.count) return null;
  const after = new Map<string, number>();
  for (const entry of replica.tail) after.set(chainId(entry), (after.get(chainId(entry)) ?? 0) + 1);
  const before = heads
    .map(({ tablet, epoch, seq }) => ({
      tablet,
      epoch,
      seq: seq - (after.get(chainId({ tablet, epoch })) ?? 0),
    }))
    .filter((head) => head.seq > 0);
  const { state, position, count } = oldest;
  return { bootstrap: { fold, state, position, count, heads: before }, tail: [...replica.tail] };
}

/**
 * Keeps a bootstrap snapshot and its tail, durably, and answers it as it was kept; null where it does not suit this tablet: it knows
 * others already, or wrote things alone that belong before the state and that nobody may miss meanwhile.
 */
export async function keepBootstrap(
  log: LogDatabase,
  tablet: string,
  handed: BootstrapPack,
): Promise<Bootstrap | null> {
  const { tail } = handed;
  let { bootstrap } = handed;
  return log.transaction('rw', log.entries, log.meta, async () => {
    const rows = await log.entries.limit(OWN_AT_MOST + 1).toArray();
    const own = rows.map((row) => row.entry).sort(compareEntries);
    if (own.length > OWN_AT_MOST || own.some((entry) => entry.tablet !== tablet)) return null;
    for (const entry of own) {
      if (compareEntries(entry, bootstrap.position) > 0 || isIn(bootstrap, entry)) continue;
      if (entry.kind !== 'tablet.opened' || entry.seq !== 1) return null;
      // That it was opened says nothing about the floor: it goes in as if it had been told in time.
      applyEntry(bootstrap.state, entry);
      const heads = [...bootstrap.heads, { tablet, epoch: entry.epoch, seq: 1 }];
      bootstrap = { ...bootstrap, heads, count: bootstrap.count + 1 };
    }
    const there = new Set(own.map((entry) => `${chainId(entry)}/${entry.seq}`));
    const fresh = tail.filter((entry) => !there.has(`${chainId(entry)}/${entry.seq}`));
    await log.entries.bulkAdd(fresh.map(entryToRow));
    await log.meta.put({ key: bootstrapKey, value: bootstrap });
    return bootstrap;
  });
}

/** More than this written alone is a plant of its own. */
const OWN_AT_MOST = 1_000;
