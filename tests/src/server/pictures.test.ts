// Pictures of labels over the wire: a tablet lays them under its own verdicts, the plant's tablets read them, nobody else does either.

import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { DAY_MS } from '../../../shared/kit/moment.ts';
import type { PictureToSend } from '../../../src/app/sync/ports.ts';
import type { TestTablet } from './tablets.ts';
import { usePlant } from './use-plant.ts';

/** Bytes that begin as a JPEG does (ITU-T T.81). */
const jpeg = (size: number, fill = 7) =>
  new Uint8Array(size).fill(fill).map((byte, at) => [0xff, 0xd8, 0xff][at] ?? byte);
const shaOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const put = (tablet: TestTablet, of: string, bytes: Uint8Array, days: string | number = 30) =>
  tablet.caller.open(`/api/picture?of=${encodeURIComponent(of)}&days=${days}`, { method: 'PUT', bytes });
const get = (tablet: TestTablet, of: string) =>
  tablet.caller.open(`/api/picture?of=${encodeURIComponent(of)}`);

const plant = usePlant();

describe('`/api/picture`', () => {
  it('keeps a picture under its hash and tells it to any tablet', async () => {
    const [front, rear] = [await plant.join('front'), await plant.join('rear')];
    const of = `${front.key.tablet}/e1/7`;
    expect((await put(front, of, jpeg(24_000))).ok).toBe(true);
    const got = await get(rear, of);
    expect(got.ok && got.value.headers.get('reelward-sha256')).toBe(shaOf(jpeg(24_000)));
    expect(got.ok && new Uint8Array(await got.value.arrayBuffer())).toEqual(jpeg(24_000));
    expect(await get(rear, `${front.key.tablet}/e1/8`)).toMatchObject({
      ok: false,
      error: { code: 'not-found' },
    });
  });

  it('keeps the first one where another is sent under the same hash, and drops it when its days are over', async () => {
    const front = await plant.join('front');
    const of = `${front.key.tablet}/e1/7`;
    await put(front, of, jpeg(100), 2);
    await put(front, of, jpeg(100), 3000);
    const { store, context } = plant.server.running;
    await store.sweep(context.nowMs() + 1 * 86_400_000);
    expect((await get(front, of)).ok).toBe(true);
    await store.sweep(context.nowMs() + 3 * 86_400_000);
    expect((await get(front, of)).ok).toBe(false);
  });

  it.each([
    ['another tablet’s verdict', (own: string) => `x${own}/e1/7`, jpeg(100), 30, 'bad-query'],
    ['no entry', () => 'all', jpeg(100), 30, 'bad-query'],
    ['no days', (own: string) => `${own}/e1/7`, jpeg(100), 'ever', 'bad-query'],
    ['too many days', (own: string) => `${own}/e1/7`, jpeg(100), 3651, 'bad-query'],
    ['no JPEG', (own: string) => `${own}/e1/7`, new Uint8Array(100), 30, 'bad-body'],
    ['too many bytes', (own: string) => `${own}/e1/7`, jpeg(25_001), 30, 'body-too-large'],
  ] as const)('refuses %s', async (_, of, bytes, days, code) => {
    const front = await plant.join('front');
    expect(await put(front, of(front.key.tablet), bytes, days)).toMatchObject({ ok: false, error: { code } });
  });

  it('says nothing to who is no tablet', async () => {
    for (const method of ['GET', 'PUT']) {
      const answer = await fetch(`${plant.server.running.url}/api/picture?of=t/e/1&days=3`, { method });
      expect(answer.status).toBeGreaterThanOrEqual(400);
    }
  });
});

describe('a tablet that is connected', () => {
  it('sends its pictures when there is time, each once, and goes on past one that is refused', async () => {
    const front = await plant.join('front');
    const pictures = Array.from({ length: 8 }, (_, at): PictureToSend => {
      const bytes = at === 3 ? new Uint8Array(10) : jpeg(200, at);
      return {
        sha256: shaOf(bytes),
        of: `${front.key.tablet}/e1/${at + 1}`,
        untilMs: Date.now() + 30 * DAY_MS,
        bytes,
      };
    });
    const sent: string[] = [];
    Object.assign(front.log, {
      pictures: {
        waiting: async (_: string, most: number) =>
          pictures.filter(({ sha256 }) => !sent.includes(sha256)).slice(0, most),
        sent: async (sha256: string) => void sent.push(sha256),
      },
    });
    front.start();
    await expect.poll(() => sent.length, { timeout: 20_000 }).toBe(8);
    const kept = await Promise.all(pictures.map(async ({ of }) => (await get(front, of)).ok));
    expect(kept).toEqual(pictures.map((_, at) => at !== 3));
    expect(new Set(sent).size).toBe(8);
  });

  it('says how long each is still to be kept, however late it comes, and sends none whose days are over', async () => {
    const front = await plant.join('front');
    const pictures = [0.5, 2.2, -1].map((days, at): PictureToSend => {
      const bytes = jpeg(200, 40 + at);
      const untilMs = Date.now() + days * DAY_MS;
      return { sha256: shaOf(bytes), of: `${front.key.tablet}/e1/${at + 1}`, untilMs, bytes };
    });
    const sent: string[] = [];
    Object.assign(front.log, {
      pictures: {
        waiting: async () => pictures.filter(({ sha256 }) => !sent.includes(sha256)),
        sent: async (sha256: string) => void sent.push(sha256),
      },
    });
    front.start();
    await expect.poll(() => sent.length, { timeout: 20_000 }).toBe(3);
    await front.stop();
    expect((await Promise.all(pictures.map(({ of }) => get(front, of)))).map(({ ok }) => ok)).toEqual([
      true,
      true,
      false,
    ]);
    const { store } = plant.server.running;
    await store.sweep(Date.now() + 1.5 * DAY_MS);
    expect((await get(front, pictures[0]?.of ?? '')).ok).toBe(false);
    expect((await get(front, pictures[1]?.of ?? '')).ok).toBe(true);
    await store.sweep(Date.now() + 3.5 * DAY_MS);
    expect((await get(front, pictures[1]?.of ?? '')).ok).toBe(false);
  });
});
