// Pictures of labels beside an exported log: by the SHA-256 that the log has of each; a name that is a hash has to be theirs.

import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { exportLog } from '../../shared/log/export.ts';
import { itemToJson } from '../../shared/log/export-rows.ts';
import { packPictures } from '../../shared/log/picture-archive.ts';
import { beginStory, idOf, tellPlant, verified } from '../shared/floor/story.ts';
import { call } from './call.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'reelward-pictures-'));
const pictureOf = (fill: number) => {
  const bytes = new Uint8Array(300 + fill).fill(fill);
  bytes.set([0xff, 0xd8, 0xff]); // as a JPEG begins
  return { bytes, sha256: createHash('sha256').update(bytes).digest('hex') };
};
const [first, second, stranger] = [pictureOf(1), pictureOf(2), pictureOf(3)];

const story = beginStory();
tellPlant(story);
for (const [reel, { sha256, bytes }] of [
  ['K1', first],
  ['K2', second],
] as const) {
  const verdict = story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel }));
  const facts = { of: idOf(verdict), line: 'L1', slot: 'M1-F-001', reel };
  story.tell('picture.kept', { ...facts, sha256, bytes: bytes.length });
}
const kept = story.entries.filter(({ kind }) => kind === 'picture.kept').map(idOf);
const logText = (kinds?: readonly string[], entries = story.entries) =>
  exportLog(entries, kinds ? { kinds } : {})
    .map((item) => `${itemToJson(item)}\n`)
    .join('');

async function verdictOn(archive: Uint8Array, log = logText()) {
  const file = path.join(folder, 'pictures.zip');
  writeFileSync(file, archive);
  const { code, out, err } = await call(['log', 'verify', '-', '--pictures', file], log);
  return { code, err, pictures: code === 2 ? null : JSON.parse(out).pictures };
}

test('all of them, as they were kept', async () => {
  expect(await verdictOn(packPictures([first, second]))).toEqual({
    code: 0,
    err: '',
    pictures: { inLog: 2, same: 2, missing: [], changed: [], notInLog: [], others: [] },
  });
  const { code, out } = await call(['log', 'verify', '-'], logText());
  expect([code, JSON.parse(out).pictures]).toEqual([0, null]);
});

test('one whose days are over is missing and no fault', async () => {
  const { code, pictures } = await verdictOn(packPictures([second]));
  expect(code).toBe(0);
  expect(pictures).toEqual({
    inLog: 2,
    same: 1,
    missing: [{ sha256: first.sha256, entry: kept[0] }],
    changed: [],
    notInLog: [],
    others: [],
  });
});

const nameOf = ({ sha256 }: { readonly sha256: string }) => `${sha256}.jpg`;
const alter = (bytes: Uint8Array) => bytes.map((byte, at) => (at === 9 ? byte ^ 1 : byte));

test('one that was changed under its name is a fault and named, also beside a part of the log', async () => {
  const name = nameOf(first);
  const changed = zipSync({ [name]: alter(first.bytes), [nameOf(second)]: second.bytes });
  for (const log of [logText(), logText(['picture.kept']), logText(['reel.verified'])]) {
    const answer = await verdictOn(changed, log);
    expect(answer).toMatchObject({ code: 1, pictures: { changed: [name], others: [] } });
    expect(answer.err).toContain(
      `zip: expected pictures with the hash that they are named for, found changed ${name}\n`,
    );
  }
  const swapped = zipSync({
    [name]: second.bytes,
    [nameOf(second)]: first.bytes,
    [nameOf(stranger)]: new Uint8Array(),
  });
  const all = [first, second, stranger].map(nameOf).sort();
  const answer = await verdictOn(swapped);
  expect([answer.code, answer.pictures.same, answer.pictures.changed.sort()]).toEqual([1, 0, all]);
});

test('one that was kept after the log was exported is told and no fault', async () => {
  const answer = await verdictOn(packPictures([first, second, stranger]));
  const name = nameOf(stranger);
  expect(answer).toMatchObject({ code: 0, pictures: { same: 2, changed: [], notInLog: [name], others: [] } });
  expect(answer.err).toMatch(
    new RegExp(
      `^reelward log: \\S+pictures\\.zip: not in this log: kept later, or of another log: ${name}\\n$`,
    ),
  );
  const more = await verdictOn(packPictures([stranger, pictureOf(4), pictureOf(5)]));
  expect(more).toMatchObject({ code: 0, pictures: { same: 0 } });
  expect(more.err).toContain(`${more.pictures.notInLog[0]} and 2 more\n`);
});

