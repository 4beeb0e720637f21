// Somebody else's tablet at the plant's real server, without a screen: it joins by a code, tells what it is given and goes away again.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { EntryKind, PayloadOf } from '../../../shared/floor/kinds.ts';
import { sleep } from '../../../src/app/sync/backoff.ts';
import { newNonce, openIdentity } from '../../../src/link/identity.ts';
import { pushForGood } from '../../../src/link/push.ts';
import { openSpool } from '../../../src/link/spool.ts';
import type { Story } from '../../shared/floor/story.ts';
import { until } from '../../src/server/tablets.ts';
import type { PlantServer } from './serve.ts';

/** Brings a story's entries to the server; resolves when it holds them all. `wallMs`: its clock while it tells, ms since 1970; absent: this computer's. */
export async function tellAt(
  server: PlantServer,
  story: (tell: Story['tell']) => void,
  wallMs: () => number = Date.now,
): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'reelward-colleague-'));
  const identity = openIdentity(folder);
  const spool = openSpool(folder, identity, wallMs, false);
  const ending = new AbortController();
  await spool.write('tablet.opened', {
    name: 'Line 1 front',
    app: '0.1.0',
    key: identity.jwk,
    previous: null,
  });
  const writing: Promise<unknown>[] = [];
  const tell = (kind: EntryKind, payload: PayloadOf<EntryKind>) => {
    if (kind !== 'tablet.opened') writing.push(spool.write(kind, payload));
  };
  story(tell as unknown as Story['tell']); // what it returns is not looked at
  await Promise.all(writing);
  const world = {
    origin: server.url.replace(/\/$/, ''),
    fetch: (...args: Parameters<typeof fetch>) => fetch(...args),
    nowMs: () => Date.now(),
    chance: () => Math.random(),
    sleep,
    nonce: newNonce,
  };
  const parts = { spool, identity, world, name: 'Line 1 front', say: () => undefined, signal: ending.signal };
  const pushing = pushForGood({ ...parts, code: await server.newCode() });
  await Promise.race([pushing, until('the server to hold the story', () => spool.backlog() === 0)]);
  ending.abort();
  await pushing;
  await spool.close();
  await rm(folder, { recursive: true, force: true });
}
