// An export of a tablet's own log, checked by the command line: proven by the plant's list where the tablet has heard of one, else claimed.

import '../../store/browser.ts';

import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Entry } from '../../../../../shared/log/entry.ts';
import { plantListText } from '../../../../../shared/log/plant-list.ts';
import { draftOf, sealEntry } from '../../../../../shared/log/seal.ts';
import { exportName, exportStore } from '../../../../../src/app/screens/log/export-log.ts';
import { picturesName } from '../../../../../src/app/screens/log/export-pictures.ts';
import { entryToRow } from '../../../../../src/app/store/database.ts';
import { keepPlantKeys } from '../../../../../src/app/store/plant-keys.ts';
import { openStore, type Store } from '../../../../../src/app/store/store.ts';
import { pointOf } from '../../../../../src/cli/plant-keys.ts';
import { openServerKey } from '../../../../../src/server/keys.ts';
import { call } from '../../../../cli/call.ts';
import { counted, startMs } from '../../../../shared/floor/story.ts';

let store: Store;
let nowMs = startMs;
beforeEach(async () => {
  store = await openStore({
    clock: { nowMs: () => nowMs++ },
    appVersion: '0.1.0',
    tabletName: 'Line 1 front',
    name: `export-${nowMs}`,
  });
  await store.append([{ kind: 'panels.counted', payload: counted('run-1', 1) }], 'ana');
});
afterEach(() => store.close());

async function verdictOn(format: 'json' | 'csv') {
  const { blob, rows } = await exportStore(store, {}, format);
  const { code, out } = await call(['log', 'verify', '-'], await blob.text());
  return { code, rows, report: JSON.parse(out) };
}

test('an export of a tablet that has heard of no list is claimed', async () => {
  const { code, rows, report } = await verdictOn('json');
  expect({ code, rows }).toEqual({ code: 0, rows: 2 });
  expect(report).toMatchObject({ ok: true, entries: 2, proven: 0, claimed: 2, plant: null });
  expect(report.claims[0].why).toBe('own-word-for-its-key');
});

/** The tablet has the plant's list, with its own key on it. */
async function hearOfPlant() {
  const entries: Entry[] = [];
  await store.readAll((some) => void entries.push(...some));
  const key = pointOf(entries[0]?.payload['key'] as { readonly x: string; readonly y: string }); // as WebCrypto writes it
  const { plant } = await openServerKey({ keepMeta: async (_, value) => value });
  const at = '2026-03-02T06:00:00.000Z';
  const keys = [{ tablet: store.identity.tablet, key, since: at, until: null }];
  const text = plantListText({ plantKey: plant.ed25519, plant: 'Brae Works', at, keys });
  await keepPlantKeys(store.log, plant.signNote(text));
  return { plant, at };
}

test('an export of a tablet that has the plant’s list brings it along, and is proven by it', async () => {
  const { plant, at } = await hearOfPlant();
  const { code, rows, report } = await verdictOn('json');
  expect({ code, rows }).toEqual({ code: 0, rows: 2 });
  expect(report).toMatchObject({ ok: true, entries: 2, tablets: 1, proven: 2, claimed: 0 });
  expect(report.plant).toMatchObject({ name: 'Brae Works', fingerprint: plant.fingerprint, listAt: at });
  expect((await verdictOn('csv')).report).toMatchObject({ ok: true, entries: 2, proven: 0, claimed: 2 });
});

/** A part of the log: what was counted, without what was written between and after. */
async function partOfLog(): Promise<readonly string[]> {
  await hearOfPlant();
  for (const run of ['run-2', 'run-3']) {
    await store.append([{ kind: 'reel.dated', payload: { reel: `K-${run}`, expires: '2027-01-31' } }], 'ana');
    await store.append([{ kind: 'panels.counted', payload: counted(run, 1) }], 'ana');
    await store.append([{ kind: 'panels.counted', payload: counted(run, 2) }], 'ana');
  }
  await store.append([{ kind: 'reel.dated', payload: { reel: 'K-9', expires: '2027-01-31' } }], 'ana');
  const { blob, rows } = await exportStore(store, { kinds: ['panels.counted'] }, 'json');
  expect(rows).toBe(5);
  return (await blob.text()).trimEnd().split('\n');
}

const verify = async (lines: readonly string[]) => {
  const { code, out } = await call(['log', 'verify', '-'], `${lines.join('\n')}\n`);
  return { code, report: JSON.parse(out) };
};

test('a part that leaves out the heads is proven all the same, each stretch by its own end', async () => {
  const lines = await partOfLog();
  const { code, report } = await verify(lines);
  expect({ code, proven: report.proven, claimed: report.claimed }).toEqual({
    code: 0,
    proven: 5,
    claimed: 0,
  });
  expect(report.provenBy).toMatchObject([{ tablet: store.identity.tablet, entries: 5 }]);
});

