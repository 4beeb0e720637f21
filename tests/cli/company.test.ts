// The company's view over plants: real servers' exports, asked together. What a plant does not prove is told, and what is broken answers nothing.

import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Entry } from '../../shared/log/entry.ts';
import { makeTicket } from '../../src/server/codes.ts';
import { newKey, signedBy, toChecked } from '../contract/entries.ts';
import {
  beginStory,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
} from '../shared/floor/story.ts';
import { newClock, startTestServer, type TestClock, type TestServer } from '../src/server/tablets.ts';
import { call } from './call.ts';
import { newFiles } from './new-file.ts';

const fileOf = newFiles('company', 'jsonl');

interface Site {
  readonly server: TestServer;
  readonly file: string;
  readonly fingerprint: string;
}

/** A plant whose server holds the story, signed by the tablet that was let in, and its export. */
async function openSite(
  plant: string,
  story: Story,
  { unsigned = [], clock = newClock() }: { unsigned?: readonly Entry[]; clock?: TestClock } = {},
): Promise<Site> {
  const server = await startTestServer({ plant, clock });
  const { store, context } = server.running;
  const key = newKey();
  await store.enrolTablet({ tablet: 'T1', name: 'Line 1', publicKey: key.publicKey }, Date.now());
  const signed = story.entries.map((entry) => (unsigned.includes(entry) ? entry : signedBy(key, entry)));
  await store.append([{ sender: 'T1', entries: signed.map((entry) => toChecked(entry)) }], Date.now());
  const file = fileOf(await exported(server, 'json'));
  return { server, file, fingerprint: context.key.plant.fingerprint };
}

async function exported(
  { running }: TestServer,
  format: 'json' | 'csv',
  line: string | null = null,
): Promise<string> {
  const wish = { format, from: null, to: null, line };
  const { path } = await makeTicket(running.store, wish, running.context.nowMs());
  return (await fetch(running.url + path)).text();
}

let brae: Site;
let tarn: Site;

beforeAll(async () => {
  const first = beginStory();
  tellPlant(first);
  first.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LA', quantity: 500 }));
  first.tell('run.started', started('r1'));
  first.tell('panels.counted', counted('r1', 30, 'SN-30'));
  brae = await openSite('Brae Works', first);
  const second = beginStory();
  tellPlant(second);
  second.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K9', lot: 'la', quantity: 500 }));
  second.tell('reel.verified', verified('M1-F-002', 'R-999', { verdict: 'refused' }));
  second.tell('run.started', started('r7'));
  second.tell('panels.counted', counted('r7', 12));
  // The last thing that the tablet wrote is signed by nobody yet.
  tarn = await openSite('Tarn Works', second, { unsigned: second.entries.slice(-1) });
});
afterAll(async () => {
  await Promise.all([brae, tarn].map(({ server }) => server.stop()));
});

/** The rows of a table, by column; fails where a row has other columns than the head. */
function rowsOf(csv: string): readonly Readonly<Record<string, string>>[] {
  const { data, errors } = Papa.parse<Record<string, string>>(csv.trimEnd(), {
    header: true,
    delimiter: ',',
    newline: '\r\n',
  });
  expect(errors).toEqual([]);
  return data;
}

const plantsFile = (...sites: readonly (readonly [Site, string])[]) =>
  fileOf(sites.map(([{ fingerprint }, name]) => `${fingerprint} ${name}\n`).join(''));

