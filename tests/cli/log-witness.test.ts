// Witnesses: who signs heads of a server's log, what makes one refuse, and what verify says of it.

import { createPublicKey, verify as holds } from 'node:crypto';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  addCosignature,
  cosignaturesBy,
  cosignedText,
  formatWitnessKey,
  parseWitnessKey,
  readCosignature,
} from '../../shared/log/cosignature.ts';
import { formatGrowth, parseGrowth } from '../../shared/log/head-growth.ts';
import { parseNote } from '../../shared/log/note.ts';
import { treeHeadText } from '../../shared/log/tree-head.ts';
import { makeTicket } from '../../src/server/codes.ts';
import { makeChain, toChecked } from '../contract/entries.ts';
import { usePlant } from '../src/server/use-plant.ts';
import { call } from './call.ts';
import { newFiles } from './new-file.ts';

const plant = usePlant();
const newFile = newFiles('witness');

/** Appends entries of a tablet to the plant's log. */
async function write(tablet: string, count: number): Promise<void> {
  const entries = makeChain({ tablet, count }).map((entry) => toChecked(entry));
  await plant.server.running.store.append([{ sender: tablet, entries }], 1);
}
const headFrom = async (size: number) =>
  (await call(['serve', 'head', String(size), '--data', plant.server.folder])).out;
const listOf = async () => newFile((await call(['serve', 'keys', '--data', plant.server.folder])).out);

/** A witness with a key of its own, and how it is asked. */
async function newWitness(name: string) {
  const key = newFile();
  const made = await call(['log', 'witness', '--make', name, '--key', key]);
  expect(made).toMatchObject({ code: 0, err: '' });
  const keys = await listOf();
  const sign = (head: string) =>
    call(['log', 'witness', '--note', newFile(head), '--key', key, '--keys', keys]);
  return { key, public: made.out, sign };
}

async function exported(): Promise<string> {
  const { store, context, url } = plant.server.running;
  const wish = { format: 'json', from: null, to: null, line: null } as const;
  const { path: link } = await makeTicket(store, wish, context.nowMs());
  return (await fetch(url + link)).text();
}

describe('the open form', () => {
  // Source: the example of C2SP tlog-cosignature; its text names the same moment. The key is not published with it.
  test('of a cosignature is read as published', () => {
    const published =
      'jWbPPwAAAABkGFDLEZMHwSRaJNiIDoe9DYn/zXcrtPHeolMI5OWXEhZCB9dlrDJsX3b2oyin1nPZqhf5nNo0xUe+mbIUBkBIfZ+qnA==';
    const [read] = readCosignature(Buffer.from(published, 'base64').subarray(4));
    expect(read?.seconds).toBe(1_679_315_147);
    expect(read?.bytes).toHaveLength(64);
    expect(readCosignature(Buffer.from(published, 'base64').subarray(5))).toEqual([]);
    expect(cosignedText('a/b\n1\nAA==\n', 1_679_315_147)).toBe(
      'cosignature/v1\ntime 1679315147\na/b\n1\nAA==\n',
    );
  });

  test('of a head with its proof reads back, and what is none is refused', () => {
    const growth = { old: 7, proof: [new Uint8Array(32).fill(1)], note: 'a\n1\nb\n\n\u2014 x AAAAAAA=\n' };
    expect(parseGrowth(formatGrowth(growth))).toEqual(growth);
    for (const text of [
      'old 7',
      'old 07\n\nx',
      'old 7\nAA==\n\nx',
      'old -1\n\nx',
      'old 99999999999999999\n\nx',
    ])
      expect(parseGrowth(text)).toBeNull();
  });
});

