// Proofs that entries are in the plant's log, kept for papers that are printed without a server. They may be lost: the server is asked anew.

import { isKeptOnPaper } from '../../../shared/floor/printed-kinds.ts';
import { chainId, type Entry, entryId } from '../../../shared/log/entry.ts';
import type { KeptRecord, RecordPort, SyncLog } from '../sync/ports.ts';
import type { CacheDatabase } from './database.ts';

type Wanted = Pick<Entry, 'tablet' | 'epoch' | 'seq' | 'hash'>;

/** How far a chain was looked through, and what of it has no proof yet. */
interface Looked {
  readonly chain: string;
  readonly seq: number;
  readonly wanted: readonly Wanted[];
}

const LOOKED = 'records';
const nameOf = (id: string) => `record ${id}`;
/** Entries looked through in one go. */
const LOOK_AT_ONCE = 500;
/** Of what was written before this was first asked, the newest alone. */
const LOOK_BACK = 1_000;
/** Proofs kept, and asked for at most. */
const KEPT_MOST = 200;

/** The proof kept of an entry; null where none is. */
export async function keptRecord({ kept }: CacheDatabase, id: string): Promise<KeptRecord | null> {
  const row = await kept.get(nameOf(id)).catch(() => undefined); // a broken cache keeps nothing
  return (row?.value as KeptRecord | undefined) ?? null; // written below only
}

/** Keeps the proof of an entry, and lets the oldest others go. */
export async function keepRecord({ kept }: CacheDatabase, id: string, record: KeptRecord): Promise<void> {
  await kept.put({ key: nameOf(id), value: record });
  const names = await kept.where('key').startsWith(nameOf('')).primaryKeys();
  if (names.length <= KEPT_MOST) return;
  const rows = await kept.bulkGet(names);
  const byAge = rows
    .flatMap((row) =>
      row && row.key !== nameOf(id) ? [{ key: row.key, index: (row.value as KeptRecord).index }] : [],
    )
    .sort((a, b) => a.index - b.index);
  await kept.bulkDelete(byAge.slice(0, names.length - KEPT_MOST).map(({ key }) => key));
}

/** What sync asks and keeps; `identity`: of this tablet's present chain, which a clock put right begins anew. */
export function recordPort(
  cache: CacheDatabase,
  identity: () => { readonly tablet: string; readonly epoch: string },
  entriesAfter: SyncLog['entriesAfter'],
): RecordPort {
  const read = async (chain: string, acked: number): Promise<Looked> => {
    const row = await cache.kept.get(LOOKED);
    const before = row?.value as Looked | undefined; // written below only
    return before?.chain === chain ? before : { chain, seq: Math.max(0, acked - LOOK_BACK), wanted: [] };
  };
  return {
    wanted: async (acked) => {
      const own = identity();
      const chain = chainId(own);
      const until = acked[chain] ?? 0;
      let { seq, wanted } = await read(chain, until);
      const began = seq;
      while (seq < until) {
        const entries = await entriesAfter(own, seq, Math.min(LOOK_AT_ONCE, until - seq));
        const last = entries.at(-1);
        if (!last) break;
        seq = last.seq;
        const found = entries
          .filter(isKeptOnPaper)
          .map(({ tablet, epoch, seq: at, hash }) => ({ tablet, epoch, seq: at, hash }));
        wanted = [...wanted, ...found].slice(-KEPT_MOST);
      }
      if (seq !== began) await cache.kept.put({ key: LOOKED, value: { chain, seq, wanted } });
      // A server that was restored may hold less than it did.
      return wanted.filter((one) => one.seq <= until);
    },
    keep: async (id, record) => {
      await keepRecord(cache, id, record);
      const looked = await read(chainId(identity()), 0);
      const wanted = looked.wanted.filter((one) => entryId(one) !== id);
      if (wanted.length < looked.wanted.length)
        await cache.kept.put({ key: LOOKED, value: { ...looked, wanted } });
    },
  };
}