describe('reelward company', () => {
  test('finds where a lot went over all plants, and says of each row how sure it is', async () => {
    const { code, out, err } = await call(['company', 'where', brae.file, tarn.file, '--lot', 'LA']);
    expect(code).toBe(0);
    const rows = rowsOf(out);
    expect(rows.map(({ plant, what, reel, standing }) => [plant, what, reel, standing])).toEqual([
      ['Brae Works', 'panels', 'K1', 'proven'],
      ['Brae Works', 'reel', 'K1', 'proven'],
      ['Tarn Works', 'panels', 'K9', 'entry-proven'],
      ['Tarn Works', 'reel', 'K9', 'claimed'],
    ]);
    // The same answers as each plant's own trace.
    for (const [at, { file }] of [brae, tarn].entries()) {
      const { places } = JSON.parse((await call(['trace', file, '--lot', 'LA'])).out);
      const { line, run, slot, possibleFirst, possibleLast, serials } = rows[at * 2] ?? {};
      expect({ line, run, slot, first: Number(possibleFirst), last: Number(possibleLast), serials }).toEqual({
        line: places[0].line,
        run: places[0].run,
        slot: places[0].slot,
        ...places[0].possible,
        serials: places[0].serials.join(' '),
      });
    }
    expect(rows[1]).toMatchObject({ line: 'L1', slot: 'M1-F-001', part: 'R-100', lot: 'LA' });
    expect(err).toContain('Brae Works: 8 entries, 8 proven, 0 claimed, 0 of the log left out; ends at 2');
    expect(err).toContain(`Z; key ${brae.fingerprint}`);
    expect(err).toContain('Tarn Works: 9 entries, 8 proven, 1 claimed');
    expect(err).toContain('Whose keys these are nobody has checked');
  });

  test('takes a plant that is none of the company’s for claimed, and says no', async () => {
    const known = plantsFile([brae, 'North'], [tarn, 'South']);
    const both = await call(['company', 'plants', brae.file, tarn.file, '--plants', known]);
    expect(both.code).toBe(0);
    expect(rowsOf(both.out)).toMatchObject([
      { plant: 'North', known: 'yes', proven: '8', claimed: '0', leftOut: '0', holds: 'yes' },
      { plant: 'South', known: 'yes', proven: '8', claimed: '1', claimedWhy: 'not-signed 1', holds: 'yes' },
    ]);
    const one = plantsFile([brae, 'North']);
    const answer = await call(['company', 'where', brae.file, tarn.file, '--reel', 'K9', '--plants', one]);
    expect(answer.code).toBe(1);
    // What a stranger calls itself is its own word: it stands under the name of its file.
    expect(
      rowsOf(answer.out).map(({ plant, fingerprint, standing }) => [plant, fingerprint, standing]),
    ).toEqual([
      [tarn.file, tarn.fingerprint, 'claimed'],
      [tarn.file, tarn.fingerprint, 'claimed'],
    ]);
    const alike = plantsFile([brae, 'North'], [tarn, 'North']);
    const [plants, span] = [
      ['--plants', alike],
      ['--from', '2026-03-02T06:00:00Z', '--to', '2026-03-02T14:00:00Z'],
    ];
    const shifts = await call(['company', 'shifts', brae.file, tarn.file, ...plants, ...span]);
    expect(rowsOf(shifts.out).map(({ plant, fingerprint }) => [plant, fingerprint])).toEqual([
      ['North', brae.fingerprint],
      ['North', tarn.fingerprint],
    ]);
    expect(answer.err).toContain('NOT one of the company’s plants');
  });

  test('answers nothing out of an export that was changed, nor for two of one plant', async () => {
    const changed = fileOf(readFileSync(tarn.file, 'utf8').replace('"add":12', '"add":13'));
    const answer = await call(['company', 'where', brae.file, changed, '--lot', 'LA']);
    expect(answer.code).toBe(1);
    expect(new Set(rowsOf(answer.out).map(({ plant }) => plant))).toEqual(new Set(['Brae Works']));
    expect(answer.err).toMatch(/Tarn Works: BROKEN, nothing is answered out of it: entry T1\/.*hash/);
    const twice = await call(['company', 'plants', brae.file, fileOf(readFileSync(brae.file, 'utf8'))]);
    expect([twice.code, twice.out]).toEqual([2, '']);
    expect(twice.err).toContain(`of the same plant as ${brae.file}: give one export of each plant`);
  });

  test('proves an export in another form by the list beside it, and claims it without', async () => {
    const file = fileOf(await exported(brae.server, 'csv'));
    const plants = async () => rowsOf((await call(['company', 'plants', file])).out);
    expect(await plants()).toMatchObject([{ plant: file, fingerprint: '', proven: '0', claimed: '8' }]);
    const list = await call(['serve', 'keys', '--data', brae.server.folder]);
    const beside = file.replace('.jsonl', '.keys');
    writeFileSync(beside, list.out);
    expect(await plants()).toMatchObject([
      { plant: 'Brae Works', fingerprint: brae.fingerprint, proven: '8', claimed: '0', leftOut: 'not told' },
    ]);
    // Nobody says that this form holds all of the log.
    const asked = await call(['company', 'where', file, '--part', 'R-100']);
    expect(rowsOf(asked.out).map(({ standing }) => standing)).toEqual(['entry-proven', 'claimed']);
    rmSync(beside);
  });

  test('lays the shift figures of all lines side by side', async () => {
    const span = ['--from', '2026-03-02T06:00:00Z', '--to', '2026-03-02T14:00:00Z'];
    const { code, out } = await call(['company', 'shifts', brae.file, tarn.file, ...span]);
    expect(code).toBe(0);
    expect(rowsOf(out)).toMatchObject([
      {
        plant: 'Brae Works',
        line: 'L1',
        lineName: 'Brae line 1',
        standing: 'proven',
        accepted: '1',
        refused: '0',
      },
      { plant: 'Tarn Works', line: 'L1', standing: 'claimed', accepted: '1', refused: '1', stops: '0' },
    ]);
    const before = ['--from', '2026-03-01T06:00:00Z', '--to', '2026-03-01T14:00:00Z'];
    expect(rowsOf((await call(['company', 'shifts', brae.file, ...before])).out)).toMatchObject([
      { accepted: '0' },
    ]);
  });

  test('proves nothing of the time after the export was written', async () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K5' }));
    story.tell('run.started', started('r1'));
    const stopped = story.tell(
      'run.stopped',
      { line: 'L1', run: 'r1', reason: 'other', note: '' },
      { at: 600 },
    );
    const clock = newClock();
    clock.shiftMs = startMs + 3_600_000 - Date.now();
    const { server, file } = await openSite('Moor Works', story, { clock });
    await server.stop();
    const shifts = (from: string, to: string) =>
      call(['company', 'shifts', file, '--from', `2026-03-0${from}:00Z`, '--to', `2026-03-0${to}:00Z`]);
    const cut = await shifts('2T06:00', '2T14:00');
    const [row] = rowsOf(cut.out);
    expect(row).toMatchObject({
      standing: 'proven',
      stops: '1',
      to: expect.stringMatching(/^2026-03-02T07:0/),
    });
    // The stop goes on where the export ends: its time is not the whole shift's.
    const toMs = Date.parse(row?.['to'] ?? '');
    expect(Number(row?.['stopSeconds'])).toBe(Math.round((toMs - stopped.hlc.ms) / 1000));
    expect(cut.err).toContain(`ends at ${row?.['to']}`);
    const whole = await shifts('2T06:00', '2T06:30');
    expect(rowsOf(whole.out)).toMatchObject([{ to: '2026-03-02T06:30:00.000Z' }]);
    const later = await shifts('2T14:00', '2T22:00');
    expect([later.code, rowsOf(later.out)]).toEqual([1, []]);
    const where = rowsOf((await call(['company', 'where', file, '--part', 'R-100'])).out);
    expect(new Set(where.map(({ asOf }) => asOf))).toEqual(new Set([row?.['to']]));
  });

  test.each([
    [['company'], 'expected plants, where or shifts, found nothing'],
    [['company', 'where', 'x.jsonl'], 'expected --lot, --reel or --part, found none'],
    [['company', 'where', 'nowhere.jsonl', '--lot', 'LA'], 'nowhere.jsonl: no such file'],
    [['company', 'shifts', 'x.jsonl', '--lot', 'LA'], '--lot: does not go with this question'],
    [['company', 'shifts', 'x.jsonl', '--from', '2026-03-02T06:00:00Z'], 'expected --from and --to'],
    [['company', 'plants'], 'expected one EXPORT of each plant, found nothing'],
  ])('%j is not understood, in words', async (args, words) => {
    const answer = await call(args);
    expect([answer.code, answer.out]).toEqual([2, '']);
    expect(answer.err).toContain(words);
  });
});
