// The demo over HTTP: the marked page, the plant's log, labels, the shift as it goes on, and that the real server keeps it all.

import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findFreePort, type RunningDemo, startDemo } from '../../demo/serve.ts';
import { lineId } from '../../demo/setups.ts';
import { applyAll } from '../../shared/floor/fold.ts';
import { setupProgress } from '../../shared/floor/progress.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { verifyChains } from '../../shared/log/chain.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { entrySchema } from '../../shared/log/entry-schema.ts';
import { plantPeople } from '../../src/server/people/fold.ts';

const openedMs = Date.UTC(2026, 4, 6, 9, 15);
let wallMs = openedMs;
let appRoot = '';
let demo: RunningDemo;

const settings = () => ({
  folder: '',
  database: null,
  host: '127.0.0.1',
  port: 0,
  plant: 'Brae Works',
  appRoot,
  clock: { nowMs: () => wallMs },
  people: plantPeople,
  logLevel: 'silent',
  https: null,
});

beforeAll(async () => {
  appRoot = await mkdtemp(join(tmpdir(), 'reelward-app-'));
  await writeFile(join(appRoot, 'index.html'), '<!doctype html><html><head></head><body>page</body></html>');
  await writeFile(join(appRoot, 'other.txt'), 'file');
  demo = await startDemo(
    { ...settings(), logLevel: 'silent' },
    { seed: 3, speed: 60, zone: 'Europe/London' },
  );
});

afterAll(async () => {
  await demo?.stop();
  await rm(appRoot, { recursive: true, force: true });
});

async function get(path: string): Promise<Response> {
  return fetch(`${demo.server.url}${path}`);
}

async function readLog(): Promise<Entry[]> {
  const text = await (await get('/demo/log.ndjson')).text();
  return text
    .trimEnd()
    .split('\n')
    .map((line) => entrySchema.parse(JSON.parse(line)));
}

/** Reads events off a stream until so many entries have come. */
async function readLive(path: string, wanted: number): Promise<{ entries: Entry[]; lastId: number }> {
  const stop = new AbortController();
  const answer = await fetch(`${demo.server.url}${path}`, { signal: stop.signal });
  expect(answer.headers.get('content-type')).toContain('text/event-stream');
  const entries: Entry[] = [];
  let lastId = 0;
  let text = '';
  for await (const piece of answer.body ?? []) {
    text += new TextDecoder().decode(piece);
    const events = text.split('\n\n');
    text = events.pop() ?? '';
    for (const event of events) {
      const id = /^id: (\d+)$/m.exec(event)?.[1];
      const data = /^data: (.*)$/m.exec(event)?.[1];
      if (id === undefined || data === undefined) continue;
      lastId = Number(id);
      entries.push(...(JSON.parse(data) as unknown[]).map((one) => entrySchema.parse(one)));
    }
    if (entries.length >= wanted) break;
  }
  stop.abort();
  return { entries, lastId };
}

