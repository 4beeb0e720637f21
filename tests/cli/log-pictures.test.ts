// Pictures of labels beside an exported log: by the SHA-256 that the log has of each, whatever the files are called.

import { createHash } from 'node:crypto';
import { mkdtempSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { exportLog } from '../../shared/log/export.ts';
import { itemToJson } from '../../shared/log/export-rows.ts';
import { packPictures } from '../../shared/log/picture-archive.ts';
import { beginStory, idOf, tellPlant, verified } from '../shared/floor/story.ts';
import { call } from './call.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'reelward-pictures-'));
const pictureOf = (fill: number) => {
  const bytes = new Uint8Array(300 + fill).fill(fill);
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
const logText = (kinds?: readonly string[]) =>
  exportLog(story.entries, kinds ? { kinds } : {})
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
    pictures: { inLog: 2, same: 2, missing: [], others: [] },
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
    others: [],
  });
});

test('one that was changed under its name, or put in beside, is a fault and named', async () => {
  const name = `${first.sha256}.jpg`;
  const changed = zipSync({ [name]: second.bytes.map((byte, at) => (at === 9 ? byte ^ 1 : byte)) });
  const answer = await verdictOn(changed);
  expect(answer).toMatchObject({ code: 1, pictures: { same: 0, others: [name] } });
  expect(answer.err).toContain(name);
  const more = await verdictOn(packPictures([first, second, stranger]));
  expect(more).toMatchObject({ code: 1, pictures: { same: 2, others: [`${stranger.sha256}.jpg`] } });
});

test('beside a part of the log a picture may be of what the file leaves out', async () => {
  const part = logText(['reel.verified']);
  const answer = await verdictOn(packPictures([first]), part);
  expect(answer).toMatchObject({ code: 0, pictures: { inLog: 0, others: [`${first.sha256}.jpg`] } });
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