test('of a part in which an entry was altered, left out, swapped or signed from elsewhere nothing of that is proven', async () => {
  const lines = await partOfLog();
  const at = lines.flatMap((line, place) => (line.includes('"panels.counted"') ? [place] : []));
  const [one = 0, two = 0, three = 0] = at;
  const changed = (place: number, change: (entry: Entry) => object) =>
    lines.map((line, each) => (each === place ? JSON.stringify(change(JSON.parse(line) as Entry)) : line));
  const sigOf = (place: number) => (JSON.parse(lines[place] ?? '') as Entry).sig;
  expect([sigOf(one), sigOf(two), sigOf(three)].map((sig) => sig !== null)).toEqual([true, false, true]);
  const files = [
    // Altered before a signed end, and at one.
    changed(two, (entry) => ({ ...entry, payload: { ...entry.payload, add: 7 } })),
    changed(three, (entry) => ({ ...entry, payload: { ...entry.payload, add: 7 } })),
    // The signed end is left out.
    lines.filter((_, place) => place !== three),
    // Two change places, by their numbers.
    lines.map((line, place) => {
      const other = place === two ? three : place === three ? two : null;
      if (other === null) return line;
      return JSON.stringify({ ...JSON.parse(lines[other] ?? ''), seq: JSON.parse(line).seq });
    }),
    // The signature of another end.
    changed(three, (entry) => ({ ...entry, sig: sigOf(one) })),
  ];
  for (const [file, some] of files.entries()) {
    const { code, report } = await verify(some);
    expect(report.proven, `file ${file}`).toBeLessThan(
      some.filter((line) => line.includes('"panels.counted"')).length,
    );
    if (file !== 2) expect(code, `file ${file}`).toBe(1);
  }
});

/** Writes an entry into the store as somebody would who can write to its files: altered, with a hash that fits. */
async function forge(run: string, change: (entry: Entry) => Partial<Entry>): Promise<Entry> {
  const [entry] = (await ownEntries()).filter(({ payload }) => payload['run'] === run).slice(-1);
  if (!entry) throw new TypeError('Cannot go on as the run must have been counted');
  const forged = { ...sealEntry({ ...draftOf(entry), ...change(entry) }), sig: null };
  await store.log.entries.put(entryToRow(forged));
  return forged;
}

async function ownEntries(): Promise<readonly Entry[]> {
  const entries: Entry[] = [];
  await store.readAll((some) => void entries.push(...some));
  return entries.sort((a, b) => a.seq - b.seq);
}

const countings = async () => {
  const { blob } = await exportStore(store, { kinds: ['panels.counted'] }, 'json');
  return (await blob.text()).trimEnd().split('\n');
};
const entriesOf = (lines: readonly string[]) =>
  lines.map((line) => JSON.parse(line) as Entry).filter(({ kind }) => kind === 'panels.counted');

test('an entry altered in the store is not signed where the file leaves out the one that shows it', async () => {
  await partOfLog();
  const forged = await forge('run-2', ({ payload }) => ({ payload: { ...payload, add: 7 } }));
  const lines = await countings();
  expect(entriesOf(lines).map(({ sig }) => sig !== null)).toEqual([false, false, false, false, true]);
  expect(entriesOf(lines)[2]?.hash).toBe(forged.hash);
  // The stretch after the break is proven, and no more.
  expect((await verify(lines)).report).toMatchObject({ proven: 2, claimed: 3 });
});

test('nor where somebody wrote a signature behind it that is not the tablet’s', async () => {
  await partOfLog();
  const forged = await forge('run-2', ({ payload }) => ({ payload: { ...payload, add: 7 } }));
  const next = (await ownEntries()).find(({ seq }) => seq === forged.seq + 1);
  if (!next) throw new TypeError('Cannot go on as something must have been written after it');
  for (const sig of ['A'.repeat(86), 'no signature!', 'A']) {
    const sealed = { ...sealEntry({ ...draftOf(next), prev: forged.hash }), sig };
    await store.log.entries.put(entryToRow(sealed));
    expect(entriesOf(await countings())[2]?.sig).toBeNull();
  }
});

test('what is written while the file is made is proven with the rest', async () => {
  await partOfLog();
  const readAll: Store['readAll'] = async (each) => {
    await store.append([{ kind: 'panels.counted', payload: counted('run-4', 1) }], 'ana');
    return store.readAll(each);
  };
  const { blob } = await exportStore({ ...store, identity: store.identity, readAll }, {}, 'json');
  const { report } = await verify((await blob.text()).trimEnd().split('\n'));
  expect(report).toMatchObject({ ok: true, proven: 10, claimed: 0 });
});

test('each file that leaves the log says of which plant and from when it is', () => {
  const atMs = Date.parse('2026-03-02T06:05:00Z');
  expect(exportName('csv', atMs, 'North hall')).toBe('reelward-log-North-hall-20260302-0605.csv');
  expect(picturesName(atMs, 'North hall')).toBe('reelward-pictures-North-hall-20260302-0605.zip');
  expect(picturesName(atMs, '')).toBe('reelward-pictures-20260302-0605.zip');
});