describe('the served demo', () => {
  test('marks the page, whatever its path, and serves other files as they are', async () => {
    for (const path of ['/', '/index.html', '/?a=b']) {
      const answer = await get(path);
      expect(await answer.text(), path).toContain('<meta name="reelward-demo"');
      expect(answer.headers.get('content-security-policy')).toContain("default-src 'self'");
      expect(answer.headers.get('cache-control')).toBe('no-store');
    }
    expect(await (await get('/other.txt')).text()).toBe('file');
  });

  test('hands out the log up to now: a line under way with all but the variant’s slots loaded', async () => {
    const log = await readLog();
    expect(verifyChains(log).ok).toBe(true);
    expect(Math.max(...log.map((entry) => entry.hlc.ms))).toBeLessThanOrEqual(wallMs);
    const state = applyAll(emptyState(), log);
    const progress = setupProgress(state, lineId);
    expect(progress.verified).toBe(147);
    expect(
      progress.slots.filter((slot) => slot.phase === 'missing').map((slot) => slot.wanted.perPanel),
    ).toEqual([0, 0, 0]);
    const run = state.runs.get(state.current.get(lineId) ?? '');
    expect(run?.phase).toBe('running');
    expect(run?.done).toBeGreaterThan(200);
    expect(run?.done).toBeLessThan(run?.panelsWanted ?? 0);
    expect(state.holds.size + state.conflicts.size).toBe(0);
  });

  test('the server itself keeps the same entries and knows the people', async () => {
    const log = await readLog();
    const stored = await demo.server.store.page(0, 5_000);
    expect(stored.map((entry) => JSON.parse(entry.text).hash).sort()).toEqual(
      log.map((entry) => entry.hash).sort(),
    );
    expect(await demo.server.store.quarantined()).toEqual([]);
  });

  test('hands out practice labels in the shape that the page takes, and no more', async () => {
    const labels: unknown = await (await get('/demo/labels.json')).json();
    expect(Array.isArray(labels)).toBe(true);
    for (const label of labels as Record<string, unknown>[]) {
      expect(Object.keys(label).sort()).toEqual(['codes', 'group', 'hint', 'id', 'title']);
    }
  });

  test('serves a sheet to print, its looks in a file of their own', async () => {
    const answer = await get('/demo/labels');
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('<svg ');
    expect((await get('/demo/labels.css')).headers.get('content-type')).toContain('text/css');
  });

  test('says which time it is in the plant', async () => {
    expect(await (await get('/demo/state.json')).json()).toEqual({ live: true, speed: 60, openedMs });
  });

  test('goes on sixty times as fast as the clock, every entry once, and keeps what it told', async () => {
    const before = await readLog();
    const reading = readLive(`/demo/live?after=${before.length}`, 10);
    // Thirty seconds of the clock are half an hour of the plant: about sixty panels, however long the line stood.
    wallMs += 30_000;
    const { entries, lastId } = await reading;
    expect(entries.length).toBeGreaterThanOrEqual(10);
    expect(lastId).toBe(before.length + entries.length);
    expect(verifyChains([...before, ...entries]).ok).toBe(true);
    const after = await readLog();
    expect(after).toEqual([...before, ...entries]);
    expect((await demo.server.store.head()).pos).toBe(after.length);
    const untilMs = openedMs + (wallMs - openedMs) * 60;
    expect(Math.max(...after.map((entry) => entry.hlc.ms))).toBeLessThanOrEqual(untilMs);
  });
});

describe('startDemo()', () => {
  test('without a speed tells the shift at the clock’s pace when asked, and has no live stream', async () => {
    const still = await startDemo(
      { ...settings(), logLevel: 'silent' },
      { seed: 3, speed: null, zone: 'UTC' },
    );
    try {
      expect(await (await fetch(`${still.server.url}/demo/state.json`)).json()).toMatchObject({
        live: false,
        speed: 1,
      });
      expect((await fetch(`${still.server.url}/demo/live`)).status).toBe(404);
      const lines = async () =>
        (await (await fetch(`${still.server.url}/demo/log.ndjson`)).text()).split('\n').length;
      const before = await lines();
      wallMs += 1_800_000;
      expect((await lines()) - before).toBeGreaterThan(30);
    } finally {
      await still.stop();
    }
  });

  test('takes its folder with it when it stops, also with a live stream open', async () => {
    const short = await startDemo({ ...settings(), logLevel: 'silent' }, { seed: 3, speed: 1, zone: 'UTC' });
    const { folder } = short.server.context.settings;
    expect(existsSync(folder)).toBe(true);
    const answer = await fetch(`${short.server.url}/demo/live?after=0`);
    const reading = answer.text();
    await short.stop();
    await reading;
    expect(existsSync(folder)).toBe(false);
  });
});

describe('findFreePort()', () => {
  test('passes over a port that is taken, and says where none is free', async () => {
    const taken = createServer();
    await new Promise<void>((resolve) => taken.listen(0, '127.0.0.1', resolve));
    const address = taken.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    try {
      expect(await findFreePort(port, '127.0.0.1', 1)).toBeNull();
      expect(await findFreePort(port, '127.0.0.1', 20)).toBeGreaterThan(port);
    } finally {
      await new Promise((resolve) => taken.close(resolve));
    }
  });
});
