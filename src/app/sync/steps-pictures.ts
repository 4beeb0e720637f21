// Pictures of labels go to the server when there is time: after the log, a few at once, and a failure is asked about again later.

import { DAY_MS } from '../../../shared/kit/moment.ts';
import type { SyncContext } from './context.ts';
import type { CallFailure } from './http.ts';

/** So many in one go: what is written meanwhile goes before the next ones. */
const AT_ONCE = 5;

/** Sends some that the server does not have; `done` where there are no more. */
export async function sendPictures(context: SyncContext): Promise<CallFailure | 'done' | null> {
  const { caller, log, memory, world } = context;
  const { pictures } = log;
  if (!pictures || memory.serverEpoch === null) return 'done';
  const waiting = await pictures.waiting(memory.serverEpoch, AT_ONCE);
  for (const { sha256, of, untilMs, bytes } of waiting) {
    const leftMs = untilMs - world.nowMs() - caller.clockOffMs();
    // Its days are over: it only waits to be thrown away.
    if (leftMs <= 0) {
      await pictures.sent(sha256, memory.serverEpoch);
      continue;
    }
    const days = Math.ceil(leftMs / DAY_MS);
    const path = `/api/picture?of=${encodeURIComponent(of)}&days=${days}`;
    const sent = await caller.open(path, { method: 'PUT', bytes });
    // What the server will never have must not keep the next ones back; an older one that has no such route is asked again later.
    if (!sent.ok && !isFinal(sent.error)) return sent.error;
    await pictures.sent(sha256, memory.serverEpoch);
  }
  return waiting.length < AT_ONCE ? 'done' : null;
}

function isFinal({ code }: CallFailure): boolean {
  return code === 'bad-body' || code === 'bad-query' || code === 'body-too-large';
}