describe('reelward log witness', () => {
  test('signs heads that grow from one another, and verify says whose signatures those are', async () => {
    const one = await newWitness('stick.brae');
    const two = await newWitness('other-plant');
    expect(statSync(one.key).mode & 0o777).toBe(0o600);
    await write('a', 3);
    const first = await one.sign(await headFrom(0));
    expect(first).toMatchObject({
      code: 0,
      err: 'stick.brae signed the head of 3 entries (the first that it saw)\n',
    });
    await write('b', 4);
    const second = await one.sign(await headFrom(3));
    expect(second).toMatchObject({ code: 0, err: 'stick.brae signed the head of 7 entries\n' });
    // A second witness adds its line to what the first one signed.
    const both = await two.sign(second.out);
    expect(both.code).toBe(0);
    const key = parseWitnessKey(one.public.trim());
    const note = parseNote(both.out);
    if (!key || !note) throw new Error('not read');
    expect(formatWitnessKey(key)).toBe(one.public.trim());
    const [cosigned] = cosignaturesBy(note, key);
    const der = Buffer.concat([Buffer.from('302a300506032b6570032100', 'hex'), key.key]);
    const own = createPublicKey({ key: der, format: 'der', type: 'spki' });
    const text = Buffer.from(cosignedText(note.text, cosigned?.seconds ?? 0));
    expect(holds(null, text, own, cosigned?.bytes ?? new Uint8Array())).toBe(true);

    await write('c', 2);
    const [log, head, witnesses] = [
      newFile(await exported()),
      newFile(both.out),
      newFile(one.public + two.public),
    ];
    const verified = await call(['log', 'verify', log, '--heads', head, '--witness', witnesses]);
    expect(verified).toMatchObject({ code: 0, err: '' });
    const report = JSON.parse(verified.out);
    expect(report.tree).toMatchObject({ size: 9, beginsWithEarlier: true });
    expect(report.witnesses.map(({ name }: { name: string }) => name)).toEqual(['stick.brae', 'other-plant']);
    const alone = await call(['log', 'verify', log, '--heads', head, '--witness', newFile(two.public)]);
    expect(JSON.parse(alone.out).witnesses).toHaveLength(1);
    expect((await call(['log', 'verify', log, '--witness', witnesses])).code).toBe(2);
    expect((await call(['log', 'verify', log, '--heads', head, '--witness', newFile('x')])).code).toBe(2);
  });

  test('refuses a log that was taken back, one that was changed, and a head that the plant did not sign', async () => {
    const witness = await newWitness('w');
    await write('a', 3);
    const older = await headFrom(0);
    await write('b', 4);
    expect((await witness.sign(await headFrom(0))).code).toBe(0);
    const back = await witness.sign(older);
    expect(back).toMatchObject({ code: 1, out: '' });
    expect(back.err).toMatch(
      /had 7 entries when this witness last saw it, and has 3 here: it was taken back/,
    );

    // The plant's own key signs another story, of the same length and of a longer one.
    const { plant: key } = plant.server.running.context.key;
    const other = (size: number) =>
      key.signNote(treeHeadText({ origin: key.ed25519.name, size, root: new Uint8Array(32) }));
    const proof = [new Uint8Array(32), new Uint8Array(32)];
    for (const growth of [
      { old: 7, proof: [], note: other(7) },
      { old: 7, proof, note: other(9) },
    ]) {
      const forked = await witness.sign(formatGrowth(growth));
      expect(forked).toMatchObject({ code: 1, out: '' });
      expect(forked.err).toMatch(/does not begin with the log of 7 entries that this witness signed/);
    }
    const unsigned = (await headFrom(7)).replace('\n7\n', '\n8\n');
    expect((await witness.sign(unsigned)).err).toMatch(/not signed by the plant's key/);
    // What it last signed is as it was: the true log goes on.
    await write('c', 1);
    expect((await witness.sign(await headFrom(7))).code).toBe(0);
  });

  test('says which proof it wants, whose list it wants, and makes no key over another', async () => {
    const witness = await newWitness('w');
    await write('a', 5);
    await witness.sign(await headFrom(0));
    await write('b', 4);
    const wrong = await witness.sign(await headFrom(2));
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('has the proof from 2 entries: expected it from 5');
    const key = newFile();
    await call(['log', 'witness', '--make', 'x', '--key', key]);
    const unknown = await call(['log', 'witness', '--note', newFile(await headFrom(0)), '--key', key]);
    expect(unknown).toMatchObject({ code: 2, out: '' });
    expect(unknown.err).toMatch(
      /saw no head of reelward-[0-9a-f]{16} yet: expected the plant's list of keys/,
    );
    expect(existsSync(`${key}.seen`)).toBe(false);
    const before = readFileSync(key, 'utf8');
    expect((await call(['log', 'witness', '--make', 'y', '--key', key])).code).toBe(2);
    expect(readFileSync(key, 'utf8')).toBe(before);
    expect((await call(['serve', 'head', '99', '--data', plant.server.folder])).code).toBe(2);
    expect((await call(['log', 'witness', '--note', newFile('x'), '--key', key])).code).toBe(2);
  });

  test('a signature in a witness’s name under another head is told', async () => {
    const witness = await newWitness('w');
    await write('a', 3);
    const signed = await witness.sign(await headFrom(0));
    await write('b', 2);
    const key = parseWitnessKey(witness.public.trim());
    const note = parseNote(signed.out);
    const head = parseGrowth(await headFrom(0))?.note;
    const [cosigned] = key && note ? cosignaturesBy(note, key) : [];
    if (!key || !head || !cosigned) throw new Error('not read');
    const moved = addCosignature(head, key, cosigned);
    const { code, err, out } = await call([
      'log',
      'verify',
      newFile(await exported()),
      '--heads',
      newFile(moved),
      '--witness',
      newFile(witness.public),
    ]);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ ok: false, witnesses: [] });
    expect(err).toMatch(/the signature of the witness w does not hold/);
  });
});
