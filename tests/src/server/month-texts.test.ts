// What reading texts out of months' files costs: no row behind the first that cannot be read, and no file read whole that nobody asked of.

import { createHash } from 'node:crypto';
import type * as fs from 'node:fs';
import { createReadStream, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { type LeftMonth, MonthAway, PlaceChanged } from '../../../src/server/stores/month-store.ts';
import { createMonthTexts, type TextRow } from '../../../src/server/stores/month-texts.ts';
import { placeInFile } from '../../../src/server/stores/packed.ts';
import { newFolder } from '../../contract/databases.ts';
import { makeChain, toChecked } from '../../contract/entries.ts';

vi.mock('node:fs', async (load) => {
  const real = await load<typeof fs>();
  return { ...real, createReadStream: vi.fn(real.createReadStream) };
});

const [MARCH, APRIL, MAY] = ['2026-03', '2026-04', '2026-05'] as const;
const chain = makeChain({ tablet: 't1', count: 3 });
let folder: ReturnType<typeof newFolder>;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => folder.remove());

/** A month of the one entry at that place of the log, from 1. Its file is there but in May. */
function monthAt(month: string, pos: number): LeftMonth {
  const packed = gzipSync(`${JSON.stringify(chain[pos - 1])}\n`);
  const file = `reelward-${month}.ndjson.gz`;
  if (month !== MAY) writeFileSync(join(folder.path, file), packed);
  const sha256 = createHash('sha256').update(packed).digest('hex');
  const [afterPos, untilPos, bytes] = [pos - 1, pos, packed.length];
  return { month, afterPos, untilPos, file, bytes, sha256, pieces: [0], texts: 1, leftMs: 0 };
}

function checkedAt(pos: number) {
  const [entry] = chain.slice(pos - 1);
  if (!entry) throw new Error('no such entry');
  return toChecked(entry);
}

/** The row of an entry whose text lies in that line of its month's file. */
function rowAt(pos: number, line = 0): TextRow {
  const { hlc, atMs, tablet, epoch, seq, kind, hash } = checkedAt(pos);
  const body = placeInFile({ piece: 0, line });
  return { pos, tablet, epoch, seq, kind, hlc_ms: hlc.ms, hlc_n: hlc.n, at_ms: atMs, hash, body };
}

function opened() {
  const left = [monthAt(MARCH, 1), monthAt(APRIL, 2), monthAt(MAY, 3)];
  const months = vi.fn(async () => left);
  vi.mocked(createReadStream).mockClear();
  const readWhole = () => vi.mocked(createReadStream).mock.calls.map(([file]) => basename(String(file)));
  return { texts: createMonthTexts(folder.path, months), months, readWhole };
}

it('reads no row behind the first whose text cannot be read', async () => {
  const { texts, months } = opened();
  await expect(texts.fill([rowAt(1), rowAt(2)])).resolves.toEqual(
    [1, 2].map((pos) => ({ ...rowAt(pos), body: checkedAt(pos).body })),
  );
  months.mockClear();
  const nowhere = [7, 8, 9].map((pos) => ({ ...rowAt(1), pos }));
  await expect(texts.fill(nowhere)).rejects.toBeInstanceOf(PlaceChanged);
  expect(months).toHaveBeenCalledTimes(1);
  expect(await texts.read(nowhere)).toEqual(nowhere.map(() => expect.any(PlaceChanged)));
});

it('holds what it knows of a file while another is away', async () => {
  const { texts, readWhole } = opened();
  const read = () => texts.read([rowAt(1, 9), rowAt(3)]);
  const faults = [expect.any(PlaceChanged), expect.any(MonthAway)];
  expect(await read()).toEqual(faults);
  expect(await read()).toEqual(faults);
  expect(readWhole()).toEqual(['reelward-2026-03.ndjson.gz']);
});

it('reads whole no file of a month that nobody asked of', async () => {
  const { texts, readWhole } = opened();
  expect(await texts.faults('whole', new Set([APRIL]))).toEqual([]);
  expect(await texts.faults('whole', new Set([MAY]))).toEqual([expect.any(MonthAway)]);
  expect(readWhole()).toEqual(['reelward-2026-04.ndjson.gz']);
});
