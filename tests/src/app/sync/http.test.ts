// A call ends when it is told to, whatever the runtime does with a body that was cut off.

import { expect, it } from 'vitest';
import * as z from 'zod/mini';
import { createCaller } from '../../../../src/app/sync/http.ts';
import type { SyncKey, SyncWorld } from '../../../../src/app/sync/ports.ts';

const key: SyncKey = { tablet: 'bench-1', publicKey: 'unused', sign: async () => 'unused' };

/** A server whose headers arrive and whose body never does, not even as an error. */
function silentBody(onHeaders: () => void): SyncWorld {
  return {
    origin: 'https://plant.test',
    fetch: async () => {
      queueMicrotask(onHeaders);
      return new Response(new ReadableStream({ start: () => undefined }));
    },
    nowMs: () => 0,
    chance: () => 0,
    sleep: async () => undefined,
    nonce: () => 'n',
  };
}

it('ends a call whose answer stops after its headers when it is told to end', async () => {
  const stop = new AbortController();
  const world = silentBody(() => setTimeout(() => stop.abort()));
  const caller = createCaller(world, key, { signal: stop.signal });
  expect(await caller.call('/api/pull', z.object({}))).toEqual({
    ok: false,
    error: { code: 'unreadable', facts: {}, retryAfterMs: null },
  });
});

it('ends a call whose answer stops after its headers when its time is over', async () => {
  const caller = createCaller(
    silentBody(() => undefined),
    key,
  );
  expect(await caller.call('/api/pull', z.object({}), { timeoutMs: 5 })).toMatchObject({ ok: false });
});
