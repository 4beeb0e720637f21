// Asks where entries lie in the server's log and checks the answer, so that what is printed of them later proves itself, without a server too.

import { fromHex } from '../../../shared/log/bytes.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { inclusionHolds, leafHash } from '../../../shared/log/tree.ts';
import { parseTreeHead, proofFromTexts } from '../../../shared/log/tree-head.ts';
import { recordToldSchema } from '../../../shared/wire/messages-heads.ts';
import type { SyncContext } from './context.ts';
import { noteSignedBy } from './heads.ts';
import type { Caller, CallFailure } from './http.ts';
import type { KeptRecord } from './ports.ts';

/** Proofs in one go: the rest is asked for next time. */
const AT_ONCE = 8;
/** Questions in one go, where some are answered with nothing that holds. */
const ASKED_MOST = 4 * AT_ONCE;

/** Asks for one entry; `not-there` where the server does not hold it yet, null where what it says proves nothing. */
export async function askRecord(
  caller: Caller,
  serverKey: string,
  { tablet, epoch, seq, hash }: Pick<Entry, 'tablet' | 'epoch' | 'seq' | 'hash'>,
): Promise<KeptRecord | CallFailure | 'not-there' | null> {
  const asked = await caller.call('/api/record', recordToldSchema, { json: { tablet, epoch, seq } });
  if (!asked.ok) return asked.error.code === 'not-found' ? 'not-there' : asked.error;
  const { index, proof, head } = asked.value;
  const told = await noteSignedBy(head, serverKey, parseTreeHead);
  const data = fromHex(hash, 32);
  const hashes = proofFromTexts(proof);
  if (typeof told === 'string' || !data || !hashes) return null;
  const { size, root } = told;
  return inclusionHolds({ leaf: leafHash(data), index, size, root }, hashes) ? { index, proof, head } : null;
}

/** Asks for those that are wanted and have none. */
export async function askRecords({ log, caller, memory }: SyncContext): Promise<CallFailure | null> {
  if (!log.records) return null;
  const wanted = await log.records.wanted(memory.acked);
  let kept = 0;
  for (const name of wanted.slice(0, ASKED_MOST)) {
    if (kept === AT_ONCE) break;
    const told = await askRecord(caller, memory.enrolled?.serverKey ?? '', name);
    // It acknowledged the entry: a server of before there were papers.
    if (told === 'not-there') return null;
    // What has no proof now must not keep the others back.
    if (told === null) continue;
    if ('code' in told) return told;
    await log.records.keep(entryId(name), told);
    kept += 1;
  }
  return null;
}
