// Four weeks without a server: all that a station counted is kept in the link's folder, brought when the server is there, and is exact.

import { readdirSync } from 'node:fs';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { startLink } from '../../../src/link/link.ts';
import { makeCode } from '../../../src/server/codes.ts';
import { readThrough } from '../../../src/server/stores/read-through.ts';
import { newFolder } from '../../contract/databases.ts';
import { startTestServer, type TestServer, until } from '../server/tablets.ts';
import { playAway } from './away.ts';

const DAYS = 28;
let folder: ReturnType<typeof newFolder>;
let server: TestServer;
beforeEach(async () => {
  folder = newFolder();
  server = await startTestServer();
});
afterEach(async () => {
  await server.stop();
  folder.remove();
});

test('a link brings four weeks when its server is back, each entry once, and counts on from there', async () => {
  const startMs = Date.now() - DAYS * 86_400_000;
  const { panels, entries, tablet } = await playAway({
    folder: folder.path,
    days: DAYS,
    panelSeconds: 1_800,
    startMs,
  });
  expect(panels).toBe(DAYS * 48 - 1);
  // Two minutes from one word to the next at most, so that tablets know that the station is there.
  expect(entries).toBeGreaterThanOrEqual(DAYS * 720);
  expect(readdirSync(folder.path).filter((name) => name.startsWith('log-')).length).toBeGreaterThan(10);

  const station = { station: 'exit', line: 'L1', machine: null, at: 'out' as const };
  const { code } = await makeCode(server.running.store, Date.now());
  const link = await startLink(
    {
      server: server.running.url,
      code,
      data: folder.path,
      stations: [
        { ...station, source: { kind: 'counter', listen: '127.0.0.1:0', secret: 'a secret of the exit' } },
      ],
    },
    { version: '1', say: () => undefined },
  );
  try {
    const { store } = server.running;
    // What was kept, and that the station is known again.
    await until('all of it', async () => (await store.head()).pos >= entries + 1);
    const sent = await fetch(`http://${link.listens[0]?.at}/api/stations/exit/count`, {
      method: 'POST',
      headers: { authorization: 'Bearer a secret of the exit' },
      body: JSON.stringify({ boot: 'b7f3a91c2', total: panels + 1 }),
    });
    expect(await sent.json()).toEqual({ boot: 'b7f3a91c2', total: panels + 1 });
    await until('the next panel', async () => (await store.head()).pos >= entries + 2);
    const [mark] = await store.heads();
    expect(mark).toMatchObject({ tablet, seq: (await store.head()).pos });
    const faults: string[] = [];
    await readThrough(store, (fault, where) => faults.push(`${fault} ${where}`));
    expect(faults).toEqual([]);
    const totals: number[] = [];
    for (let pos = 0; ; ) {
      const rows = await store.page(pos, 2_000);
      if (rows.length === 0) break;
      for (const row of rows) {
        const { kind, payload } = JSON.parse(row.text) as Entry;
        if (kind === 'station.counted') totals.push(Number(payload['total']));
        pos = row.pos;
      }
    }
    // Each panel is told once and in its order, and none twice or never.
    expect([...new Set(totals)]).toEqual(Array.from({ length: panels + 2 }, (_, total) => total));
  } finally {
    await link.stop();
  }
}, 120_000);
