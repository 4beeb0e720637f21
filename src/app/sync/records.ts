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

/** Questions in one go: the rest is asked next time. */
const AT_ONCE = 8;

/** Asks for one entry; null where the server does not hold it yet, or what it says proves nothing. */
export async function askRecord(
  caller: Caller,
  serverKey: string,
  { tablet, epoch, seq, hash }: Pick<Entry, 'tablet' | 'epoch' | 'seq' | 'hash'>,
): Promise<KeptRecord | CallFailure | null> {
  const asked = await caller.call('/api/record', recordToldSchema, { json: { tablet, epoch, seq } });
  if (!asked.ok) return asked.error.code === 'not-found' ? null : asked.error;
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
  for (const name of wanted.slice(0, AT_ONCE)) {
    const told = await askRecord(caller, memory.enrolled?.serverKey ?? '', name);
    if (told === null) continue;
    if ('code' in told) return told;
    await log.records.keep(entryId(name), told);
  }
  return null;
}
