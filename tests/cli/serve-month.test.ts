// A month of the log as a file: closed, proved, held against the store; read by `log verify` and, several together, by `trace`.

import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../shared/log/entry.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { newFolder, startPostgres, type TestPostgres } from '../contract/databases.ts';
import { newKey, signedBy, toChecked } from '../contract/entries.ts';
import { beginStory, counted, started, tellPlant, verified } from '../shared/floor/story.ts';
import { call } from './call.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(() => postgres?.stop());

/** A store that has let in the tablet of the story, and that tablet's key. */
async function openWith(folder: string, database: string | null) {
  const key = newKey();
  const store = await openStore({ folder, database, nowMs: Date.now });
  await store.enrolTablet({ tablet: 'T1', name: 'Line 1', publicKey: key.publicKey }, Date.now());
  return { store, key };
}

describe.each(['sqlite', 'postgres'] as const)('a month on %s', (kind) => {
  it('is written once it is over, checked, and read again together with others', async () => {
    const folder = newFolder();
    try {
      const database = kind === 'sqlite' ? null : ((await postgres?.newDatabase()) ?? null);
      const place = ['--data', folder.path, ...(database === null ? [] : ['--database', database])];
      const story = beginStory();
      tellPlant(story);
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LA', quantity: 500 }));
      const first = story.entries.length;
      story.tell('run.started', started('r1'));
      story.tell('panels.counted', counted('r1', 30));
      const second = story.entries.length;
      story.tell('panels.counted', counted('r1', 12));
      const { store, key } = await openWith(folder.path, database);
      const signed = story.entries.map((entry) => signedBy(key, entry));
      const bring = (entries: readonly Entry[], at: string) =>
        store.append([{ sender: 'T1', entries: entries.map((entry) => toChecked(entry)) }], Date.parse(at));
      await bring(signed.slice(0, first), '2026-03-31T23:59:59.999Z');
      await bring(signed.slice(first, second), '2026-04-01T00:00:00Z');
      // By a clock that was set back: it came in during April all the same.
      await bring(signed.slice(second, second + 1), '2026-03-02T00:00:00Z');
      const month = (name: string) => call(['serve', 'month', folder.path, '--month', name, ...place]);

      const march = await month('2026-03');
      const file = (name: string) => join(folder.path, `reelward-${name}.ndjson.gz`);
      expect([march.code, march.err]).toEqual([
        0,
        `${first} entries of 2026-03 written to ${file('2026-03')}, read back and found as they are in the store, which keeps them too\n`,
      ]);
      const open = await month('2026-04');
      expect([open.code, open.err]).toEqual([2, expect.stringContaining('2026-04 is not over in this log')]);
      const late = beginStory();
      late.tell('tablet.opened', { name: 'x', app: '0.1.0', key: null, previous: null }, { tablet: 'T2' });
      await bring(late.entries, '2026-05-01T00:00:00Z');
      await store.close();
      expect((await month('2026-04')).err).toContain(`${signed.length - first} entries of 2026-04 written`);
      const again = await month('2026-03');
      expect([again.code, again.err]).toEqual([2, expect.stringContaining('exists already')]);
      expect(readdirSync(folder.path).filter((name) => name.endsWith('.part'))).toEqual([]);

      for (const [name, entries] of [
        ['2026-03', first],
        ['2026-04', signed.length - first],
      ] as const) {
        const checked = await call(['log', 'verify', file(name)]);
        expect([checked.code, checked.err]).toEqual([0, '']);
        expect(JSON.parse(checked.out)).toMatchObject({ ok: true, entries, proven: entries, claimed: 0 });
        expect(JSON.parse(checked.out).tree.entries).toBe(entries);
      }
      const both = await call(['trace', file('2026-04'), file('2026-03'), '--lot', 'LA']);
      expect([both.code, both.err]).toEqual([0, '']);
      expect(JSON.parse(both.out).places).toMatchObject([{ run: 'r1', possible: { first: 1, last: 42 } }]);
      const without = await call(['trace', file('2026-04'), file('2026-04'), '--lot', 'LA']);
      expect([without.code, without.err]).toEqual([
        1,
        `reelward trace: entries 1 to ${first} of T1/T1-life-1 are in none of the files\n`,
      ]);

      // Changed afterwards, it is found out.
      const text = gunzipSync(readFileSync(file('2026-04'))).toString();
      const changed = join(folder.path, 'changed.gz');
      writeFileSync(changed, gzipSync(text.replace('"add":12', '"add":13')));
      expect((await call(['log', 'verify', changed])).code).toBe(1);
      writeFileSync(changed, readFileSync(file('2026-04')).subarray(0, 200));
      const torn = await call(['log', 'verify', changed]);
      expect([torn.code, torn.err]).toEqual([2, expect.stringContaining('expected a whole packed file')]);
    } finally {
      folder.remove();
    }
  });
});

it('a month that is none, and a folder that is not there, are refused before anything is made', async () => {
  const folder = newFolder();
  const data = join(folder.path, 'data');
  const month = await call(['serve', 'month', folder.path, '--month', '2026-13', '--data', data]);
  expect([month.code, month.err]).toEqual([
    2,
    expect.stringContaining('--month: expected a month such as 2026-03'),
  ]);
  const nowhere = await call(['serve', 'month', join(folder.path, 'nowhere'), '--data', data]);
  expect([nowhere.code, nowhere.err]).toEqual([
    2,
    expect.stringContaining('expected a folder that is there'),
  ]);
  expect(existsSync(data)).toBe(false);
  folder.remove();
});

describe('a month that cannot be written', () => {
  it.each([
    [
      'came in before the log began',
      null,
      ['FOLDER', '--month', '2019-01'],
      'month: nothing came in during 2019-01',
    ],
    [
      'is to go where nobody may write',
      null,
      ['/sys', '--month', '2026-03'],
      'month: this user may not write in /sys',
    ],
    [
      'is of a log with a hole',
      "delete from entries where pos = 3; delete from tree_nodes; delete from meta where key = 'tree_edge'",
      ['FOLDER', '--month', '2026-03'],
      'month: what was written is not what the store holds (it has no signed head: the log has a hole)',
    ],
    [
      'has an entry that no export has, as its clock was out of all bounds',
      'update entries set ahead_ms = 9000000000000 where pos = 3',
      ['FOLDER', '--month', '2026-05'],
      'month: what was written is not what the store holds (another number of entries)',
    ],
  ])('as it %s says so and leaves nothing', async (_what, harm, args, words) => {
    const folder = newFolder();
    try {
      const story = beginStory();
      tellPlant(story);
      const { store, key } = await openWith(folder.path, null);
      const signed = story.entries.map((entry) => signedBy(key, entry));
      for (const [at, month] of ['03', '04', '05', '06'].entries()) {
        const entries = signed.slice(at, at + 1).map((entry) => toChecked(entry));
        await store.append([{ sender: 'T1', entries }], Date.parse(`2026-${month}-02T00:00:00Z`));
      }
      await store.close();
      if (harm !== null) {
        const raw = new Database(join(folder.path, 'log.sqlite'));
        raw.exec(harm);
        raw.close();
      }
      const named = args.map((arg) => (arg === 'FOLDER' ? folder.path : arg));
      const told = await call(['serve', 'month', ...named, '--data', folder.path]);
      expect([told.code, told.err]).toEqual([2, expect.stringContaining(words)]);
      expect(readdirSync(folder.path).filter((name) => name.startsWith('reelward-'))).toEqual([]);
    } finally {
      folder.remove();
    }
  });
});
