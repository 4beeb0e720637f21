// A new tablet starts from another tablet's folded state instead of from a year of entries. The server only keeps the bytes:
// it knows no fold. Trust is the plant's own: snapshots come from enrolled tablets only, and once the history behind one is here
// the tablet folds it itself and compares.

import { ok, type Result } from '../../../shared/kit/result.ts';
import { parseCursor } from '../../../shared/wire/cursor.ts';
import { snapshotBytes } from '../../../shared/wire/limits.ts';
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

/** Gives this tablet's state to the server, for the next new tablet. A failure costs nothing: somebody else will give one. */
export async function giveSnapshot(parts: SnapshotParts & { readonly cursor: string | null }): Promise<void> {
  const port = parts.log.snapshots;
  if (!port || parts.cursor === null) return;
  const plain = await port.make();
  if (!plain) return;
  const bytes = await gzip(plain);
  if (bytes.length > snapshotBytes) return;
  const path = `/api/snapshot?fold=${encodeURIComponent(port.fold)}&after=${parts.cursor}`;
  await parts.caller.open(path, { method: 'PUT', bytes, timeoutMs: TIMEOUT_MS });
}

async function unpack(response: Response): Promise<Result<Uint8Array, CallFailure>> {
  try {
    const packed = new Blob([await response.arrayBuffer()]).stream();
    const stream = packed.pipeThrough(new DecompressionStream('gzip'));
    return ok(new Uint8Array(await new Response(stream).arrayBuffer()));
  } catch {
    return { ok: false, error: { code: 'unreadable', facts: {}, retryAfterMs: null } };
  }
}
