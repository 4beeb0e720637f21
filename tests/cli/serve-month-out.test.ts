// The texts of an old month leave the store for its file: everybody who reads texts gets them as before, each held against its hash, or hears which
// month lies in which file; and they come back. On both stores.

import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { tracePlaces } from '../../shared/trace/ask.ts';
import { traceLog } from '../../shared/trace/stretches.ts';
import { backupMade } from '../../src/server/stores/backup.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { packedMost, readPlaceInFile } from '../../src/server/stores/packed.ts';
import type { Store } from '../../src/server/stores/store.ts';
import { answerPlaces } from '../../src/server/trace/answer.ts';
import { createTraceKeeper } from '../../src/server/trace/keeper.ts';
import { newFolder, startPostgres, type TestPostgres } from '../contract/databases.ts';
import { call } from './call.ts';
import { newOldPlant, type OldPlant, shift, textsOf } from './old-months.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

const whole = traceLog(shift);
const lots = [...new Set(whole.stretches.map(({ lot }) => lot ?? ''))]
  .filter((lot) => lot !== '')
  .slice(0, 4);

/** Lot by lot what the store's own trace answers, folded from where it stands. */
async function traced(store: Store) {
  const nowMs = () => (shift.at(-1)?.hlc.ms ?? 0) + 3 * 3_600_000;
  const faults: Error[] = [];
  const keeper = createTraceKeeper({ store, nowMs, onFault: (error) => faults.push(error) });
  try {
    await keeper.caughtUp();
    const places = [];
    for (const lot of lots) places.push((await answerPlaces({ store, keeper }, { lot })).places);
    expect(faults).toEqual([]);
    return places;
  } finally {
    await keeper.stop();
  }
}

/** An index that cannot be made answers nothing, rather than that material was nowhere. */
async function saysWhatItCannotAnswer(store: Store) {
  const keeper = createTraceKeeper({ store, nowMs: Date.now, onFault: () => undefined });
  try {
    await expect(keeper.caughtUp()).rejects.toThrow('the texts of 2026-03');
    for (const lot of lots)
      await expect(answerPlaces({ store, keeper }, { lot })).rejects.toThrow('the texts of 2026-03');
  } finally {
    await keeper.stop();
  }
}

/** Of everything that reads texts, what it says. */
async function allReads(store: Store) {
  const [texts, ordered, sealed] = [
    await textsOf(store),
    await store.orderedPage(null, 1_000_000, 1_000_000),
    await store.sealedPage(0, 1_000_000),
  ];
  return { texts, ordered: ordered.map(({ text }) => text), sealed, tree: await store.tree() };
}

