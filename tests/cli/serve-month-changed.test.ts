// Texts lie in a month's file, and the store was changed where it says where: that is told as a change of the store, by a backup and by whoever reads, and
// never as a file that is away. On both stores.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { Kysely, SqliteDialect, sql } from 'kysely';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { MonthAway, PlaceChanged } from '../../src/server/stores/month-store.ts';
import { readPlaceInFile } from '../../src/server/stores/packed.ts';
import { openPostgresDatabase } from '../../src/server/stores/postgres/open.ts';
import { openDatabase } from '../../src/server/stores/sqlite/open.ts';
import type { Tables } from '../../src/server/stores/tables.ts';
import { startPostgres, type TestPostgres } from '../contract/databases.ts';
import { newOldPlant, type OldPlant, textsOf } from './old-months.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

describe.each(['sqlite', 'postgres'] as const)('a store on %s whose texts left', (kind) => {
  let plant: OldPlant;
  let before: readonly string[];
  beforeEach(async () => {
    plant = await newOldPlant(kind, postgres);
    before = await plant.inside(textsOf);
    expect((await plant.act('month', plant.files, '--month', '2026-03')).code).toBe(0);
    expect((await plant.act('month-out', '2026-03')).code).toBe(0);
  });
  afterEach(() => plant.remove());

  /** Works on the tables, as somebody does who has the database. */
  async function within<T>(work: (db: Kysely<Tables>) => Promise<T>): Promise<T> {
    const db =
      plant.database === null
        ? new Kysely<Tables>({
            dialect: new SqliteDialect({ database: openDatabase(join(plant.data, 'log.sqlite')) }),
          })
        : openPostgresDatabase(plant.database);
    try {
      return await work(db);
    } finally {
      await db.destroy();
    }
  }

  const placed = () =>
    within((db) =>
      db
        .selectFrom('entries')
        .select(['pos', 'body'])
        .where('body', 'like', '@%')
        .orderBy('pos')
        .limit(2)
        .execute(),
    );
  const putBody = (pos: number, body: string) =>
    within((db) => db.updateTable('entries').set({ body }).where('pos', '=', pos).execute());

  /** Everybody hears of a change of the store. */
  async function isTold(words: string) {
    expect(await faultOf(plant.inside(textsOf))).toBeInstanceOf(PlaceChanged);
    const made = await plant.act('backup', join(plant.files, 'backup.sqlite'));
    expect([made.code, made.err]).toEqual([2, expect.stringContaining('is no whole log')]);
    expect(made.err).toContain(words);
  }

  it('is found changed where two places were swapped', async () => {
    const [one, other] = await placed();
    if (!one || !other) throw new Error('too few texts left');
    await putBody(one.pos, other.body);
    await putBody(other.pos, one.body);
    await isTold('has another text where the store says that');
    const back = await plant.act('month-in', '2026-03');
    expect([back.code, back.err]).toEqual([2, expect.stringContaining('has another text where')]);
    await putBody(one.pos, one.body);
    await putBody(other.pos, other.body);
    expect(await plant.inside(textsOf)).toEqual(before);
  });

  it('is found changed where a row names a line that is not there', async () => {
    const [one] = await placed();
    if (!one) throw new Error('no text left');
    await putBody(one.pos, '@0 999999');
    await isTold('has another text where the store says that');
  });

  it('is found changed where a piece is named that the month has not', async () => {
    const [one] = await placed();
    await putBody(one?.pos ?? 0, '@9999 0');
    await isTold('the file of 2026-03 has no piece 9999');
  });

  it('is found changed where its month is not known any more', async () => {
    await within((db) => db.deleteFrom('month_files').execute());
    await isTold('no month of the store holds');
  });

  it('is led to no file outside the folder', async () => {
    const file = '../months/reelward-2026-03.ndjson.gz';
    await within((db) => db.updateTable('month_files').set({ file }).execute());
    await isTold('whose name is none of this program');
    expect(await plant.inside((store) => store.monthFaults())).toEqual([expect.any(PlaceChanged)]);
  });

  it('reads a piece again that held another text, once the file is right', async () => {
    const [month] = await plant.inside((store) => store.monthsLeft());
    const [one] = await placed();
    const place = readPlaceInFile(one?.body ?? '');
    if (!month || !place) throw new Error('no text left');
    const [from, to] = [month.pieces[place.piece] ?? 0, month.pieces[place.piece + 1]];
    const good = readFileSync(plant.file('2026-03'));
    const other = Buffer.from(good);
    samePiece(good.subarray(from, to ?? good.length), place.line).copy(other, from);
    await plant.inside(async (store) => {
      writeFileSync(plant.file('2026-03'), other);
      expect(await faultOf(textsOf(store))).toBeInstanceOf(MonthAway);
      expect(await store.monthFaults()).toEqual([]);
      expect(await store.monthFaults('whole')).toEqual([expect.any(MonthAway)]);
      writeFileSync(plant.file('2026-03'), good);
      expect(await store.monthFaults('whole')).toEqual([]);
      expect(await textsOf(store)).toEqual(before);
    });
  });

  it('quarantines a signature that is none with the text out of the file', async () => {
    const [one] = await placed();
    if (!one) throw new Error('no text left');
    const sig = 'x'.repeat(128);
    await within(async (db) => {
      await db.updateTable('entries').set({ sig }).where('pos', '=', one.pos).execute();
      await sql`delete from meta where key = 'signature_forms_to'`.execute(db);
    });
    const set = await plant.inside(async (store) => {
      await store.quarantineSignatures(Date.now());
      return store.quarantined();
    });
    const { sig: _, ...entry } = JSON.parse(before[one.pos - 1] ?? '{}');
    expect(set.map(({ text }) => JSON.parse(text))).toEqual([{ ...entry, sig }]);
  });
});

/** What a reading failed with; null where it did not. */
function faultOf(reading: Promise<unknown>): Promise<unknown> {
  return reading.then(
    () => null,
    (error: unknown) => error,
  );
}

/** A piece of the same length in which the text of one line is another. */
function samePiece(piece: Buffer, line: number): Buffer {
  const lines = gunzipSync(piece).toString().split('\n');
  const text = lines[line] ?? '';
  const from = text.indexOf('"prev":"') + 8;
  for (let at = from; at < from + 64; at += 1)
    for (const sign of '0123456789abcdef') {
      if (text[at] === sign) continue;
      const other = text.slice(0, at) + sign + text.slice(at + 1);
      const made = gzipSync([...lines.slice(0, line), other, ...lines.slice(line + 1)].join('\n'));
      if (made.length === piece.length) return made;
    }
  throw new Error('no such piece');
}
