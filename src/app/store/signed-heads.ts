// Heads of this tablet's chains, signed: within a second of an append, at a start, and before an export is written. A head vouches for
// every entry before it. What lies in the store is signed as it lies there: a tablet trusts its own store, and whoever can write to that can have
// the tablet sign. Sync signs the ends of its pages by itself. Refused: the signature in the entry's row, which would be written anew
// for each entry and travel with each.

import type { Entry } from '../../../shared/log/entry.ts';
import type { LogDatabase } from './database.ts';
import { type Identity, signHash } from './identity.ts';

/** The newest signed head of a life of this tablet's chain. */
export interface SignedHead {
  readonly seq: number;
  readonly hash: string;
  readonly sig: string;
}

const metaKey = 'signed-heads';

/** By the life of the chain: one that ended (a clock put right) keeps its head. */
export type SignedHeads = Readonly<Record<string, SignedHead>>;

/** The heads that are signed. */
export async function readSignedHeads(log: LogDatabase): Promise<SignedHeads> {
  return ((await log.meta.get(metaKey))?.value as SignedHeads | undefined) ?? {}; // written below only
}

/** Signs the end of the present chain, where that is not signed yet; nothing without a key or an entry. */
export async function signHead(log: LogDatabase, identity: Identity): Promise<void> {
  const { tablet, epoch } = identity;
  const last = await log.entries
    .where('[tablet+epoch+seq]')
    .between([tablet, epoch, 0], [tablet, epoch, Number.MAX_SAFE_INTEGER])
    .last();
  if (!last || last.entry.sig !== null) return;
  const { seq, hash } = last.entry;
  if ((await readSignedHeads(log))[epoch]?.hash === hash) return;
  const sig = await signHash(identity, hash);
  if (sig === null) return;
  await log.transaction('rw', log.meta, async () => {
    const heads = await readSignedHeads(log);
    // Another window may have signed a later one meanwhile.
    if ((heads[epoch]?.seq ?? 0) < seq)
      await log.meta.put({ key: metaKey, value: { ...heads, [epoch]: { seq, hash, sig } } });
  });
}

/** The head of a chain whose end was put aside is none any more. Within a transaction over `meta`. */
export async function forgetHead(log: LogDatabase, epoch: string): Promise<void> {
  const { [epoch]: _, ...kept } = await readSignedHeads(log);
  await log.meta.put({ key: metaKey, value: kept });
}

/** Entries as others are to read them: with the signature of the head that stands at one. */
export function withHeads(entries: readonly Entry[], tablet: string, heads: SignedHeads): readonly Entry[] {
  return entries.map((entry) => {
    const head = entry.tablet === tablet && entry.sig === null ? heads[entry.epoch] : undefined;
    return head && head.hash === entry.hash && head.seq === entry.seq ? { ...entry, sig: head.sig } : entry;
  });
}