describe.each(['sqlite', 'postgres'] as const)('texts that leave %s', (kind) => {
  let plant: OldPlant;
  beforeEach(async () => {
    plant = await newOldPlant(kind, postgres);
  });
  afterEach(() => plant.remove());

  async function letLeave(...months: readonly string[]) {
    for (const month of months) {
      expect((await plant.act('month', plant.files, '--month', month)).code).toBe(0);
      const told = await plant.act('month-out', month);
      expect([told.code, told.err]).toEqual([0, expect.stringContaining(`texts of ${month} left the store`)]);
    }
  }

  it('are read out of the file by whoever asks, and come back', async () => {
    const before = await plant.inside(allReads);
    await letLeave('2026-03', '2026-04');
    const left = await plant.inside((store) => store.monthsLeft());
    expect(left.map(({ month }) => month)).toEqual(['2026-03', '2026-04']);
    // Most left; what the server itself reads stayed.
    const march = left[0];
    if (!march) throw new Error('no month');
    expect(march.texts).toBeGreaterThan(100);
    expect(march.texts).toBeLessThan(march.untilPos - march.afterPos);
    expect(await plant.inside(allReads)).toEqual(before);
    const people = (store: Store) => store.ofKinds(['person.added'], 0);
    expect(await plant.inside(people, null)).toEqual(await plant.inside(people));
    expect(await plant.inside((store) => store.longPage(0, 100, packedMost), null)).toEqual(
      await plant.inside((store) => store.longPage(0, 100, packedMost)),
    );
    // Taken in again, an old entry is known by its hash.
    expect(await plant.inside((store) => store.heads(), null)).toHaveLength(
      new Set(shift.map(({ tablet, epoch }) => `${tablet}/${epoch}`)).size,
    );

    const back = await plant.act('month-in', '2026-03');
    expect([back.code, back.err]).toEqual([
      0,
      `${march.texts} texts of 2026-03 are in the store again, each held against its hash\n`,
    ]);
    renameSync(plant.file('2026-03'), join(plant.files, 'away'));
    expect(await plant.inside(allReads)).toEqual(before);
    const again = await plant.act('month-in', '2026-03');
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('no texts of 2026-03 have left')]);
  });

  it('are traced: by an index of before, of a fold that rose, and from nothing', async () => {
    const wanted = lots.map((lot) => tracePlaces(whole, { lot }));
    const before = await plant.inside(traced);
    expect(before.map((places) => places.length)).toEqual(wanted.map((places) => places.length));
    await letLeave('2026-03', '2026-04');
    // The index of before needs no file.
    expect(await plant.inside(traced, null)).toEqual(before);
    const raise = (store: Store) =>
      store.tracePlace().then((from) =>
        store.moveTrace({
          from,
          to: (from ?? '').replace('floor-', 'floor-0'),
          put: [],
          drop: [],
          stretches: [],
          serials: [],
        }),
      );
    expect(await plant.inside(raise)).toBe(true);
    await expect(plant.inside(traced, null)).rejects.toThrow(
      'the texts of 2026-03 left the store, and lie in reelward-2026-03.ndjson.gz: name the folder of that file with --months',
    );
    await plant.inside(saysWhatItCannotAnswer, null);
    expect(await plant.inside(traced)).toEqual(before);
  });

  it('are answered for by the files together, and by a month that is written after them without them', async () => {
    await letLeave('2026-03');
    renameSync(plant.file('2026-03'), join(plant.files, 'away'));
    expect((await plant.act('month', plant.files, '--month', '2026-04')).err).toContain('written to');
    renameSync(join(plant.files, 'away'), plant.file('2026-03'));
    for (const month of ['2026-03', '2026-04']) {
      const checked = await call(['log', 'verify', plant.file(month)]);
      expect([checked.code, checked.err]).toEqual([0, '']);
    }
    const both = await call(['trace', plant.file('2026-03'), plant.file('2026-04'), '--lot', lots[0] ?? '']);
    expect(JSON.parse(both.out).places.length).toBeGreaterThan(0);
    // Any unpacker reads the pieces as one.
    expect(
      gunzipSync(readFileSync(plant.file('2026-03')))
        .toString()
        .split('\n').length,
    ).toBeGreaterThan(100);
  });

  it('are told apart where a byte of the file is another, and nothing else is lost', async () => {
    const before = await plant.inside(allReads);
    await letLeave('2026-03');
    const good = readFileSync(plant.file('2026-03'));
    const lines = gunzipSync(good).toString();
    const changed = lines.replace('"panel', '"pane1');
    expect(changed).not.toBe(lines);
    // Packed less closely: of the same size it would be found only where it is read.
    writeFileSync(plant.file('2026-03'), gzipSync(changed, { level: 1 }));
    const other =
      /the texts of 2026-03 left the store, and reelward-2026-03\.ndjson\.gz in .* is not the file that they left for/;
    expect((await plant.inside((store) => store.monthFaults())).map(({ message }) => message)).toEqual([
      expect.stringMatching(other),
    ]);
    await expect(plant.inside(textsOf)).rejects.toThrow(other);
    // One bit, the size as it was.
    const flipped = Buffer.from(good);
    flipped[40] = (flipped[40] ?? 0) ^ 1;
    writeFileSync(plant.file('2026-03'), flipped);
    await expect(plant.inside(textsOf)).rejects.toThrow(other);
    const refused = await plant.act('month-in', '2026-03');
    expect([refused.code, refused.err]).toEqual([2, expect.stringMatching(other)]);
    expect(refused.err).toMatch(/^reelward serve: the texts of 2026-03/);
    // Newer months are read all the same.
    const until = (await plant.inside((store) => store.monthsLeft()))[0]?.untilPos ?? 0;
    expect(await plant.inside((store) => store.page(until, 10))).toHaveLength(10);
    writeFileSync(plant.file('2026-03'), good);
    expect(await plant.inside(allReads)).toEqual(before);
  });

  it('stay outside a backup, which says so, and are read again where it was put back', async () => {
    const before = await plant.inside(textsOf);
    await letLeave('2026-03');
    const folder = newFolder();
    const file = join(folder.path, 'backup.sqlite');
    const made = await plant.act('backup', file);
    expect([made.code, made.err]).toEqual([
      0,
      `Backed up ${shift.length} entries to ${file} and read them back\nTexts that left the store are not in it; keep copies of their files too: reelward-2026-03.ndjson.gz\n`,
    ]);
    const away = join(plant.files, 'away');
    renameSync(plant.file('2026-03'), away);
    // One that nobody could read whole counts as none, and no older one goes for it.
    const kept = join(folder.path, 'kept');
    mkdirSync(kept);
    renameSync(file, join(kept, 'reelward-2026-01-01T00-00-00-000Z.sqlite'));
    const madeAt = () => plant.inside((store) => store.readMeta(backupMade));
    const madeMs = await madeAt();
    const blind = await plant.act('backup', kept, '--keep', '1');
    expect([blind.code, blind.err]).toEqual([
      1,
      expect.stringContaining(
        `NOT READ: the texts of 2026-03 left the store, and reelward-2026-03.ndjson.gz is not in ${plant.files}`,
      ),
    ]);
    expect(blind.err).toContain('It counts as no backup');
    expect(blind.err).not.toContain('read them back');
    expect(readdirSync(kept)).toHaveLength(2);
    expect(await madeAt()).toBe(madeMs);
    renameSync(join(kept, 'reelward-2026-01-01T00-00-00-000Z.sqlite'), file);
    const data = join(folder.path, 'data');
    const restored = await call(['serve', 'restore', file, '--data', data, '--months', plant.files]);
    expect([restored.code, restored.err]).toEqual([
      0,
      expect.stringContaining('NOT READABLE: the texts of 2026-03 left the store, and reelward-2026-03'),
    ]);
    renameSync(away, plant.file('2026-03'));
    const store = await openStore({ folder: data, database: null, months: plant.files, nowMs: Date.now });
    try {
      expect((await textsOf(store)).slice(0, before.length)).toEqual(before);
      // No program of before takes a place for a text.
      expect(Number(await store.readMeta('schema_needed'))).toBeGreaterThanOrEqual(11);
    } finally {
      await store.close();
      folder.remove();
    }
  });

  it('stay where they are while anything speaks against it', async () => {
    const before = await plant.inside(allReads);
    const refused = async (words: string, ...args: readonly string[]) => {
      const told = await plant.act(...args);
      expect([told.code, told.err]).toEqual([2, expect.stringContaining(words)]);
    };
    await refused('is not there; write it first', 'month-out', '2026-03');
    await refused('expected a month such as 2026-03', 'month-out', 'march');
    await plant.act('month', plant.files, '--month', '2026-03');
    const good = readFileSync(plant.file('2026-03'));
    writeFileSync(plant.file('2026-05'), good);
    await refused('2026-05 is not over', 'month-out', '2026-05');
    // Another month's, a torn one, one whose text differs, one in a single long piece.
    await plant.act('month', plant.files, '--month', '2026-04');
    writeFileSync(plant.file('2026-03'), readFileSync(plant.file('2026-04')));
    await refused('is not what the store holds', 'month-out', '2026-03');
    writeFileSync(plant.file('2026-03'), good.subarray(0, good.length - 30));
    await refused('is not what the store holds', 'month-out', '2026-03');
    writeFileSync(plant.file('2026-03'), gzipSync(gunzipSync(good).toString().replace('"panel', '"pane1')));
    await refused('is not what the store holds', 'month-out', '2026-03');
    const long = `${gunzipSync(good).toString()}${' '.repeat(9_000_000)}\n`;
    writeFileSync(plant.file('2026-03'), gzipSync(long));
    await refused('was written in one piece', 'month-out', '2026-03');
    writeFileSync(plant.file('2026-03'), good);
    expect(await plant.inside(allReads)).toEqual(before);
    expect((await plant.act('month-out', '2026-04')).code).toBe(0);
    await refused('have left the store already', 'month-out', '2026-04');
  });
});

