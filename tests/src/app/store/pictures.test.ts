// Pictures of labels on the tablet: each under its hash, for their days, in their room.

import './browser.ts';
import { createHash } from 'node:crypto';
import { unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { exportPictures } from '../../../../src/app/screens/log/export-pictures.ts';
import { openPictures } from '../../../../src/app/store/pictures.ts';

const DAY_MS = 86_400_000;
const startMs = 1_772_431_200_000;
const bytesOf = (size: number, fill: number) => new Uint8Array(size).fill(fill).buffer;
const shaOf = (bytes: ArrayBuffer) => createHash('sha256').update(new Uint8Array(bytes)).digest('hex');
const room = { days: 2, megabytes: 1 };
let opened = 0;
const open = () => {
  opened += 1;
  return openPictures(`pictures-${opened}`);
};

describe('pictures of labels', () => {
  test('are found by their hash', async () => {
    const pictures = open();
    const bytes = bytesOf(500, 3);
    const sha256 = await pictures.keep({ of: 't/e/7', bytes }, { room, nowMs: startMs });
    expect(sha256).toBe(shaOf(bytes));
    const wanted = { sha256, of: 't/e/7', atMs: startMs, untilMs: startMs + 2 * DAY_MS };
    expect(await pictures.bySha(sha256)).toMatchObject(wanted);
    expect(await pictures.bySha('00')).toBeNull();
  });

  test('go when their days are over', async () => {
    const pictures = open();
    const keep = (fill: number, day: number) =>
      pictures.keep({ of: `t/e/${fill}`, bytes: bytesOf(10, fill) }, { room, nowMs: startMs + day * DAY_MS });
    await keep(1, 0);
    await keep(2, 1);
    await keep(3, 2.5);
    expect((await pictures.since(0)).map(({ of }) => of)).toEqual(['t/e/2', 't/e/3']);
    expect(await pictures.count(startMs + 2 * DAY_MS)).toBe(1);
    await pictures.tidy(startMs + 4 * DAY_MS);
    expect((await pictures.since(0)).map(({ of }) => of)).toEqual(['t/e/3']);
  });

  test('the oldest go first where the room is full', async () => {
    const pictures = open();
    for (const fill of [1, 2, 3])
      await pictures.keep(
        { of: `t/e/${fill}`, bytes: bytesOf(400_000, fill) },
        { room, nowMs: startMs + fill },
      );
    expect((await pictures.since(0)).map(({ of }) => of)).toEqual(['t/e/2', 't/e/3']);
  });

  test('wait for the server until this life of it has them', async () => {
    const pictures = open();
    const sha = await pictures.keep({ of: 't/e/1', bytes: bytesOf(10, 1) }, { room, nowMs: startMs });
    expect((await pictures.waiting('life-1', 5)).map(({ sha256 }) => sha256)).toEqual([sha]);
    await pictures.sent(sha, 'life-1');
    expect(await pictures.waiting('life-1', 5)).toEqual([]);
    expect(await pictures.waiting('life-2', 5)).toHaveLength(1);
  });

  test('are exported as they are, each under its hash', async () => {
    const pictures = open();
    const kept = [1, 2].map((fill) => bytesOf(300, fill));
    for (const [at, bytes] of kept.entries())
      await pictures.keep({ of: `t/e/${at}`, bytes }, { room, nowMs: startMs + at });
    const { blob: archive, rows } = await exportPictures(pictures, startMs + 1);
    const files = unzipSync(new Uint8Array(await archive.arrayBuffer()));
    const [, second = bytesOf(0, 0)] = kept;
    expect(rows).toBe(1);
    expect(Object.keys(files)).toEqual([`${shaOf(second)}.jpg`]);
    expect(Object.values(files)[0]).toEqual(new Uint8Array(second));
  });
});
