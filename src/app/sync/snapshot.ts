// A new tablet starts from another tablet's folded state instead of from a year of entries. The server only keeps the bytes:
// it knows no fold. Trust is the plant's own: snapshots come from enrolled tablets only, and once the history behind one is here
// the tablet folds it itself and compares.

import { ok, type Result } from '../../../shared/kit/result.ts';
import { parseCursor } from '../../../shared/wire/cursor.ts';
import { snapshotBytes, snapshotUnpackedBytes } from '../../../shared/wire/limits.ts';
import { roomShare } from '../../../shared/wire/state-room.ts';
import type { Caller, CallFailure } from './http.ts';
import { gzip } from './pack.ts';
import type { SyncLog } from './ports.ts';

interface SnapshotParts {
  readonly log: SyncLog;
  readonly caller: Caller;
}

const TIMEOUT_MS = 60_000;

/** Takes the server's newest snapshot of this app's fold; the cursor from which to pull on, or null where there is none. */
export async function takeSnapshot({ log, caller }: SnapshotParts): Promise<string | null> {
  const port = log.snapshots;
  if (!port || (await log.heads()).length > 1) return null;
  const path = `/api/snapshot?fold=${encodeURIComponent(port.fold)}`;
  const got = await caller.open(path, { timeoutMs: TIMEOUT_MS });
  if (!got.ok) return null;
  const cursor = got.value.headers.get('reelward-cursor');
  if (cursor === null || parseCursor(cursor) === null) return null;
  const bytes = await unpack(got.value);
  if (!bytes.ok) return null;
  return (await port.take(bytes.value, got.value.headers.get('reelward-snapshot-by'))) ? cursor : null;
}

/**
 * Gives this tablet's state to the server, for the next new tablet; of one that is too large, its size alone. A failure costs nothing:
 * somebody else will give one.
 */
export async function giveSnapshot(parts: SnapshotParts & { readonly cursor: string | null }): Promise<void> {
  const port = parts.log.snapshots;
  if (!port || parts.cursor === null) return;
  const plain = await port.make();
  if (!plain) return;
  const bytes = await gzip(plain);
  const size = { packed: bytes.length, plain: plain.length };
  const isOver = roomShare(size) > 1;
  const path = `/api/snapshot?fold=${encodeURIComponent(port.fold)}&after=${parts.cursor}`;
  const told = isOver ? `&packed=${size.packed}&plain=${size.plain}` : '';
  const sent = isOver ? new Uint8Array() : bytes;
  await parts.caller.open(path + told, { method: 'PUT', bytes: sent, timeoutMs: TIMEOUT_MS });
}

async function unpack(response: Response): Promise<Result<Uint8Array, CallFailure>> {
  try {
    const packed = await readUpTo(response.body, snapshotBytes);
    const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
    return ok(await readUpTo(stream, snapshotUnpackedBytes));
  } catch {
    return { ok: false, error: { code: 'unreadable', facts: {}, retryAfterMs: null } };
  }
}

/** All bytes of a stream; one that goes on beyond the limit is broken off there, since a few bytes can unpack to any number. */
export async function readUpTo(
  stream: ReadableStream<Uint8Array> | null,
  most: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  const reader = stream?.getReader();
  for (let next = await reader?.read(); next && !next.done; next = await reader?.read()) {
    size += next.value.length;
    if (size > most) {
      await reader?.cancel();
      throw new RangeError(`Cannot read a stream as it must end within ${most} bytes: it goes on`);
    }
    chunks.push(next.value as Uint8Array<ArrayBuffer>); // never shared memory
  }
  return new Uint8Array(await new Blob(chunks).arrayBuffer());
}