it('a month without a state of this fold is left where it is, and so is one whose file lies in the data folder', async () => {
  const plant = await newOldPlant('sqlite', undefined);
  try {
    const Database = (await import('better-sqlite3')).default;
    const raw = new Database(join(plant.data, 'log.sqlite'));
    raw.exec("update snapshots set fold = 'floor-1'");
    raw.close();
    await plant.act('month', plant.files, '--month', '2026-03');
    const uncovered = await plant.act('month-out', '2026-03');
    expect([uncovered.code, uncovered.err]).toEqual([
      2,
      expect.stringContaining('a state that covers 2026-03'),
    ]);
    await plant.act('month', plant.data, '--month', '2026-03');
    const inside = await call([
      'serve',
      'month-out',
      '2026-03',
      '--data',
      plant.data,
      '--months',
      plant.data,
    ]);
    expect([inside.code, inside.err]).toEqual([2, expect.stringContaining('lies in the data folder')]);
    const nowhere = await call(['serve', 'month-out', '2026-03', '--data', plant.data]);
    expect([nowhere.code, nowhere.err]).toEqual([2, expect.stringContaining('--months')]);
    const bodies = new Database(join(plant.data, 'log.sqlite'));
    const all = bodies.prepare('select body from entries').pluck().all() as string[];
    bodies.close();
    expect(all.filter((body) => readPlaceInFile(body) !== null)).toEqual([]);
  } finally {
    plant.remove();
  }
});
