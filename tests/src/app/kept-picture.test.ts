// The picture of a verdict is the one that the log has, whatever the server hands over.

import { describe, expect, test } from 'vitest';
import { keptPicture } from '../../../src/app/kept-picture.ts';
import { shaOf } from '../../../src/app/store/pictures.ts';

const bytesOf = (value: number) => new Uint8Array(300).fill(value).buffer;
const kept = bytesOf(1);
const of = 'line-front/e1/7';

/** A tablet whose log has, after the verdict, a count and then the picture's entry; its server hands over `served`. */
async function tablet(served: ArrayBuffer | null) {
  const sha256 = await shaOf(kept);
  const log = [
    { kind: 'run.counted', payload: {} },
    { kind: 'picture.kept', payload: { of: 'line-front/e1/6', sha256: '00'.repeat(32) } },
    { kind: 'picture.kept', payload: { of, sha256 } },
  ];
  const asked: string[] = [];
  const caller = {
    open: (path: string) => {
      asked.push(path);
      return Promise.resolve(served ? { ok: true, value: new Response(served) } : { ok: false });
    },
  };
  const app = {
    connection: { value: { caller: () => Promise.resolve(caller) } },
    store: {
      entry: ([name, epoch, seq]: readonly [string, string, number]) =>
        Promise.resolve((name === 'line-front' && epoch === 'e1' && log[seq - 8]) || null),
    },
  } as unknown as Parameters<typeof keptPicture>[0]; // what the look-up asks of them
  return { app, asked, sha256 };
}

const none = { bySha: () => Promise.resolve(null) };

describe('the picture of a verdict', () => {
  test('comes from this tablet where it lies here', async () => {
    const { app, asked, sha256 } = await tablet(null);
    const own = { bySha: (asks: string) => Promise.resolve(asks === sha256 ? { bytes: kept } : null) };
    expect(await keptPicture(app, own, { of, sha256: null })).toBe(kept);
    expect(asked).toEqual([]);
  });

  test('comes from the server else, by the hash that the log has', async () => {
    const { app } = await tablet(kept);
    expect(await keptPicture(app, none, { of, sha256: null })).toEqual(kept);
  });

  test('is another one’s nowhere: what a server lays in its place is not shown', async () => {
    const { app, sha256 } = await tablet(bytesOf(2));
    expect(await keptPicture(app, none, { of, sha256: null })).toBe('broken');
    expect(await keptPicture(app, none, { of, sha256 })).toBe('broken');
  });

  test('is none where the log tells of none, and the server is not asked', async () => {
    const { app, asked } = await tablet(kept);
    expect(await keptPicture(app, none, { of: 'line-front/e1/9', sha256: null })).toBe('none');
    expect(await keptPicture(app, none, { of: 'line-rear/e1/7', sha256: null })).toBe('none');
    expect(asked).toEqual([]);
  });

  test('is none where nobody has it', async () => {
    const { app } = await tablet(null);
    expect(await keptPicture(app, none, { of, sha256: null })).toBe('none');
  });
});
