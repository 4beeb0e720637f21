// Tablets as witnesses of the server's log: they sign what they checked, the signatures travel in exports and records and are counted by the
// command line, and a server that shows two tablets two logs is found out where one brings what it was shown to the other.

import { cpSync } from 'node:fs';
import { request as ask, createServer, type Server } from 'node:http';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { parseNote } from '../../../shared/log/note.ts';
import { parsePlantList } from '../../../shared/log/plant-list.ts';
import { type ExportProof, makeProofRecord, readProofRecord } from '../../../shared/log/proof-record.ts';
import { tabletsSaid } from '../../../shared/log/tablet-cosignature.ts';
import { parseTreeHead } from '../../../shared/log/tree-head.ts';
import { cosignedSchema } from '../../../shared/wire/messages-heads.ts';
import { makeTicket } from '../../../src/server/codes.ts';
import { signatureHolds } from '../../../src/server/keys.ts';
import { type RunningServer, startServer } from '../../../src/server/main.ts';
import { signedKeys } from '../../../src/server/plant-key.ts';
import { call } from '../../cli/call.ts';
import { newFiles } from '../../cli/new-file.ts';
import { freePort, newFolder } from '../../contract/databases.ts';
import { makeChain, toChecked } from '../../contract/entries.ts';
import { enrolAt, newTablet, settingsFor, type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();
const newFile = newFiles('witnesses');
let others: RunningServer[];
let between: Server[];

beforeEach(() => {
  others = [];
  between = [];
});
afterEach(async () => {
  for (const tablet of plant.tablets) await tablet.stop();
  for (const one of between) {
    one.closeAllConnections();
    one.close();
  }
  for (const other of others) await other.stop();
});

/** Something in between that hands each request to the server that `route` says. */
async function through(route: () => string): Promise<string> {
  const server = createServer((request, response) => {
    const { method, headers } = request;
    const onward = ask(route() + request.url, { method, headers }, (answer) => {
      response.writeHead(answer.statusCode ?? 500, answer.headers);
      answer.pipe(response);
      response.on('close', () => answer.destroy());
    });
    onward.on('error', () => response.destroy());
    request.pipe(onward);
  });
  between.push(server);
  const port = await freePort();
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return `http://127.0.0.1:${port}`;
}

async function joinThrough(name: string, route: () => string): Promise<TestTablet> {
  const tablet = await newTablet(name, await through(route));
  plant.tablets.push(tablet);
  await enrolAt(plant.server.running, tablet);
  return tablet;
}

const appendTo = (server: RunningServer, count: number, tablet = 'o') =>
  server.store.append(
    [{ sender: tablet, entries: makeChain({ tablet, count }).map((entry) => toChecked(entry)) }],
    Date.now(),
  );

async function restart(tablet: TestTablet): Promise<void> {
  await tablet.stop();
  tablet.start();
}

/** Signatures of tablets under heads that the server keeps, checked by its own list. */
async function signers(server: RunningServer): Promise<readonly [tablet: string, size: number][]> {
  const tree = await server.store.tree();
  const { key, witnesses } = server.context;
  const list = await signedKeys(server.store, key.plant, { plant: 'Brae Works', nowMs: Date.now() });
  const keys = parsePlantList(parseNote(list)?.text ?? '')?.keys ?? [];
  const held = tree ? await witnesses.held(tree) : [];
  return held.flatMap(({ size, note }) => {
    const read = parseNote(note);
    return (read ? tabletsSaid(read, keys) : [])
      .filter(({ listed, text, sig }) => signatureHolds(listed.key, text, sig))
      .map(({ listed }): [string, number] => [listed.tablet, size]);
  });
}

async function exported(server: RunningServer): Promise<string> {
  const wish = { format: 'json', from: null, to: null, line: null } as const;
  const { path: link } = await makeTicket(server.store, wish, server.context.nowMs());
  return (await fetch(server.url + link)).text();
}

async function verify(text: string, ...more: readonly string[]) {
  const { code, out, err } = await call(['log', 'verify', '-', ...more], text);
  return { code, err, report: code === 2 ? null : JSON.parse(out) };
}

describe('tablets as witnesses', () => {
  it('sign one head together, and exports, records and the command line count them by the plant’s list', async () => {
    const [a, b] = [await plant.join('a'), await plant.join('b')];
    await appendTo(plant.server.running, 5);
    a.start();
    await until('a to sign', async () => (await signers(plant.server.running)).length === 1);
    b.start();
    await until('b to sign', async () => (await signers(plant.server.running)).length === 2);
    const [[, size] = ['', 0]] = await signers(plant.server.running);
    expect(await signers(plant.server.running)).toEqual([
      ['a', size],
      ['b', size],
    ]);
    await appendTo(plant.server.running, 4, 'p');
    const file = await exported(plant.server.running);
    const { code, err, report } = await verify(file);
    expect([code, report.seenBy.map((one: { tablet: string }) => one.tablet).sort()]).toEqual([
      0,
      ['a', 'b'],
    ]);
    expect(err).toContain('seen by 2 tablets: a, b');
    expect(report.seenBy[0].size).toBe(size);
    expect(report.tree.size).toBe(9);
    // A record of what they saw carries them; one of what came later is proven without.
    const export_ = newFile(file);
    const { out } = await call(['log', 'record', export_, '--entry', 'o/e1/1']);
    const keys = newFile((await call(['serve', 'keys', '--data', plant.server.folder])).out);
    const seen = await call(['log', 'verify', '--record', '-', '--keys', keys], out);
    expect(JSON.parse(seen.out)).toMatchObject({ ok: true, proven: 1, place: { size } });
    expect(JSON.parse(seen.out).seenBy).toHaveLength(2);
    const later = await call(['log', 'record', export_, '--entry', 'p/e1/4']);
    const plain = await call(['log', 'verify', '--record', '-', '--keys', keys], later.out);
    expect(JSON.parse(plain.out)).toMatchObject({ ok: true, proven: 1, seenBy: [] });
  });

  it('count for nothing where the plant’s list does not name them, and break the file where they do not hold', async () => {
    const a = await plant.join('a');
    await appendTo(plant.server.running, 3);
    a.start();
    await until('a to sign', async () => (await signers(plant.server.running)).length === 1);
    const file = await exported(plant.server.running);
    const lines = file.trimEnd().split('\n');
    const line = JSON.parse(lines.at(-1) ?? '') as Entry; // the plant's line is the last
    const proof = readProofRecord(line);
    const [{ head, proof: growth } = { head: '', proof: '' }] = proof?.witnessed ?? [];
    const changed = (note: string) => {
      const told = { keys: proof?.keys ?? '', tree: proof?.tree, witnessed: [{ head: note, proof: growth }] };
      const sealed = makeProofRecord(told as ExportProof, { epoch: line.epoch, atMs: line.hlc.ms }); // the file has a tree
      return [...lines.slice(0, -1), JSON.stringify(sealed)].join('\n');
    };
    expect((await verify(changed(head))).report.seenBy).toHaveLength(1);
    const signatureLines = head.trimEnd().split('\n');
    const own = signatureLines.at(-1) ?? '';
    const [dash, name, base64 = ''] = own.split(' ');
    expect(name).toBe('a');
    // Under another name: nobody's.
    const unknown = head.replace(own, `${dash} mallory ${base64}`);
    expect((await verify(changed(unknown))).report.seenBy).toEqual([]);
    // Its own name with another signature.
    const bytes = Buffer.from(base64, 'base64');
    bytes[bytes.length - 1] = (bytes.at(-1) ?? 0) ^ 1;
    const forged = head.replace(base64, bytes.toString('base64'));
    const { code, err } = await verify(changed(forged));
    expect([code, err]).toEqual([
      1,
      expect.stringContaining('the signature of the tablet a under a head does not hold'),
    ]);
    // A head of another log, with the plant's signatures gone.
    const other = head.replace(/\n[^\n]+\n\n/, `\n${Buffer.alloc(32, 7).toString('base64')}\n\n`);
    expect((await verify(changed(other))).code).toBe(1);
  });

  it('a signature that is not over the head that is put up, or by another tablet, is not kept', async () => {
    const [a, b] = [await plant.join('a'), await plant.join('b')];
    a.log.write(3);
    a.start();
    await until('a to sign', async () => (await signers(plant.server.running)).length === 1);
    const [[, size] = ['', 0]] = await signers(plant.server.running);
    const sig = await b.key.sign('something else');
    for (const json of [
      { size, seconds: 1, sig },
      { size: size + 1, seconds: 1, sig },
    ])
      expect(await b.caller.call('/api/witness', cosignedSchema, { json })).toMatchObject({
        ok: true,
        value: { kept: false },
      });
    expect(await signers(plant.server.running)).toHaveLength(1);
  });

  it('sign nothing where the log was taken back, until somebody took note', async () => {
    const a = await plant.join('a');
    await appendTo(plant.server.running, 3);
    a.log.memory = { ...a.log.memory, rolledBackMs: 1 };
    a.start();
    await until('a head', () => a.log.memory.head !== null);
    const before = a.log.memory.head;
    await appendTo(plant.server.running, 2, 'p');
    await restart(a);
    await until('a later head', () => a.log.memory.head !== before);
    await a.stop();
    expect(await signers(plant.server.running)).toEqual([]);
    a.log.memory = { ...a.log.memory, rolledBackMs: null };
    a.start();
    await until('a to sign', async () => (await signers(plant.server.running)).length === 1);
  });

  it('find out a server that shows two of them two logs, where either brings what the other was shown', async () => {
    let forked: RunningServer | null = null;
    const a = await joinThrough('a', () => plant.server.running.url);
    const b = await joinThrough('b', () => forked?.url ?? plant.server.running.url);
    a.log.write(5);
    const sizeOf = (tablet: TestTablet) =>
      parseTreeHead(parseNote(tablet.log.memory.head ?? '')?.text ?? '')?.size ?? 0;
    // One after the other: each asks for a head once it is in step, and then not for minutes.
    for (const tablet of [a, b]) {
      tablet.start();
      await until(`the log for ${tablet.name}`, () => sizeOf(tablet) === 5);
    }
    await a.stop();
    await b.stop();
    // From here on each is shown a log of its own, which grows by itself and proves that it does.
    const folder = newFolder();
    await plant.server.restart(() => cpSync(plant.server.folder, folder.path, { recursive: true }));
    const other = await startServer(settingsFor(folder.path));
    others.push(other);
    forked = other;
    await appendTo(plant.server.running, 3, 'x');
    await appendTo(other, 4, 'y');
    a.start();
    b.start();
    await until('both logs', () => sizeOf(a) === 8 && sizeOf(b) === 9);
    expect([a.status()?.headFault, b.status()?.headFault]).toEqual([null, null]);
    const [headA, headB] = [a.log.memory.head ?? '', b.log.memory.head ?? ''];
    expect(await a.bring(headA)).toBe('one-log');
    expect(await b.bring(headA)).toBe('not-one-log');
    expect(b.status()?.headFault?.code).toBe('forked');
    expect(await a.bring(headB)).toBe('not-one-log');
    expect(a.status()?.headFault ?? a.status()?.rolledBackMs).not.toBeNull();
    // Another plant's paper is no news of this one.
    expect(await a.bring('x\n1\nAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA=\n\n— x AAAAAAAA\n')).toBe(
      'not-the-plants',
    );
  });
});
