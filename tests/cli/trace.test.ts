// The command `trace` from an exported log to its answer.

import { constants } from 'node:buffer';
import { writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { exportLog } from '../../shared/log/export.ts';
import { itemToJson } from '../../shared/log/export-rows.ts';
import { beginStory, counted, started, tellPlant, verified } from '../shared/floor/story.ts';
import { call } from './call.ts';
import { newFiles } from './new-file.ts';

let log = '';

beforeAll(() => {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LA', quantity: 100 }));
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 30, 'SN-30'));
  log = story.entries.map((entry) => JSON.stringify(entry)).join('\n');
});

const ask = (...args: readonly string[]) => call(['trace', '-', ...args], log);

describe('reelward trace', () => {
  test('finds the panels of a lot', async () => {
    const { code, out, err } = await ask('--lot', 'LA');
    expect([code, err]).toEqual([0, '']);
    const { question, places } = JSON.parse(out);
    expect(question).toEqual({ lot: 'LA' });
    expect(places).toMatchObject([
      {
        line: 'L1',
        run: 'r1',
        product: 'Brook',
        slot: 'M1-F-001',
        reel: 'K1',
        part: 'R-100',
        sure: { first: 1, last: 30 },
        possible: { first: 1, last: 30 },
        serials: ['SN-30'],
        goesOn: true,
        who: 'ana',
      },
    ]);
  });

  test('follows a reel into its piece, and says of either where parts came from and went; of others as ever', async () => {
    const story = beginStory();
    tellPlant(story);
    const into = 'K1-cut';
    const facts = { reel: 'K1', into, part: 'R-100', lot: 'LA', quantity: 500, left: null } as const;
    story.tell('reel.split', { ...facts, via: 'typed' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: into, lot: 'LA', quantity: 500 }));
    story.tell('run.started', started('r1'));
    story.tell('panels.counted', counted('r1', 30));
    const text = story.entries.map((entry) => JSON.stringify(entry)).join('\n');
    const told = async (...args: readonly string[]) =>
      JSON.parse((await call(['trace', '-', ...args], text)).out);
    expect(await told('--reel', 'K1')).toMatchObject({
      madeOf: [],
      wentInto: [into],
      places: [{ reel: into, madeOf: ['K1'], sure: { first: 1 } }],
    });
    expect(await told('--reel', into)).toMatchObject({ madeOf: ['K1'], wentInto: [] });
    expect((await told('--panel', '1')).panel.slots[0].lots).toMatchObject([
      { lot: 'LA', reel: into, madeOf: ['K1'], sure: true },
    ]);
    const plain = JSON.parse((await ask('--reel', 'K1')).out);
    expect(Object.keys(plain)).toEqual(['question', 'places']);
    expect(plain.places[0]).not.toHaveProperty('madeOf');
  });

  test('finds what is on a panel, by number and by code', async () => {
    for (const panel of ['30', 'SN-30']) {
      const { code, out } = await ask('--panel', panel);
      expect(code).toBe(0);
      expect(JSON.parse(out).panel).toMatchObject({
        run: 'r1',
        panel: 30,
        serial: 'SN-30',
        slots: [{ slot: 'M1-F-001', lots: [{ lot: 'LA', reel: 'K1', sure: true }] }],
      });
      const { panel: newest, runs } = JSON.parse(out);
      expect(runs, 'each time that it was built').toEqual([newest]);
    }
  });

  test('reads the entries in the log’s order, whatever the order of the file', async () => {
    const backwards = log.split('\n').reverse().join('\n');
    expect((await call(['trace', '-', '--lot', 'LA'], backwards)).out).toBe((await ask('--lot', 'LA')).out);
  });

  test('says no where nothing is found', async () => {
    expect(await ask('--lot', 'LX')).toMatchObject({ code: 1, err: '' });
    expect(JSON.parse((await ask('--panel', '31')).out)).toEqual({ panel: null, runs: [] });
    expect((await ask('--panel', '31')).code).toBe(1);
  });

  test('refuses a question that it does not understand, in one line', async () => {
    const rows: readonly (readonly [args: readonly string[], says: string])[] = [
      [[], 'expected --lot, --panel or another question, found none'],
      [['--panel', '1', '--lot', 'LA'], '--panel: goes with --run only, found --lot'],
      [['--lot', 'LA', '--from', 'yesterday'], '--from: expected a moment'],
      [['--colour', 'red'], 'colour'],
    ];
    for (const [args, says] of rows) {
      const { code, out, err } = await ask(...args);
      expect([code, out], says).toEqual([2, '']);
      expect(err).toContain(says);
      expect(err.trim().split('\n')).toHaveLength(1);
    }
    const cut = await call(['trace', '-', '--lot', 'LA'], `${log}\n{"v":1,`);
    expect([cut.code, cut.out]).toEqual([2, '']);
    expect(cut.err).toContain('line');
  });

  test('tells what the files say they leave out and none of them has, also of one alone and of a whole chain', async () => {
    const fileOf = newFiles('trace', 'ndjson');
    const story = beginStory();
    tellPlant(story);
    const early = story.entries.length;
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'LA' }), { tablet: 'T2' });
    story.tell('run.started', started('r1'));
    // As a month's file: what came in before it is left out, what comes after it is not spoken of.
    const month = (from: number, to: number) => {
      const [left, kept] = [story.entries.slice(0, from), story.entries.slice(from, to)];
      const omitted = left.map(({ tablet, epoch, seq, hash }) => ({
        omitted: { tablet, epoch, fromSeq: seq, toSeq: seq, hash },
      }));
      return fileOf([...omitted, ...kept].map((item) => `${JSON.stringify(item)}\n`).join(''));
    };
    const [first, second, third] = [month(0, early), month(early, early + 1), month(early + 1, early + 2)];
    const missing = (...files: readonly string[]) => call(['trace', ...files, '--lot', 'LA']);
    const gap = (text: string) => `reelward trace: entries ${text} are in none of the files\n`;
    expect((await missing(first, second, third)).err).toBe('');
    expect(await missing(first, third)).toMatchObject({ code: 1, err: gap('1 to 1 of T2/T2-life-1') });
    expect((await missing(third)).err).toBe(
      `${gap(`1 to ${early} of T1/T1-life-1`)}${gap('1 to 1 of T2/T2-life-1')}`,
    );
    // A filter leaves out here and there: a line a chain, not one a stretch.
    const other = beginStory();
    for (let at = 0; at < 14; at += 1) {
      other.tell('run.started', started(`r${at}`));
      other.tell('panels.counted', counted(`r${at}`, 1));
    }
    const some = exportLog(other.entries, { kinds: ['panels.counted'] });
    const told = await call([
      'trace',
      fileOf(some.map((item) => `${itemToJson(item)}\n`).join('')),
      '--lot',
      'LA',
    ]);
    expect(told.err).toBe(
      'reelward trace: 14 entries of T1/T1-life-1, in 14 stretches between 1 and 27, are in none of the files\n',
    );
  });

  test('reads a packed file of more text than one string can hold, as a large plant’s month is', async () => {
    const file = newFiles('trace-long', 'gz')();
    // Packed pieces one after the other are one packed file; lines of spaces are none.
    const space = gzipSync(`${' '.repeat(1 << 20)}\n`);
    const many = Array.from({ length: (constants.MAX_STRING_LENGTH >> 20) + 2 }, () => space);
    writeFileSync(
      file,
      Buffer.concat([gzipSync(`${log.slice(0, 500)}`), gzipSync(`${log.slice(500)}\n`), ...many]),
    );
    expect(await call(['trace', file, '--lot', 'LA'])).toEqual(await ask('--lot', 'LA'));
  });
});