test('a tablet has pictures of entries that an older export lacks', async () => {
  const older = logText(undefined, story.entries.slice(0, -1));
  const answer = await verdictOn(packPictures([first, second]), older);
  expect(answer).toMatchObject({ code: 0, pictures: { inLog: 1, same: 1, notInLog: [nameOf(second)] } });
});

test('beside a part of the log a picture may be of what the file leaves out', async () => {
  const part = logText(['reel.verified']);
  const answer = await verdictOn(packPictures([first]), part);
  expect(answer).toMatchObject({ code: 0, pictures: { inLog: 0, notInLog: [nameOf(first)] } });
  expect(answer.err).toContain('not in this log: left out of the file, kept later, or of another log: ');
});

test('under a name of its own a picture that the whole log does not have is a fault', async () => {
  const archive = zipSync({
    'reel K9.jpg': stranger.bytes,
    'a label': alter(first.bytes),
    'empty.JPEG': new Uint8Array(),
  });
  const others = ['reel K9.jpg', 'a label', 'empty.JPEG'];
  const whole = await verdictOn(archive);
  expect(whole).toMatchObject({ code: 1, pictures: { changed: [], notInLog: [], others } });
  expect(whole.err).toContain(`expected pictures that the log has, found ${others.join(', ')}\n`);
  expect(await verdictOn(archive, logText(['reel.verified']))).toMatchObject({
    code: 0,
    err: '',
    pictures: { others },
  });
});

// What a desktop puts beside pictures: none of it is one.
const desktopFiles: Readonly<Record<string, Uint8Array>> = {
  '.DS_Store': Uint8Array.of(0, 0, 0, 1, 0x42, 0x75, 0x64, 0x31),
  'Thumbs.db': Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0),
  'read me.txt': strToU8('pictures of March'),
  [`._${nameOf(first)}`]: Uint8Array.of(0, 5, 0x16, 7, 0, 2, 0, 0),
};

test('an archive packed again from a folder, with what a desktop puts in', async () => {
  const inFolder = Object.entries({
    ...desktopFiles,
    [nameOf(first)]: first.bytes,
    [nameOf(second)]: second.bytes,
  });
  for (const before of ['pics/', 'saved/in March/', 'pics\\']) {
    const files = Object.fromEntries(inFolder.map(([name, bytes]) => [`${before}${name}`, bytes] as const));
    const answer = await verdictOn(
      zipSync({ [before]: new Uint8Array(), 'pics.jpg/': new Uint8Array(), ...files }),
    );
    expect(answer).toMatchObject({ code: 0, err: '', pictures: { same: 2, others: [] } });
  }
  const changed = await verdictOn(
    zipSync({ 'pics/': new Uint8Array(), [`pics/${nameOf(first)}`]: alter(first.bytes) }),
  );
  expect(changed).toMatchObject({ code: 1, pictures: { changed: [nameOf(first)] } });
});

test('a folder with folders in it and what a desktop puts in', async () => {
  const pictures = mkdtempSync(path.join(os.tmpdir(), 'reelward-desktop-'));
  mkdirSync(path.join(pictures, 'older.jpg'));
  const longer = pictureOf(6);
  const files = { ...desktopFiles, [nameOf(first)]: first.bytes, [nameOf(second)]: alter(second.bytes) };
  for (const [name, bytes] of Object.entries({ ...files, [nameOf(longer)]: longer.bytes }))
    writeFileSync(path.join(pictures, name), bytes);
  const { code, out, err } = await call(['log', 'verify', '-', '--pictures', pictures], logText());
  expect([code, JSON.parse(out).pictures]).toEqual([
    1,
    {
      inLog: 2,
      same: 1,
      missing: [{ sha256: second.sha256, entry: kept[1] }],
      changed: [nameOf(second)],
      notInLog: [nameOf(longer)],
      others: [],
    },
  ]);
  expect(err).not.toContain('fault of its own');
});

test('an archive unpacked into a folder is read too; what is neither is refused', async () => {
  const unpacked = mkdtempSync(path.join(os.tmpdir(), 'reelward-unpacked-'));
  writeFileSync(path.join(unpacked, 'a name of its own.jpg'), first.bytes);
  const { code, out } = await call(['log', 'verify', '-', '--pictures', unpacked], logText());
  expect([code, JSON.parse(out).pictures.same]).toEqual([0, 1]);
  expect(await verdictOn(new Uint8Array([1, 2, 3]))).toMatchObject({ code: 2 });
  const none = path.join(folder, 'none.zip');
  expect((await call(['log', 'verify', '-', '--pictures', none], logText())).code).toBe(2);
});
