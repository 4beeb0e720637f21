// What `reelward log verify` calls proven: attacks on an export of a real server's log, by whoever holds the file.

import { describe, expect, test } from 'vitest';
import { verifyChains } from '../../shared/log/chain.ts';
import type { Entry, JsonObject } from '../../shared/log/entry.ts';
import { entrySchema } from '../../shared/log/entry-schema.ts';
import { parsePlantList, plantListText } from '../../shared/log/plant-list.ts';
import { makeProofRecord, proofKind } from '../../shared/log/proof-record.ts';
import { hashDraft, sealEntry } from '../../shared/log/seal.ts';
import { treeHeadText } from '../../shared/log/tree-head.ts';
import type { ExportRequest } from '../../shared/wire/messages.ts';
import { pushedSchema } from '../../shared/wire/messages.ts';
import { entryText } from '../../shared/wire/signing.ts';
import { makeTicket } from '../../src/server/codes.ts';
import { openServerKey } from '../../src/server/keys.ts';
import { makeChain, newKey, type TestKey, toChecked } from '../contract/entries.ts';
import { until } from '../src/server/tablets.ts';
import { usePlant } from '../src/server/use-plant.ts';
import { call } from './call.ts';
import { newFiles } from './new-file.ts';

const plant = usePlant();
const fileOf = newFiles('proven');

/** A log of two tablets that the server knows and of one that it does not, as the server exports it. */
async function exported(format: 'json' | 'csv' = 'json'): Promise<string> {
  for (const name of ['t1', 't2']) {
    const tablet = await plant.join(name);
    tablet.log.write(3);
    // A stranger's chain, brought along by one who may.
    if (name === 't2') await tablet.log.takeIn(makeChain({ tablet: 'stranger', count: 2, key: newKey() }));
    tablet.start();
  }
  const { store, context, url } = plant.server.running;
  await until('all entries', async () => (await store.head()).pos === 8);
  const wish = { format, from: null, to: null, line: null };
  const { path: link } = await makeTicket(store, wish, context.nowMs());
  return (await fetch(url + link)).text();
}

async function verdictOn(text: string, ...more: readonly string[]) {
  const { code, out, err } = await call(['log', 'verify', '-', ...more], text);
  return { code, err, report: code === 2 ? null : JSON.parse(out) };
}

const linesOf = (text: string) =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry);
const textOf = (entries: readonly Entry[]) => entries.map((entry) => `${JSON.stringify(entry)}\n`).join('');
const fingerprint = () => plant.server.running.context.key.plant.fingerprint;

/** A plant of the attacker's own, with a list that names the attacker's key for a tablet. */
async function otherList(tablet: string, key: TestKey): Promise<string> {
  const values = new Map<string, string>();
  const own = await openServerKey({
    keepMeta: async (name, value) => {
      if (!values.has(name)) values.set(name, value);
      return values.get(name) ?? value;
    },
  });
  const since = '2026-01-01T00:00:00Z';
  const keys = [{ tablet, key: key.publicKey, since, until: null }];
  return own.plant.signNote(
    plantListText({ plantKey: own.plant.ed25519, plant: 'Brae Works', at: since, keys }),
  );
}

describe('reelward log verify', () => {
  test('proves what is signed by keys of the list in the export, and says by whose; the rest is claimed', async () => {
    const { code, err, report } = await verdictOn(await exported());
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(report).toMatchObject({
      entries: 8,
      tablets: 3,
      ok: true,
      firstBroken: null,
      proven: 6,
      claimed: 2,
    });
    expect(report.plant).toMatchObject({ name: 'Brae Works', fingerprint: fingerprint() });
    expect(report.keysFrom).toBe('export');
    expect(report.provenBy.map((by: { tablet: string; entries: number }) => [by.tablet, by.entries])).toEqual(
      [
        ['t1', 3],
        ['t2', 3],
      ],
    );
    expect(report.claims).toEqual([
      { tablet: 'stranger', epoch: 'e1', why: 'tablet-not-listed', entries: 2, broughtBy: 't2' },
    ]);
  });

  test('claims all of a log without a list, and proves it by --keys, whatever its form', async () => {
    const csv = await exported('csv');
    expect((await verdictOn(csv)).report).toMatchObject({ ok: true, proven: 0, claimed: 8, plant: null });
    const printed = await call(['serve', 'keys', '--data', plant.server.folder, '--plant', 'Brae Works']);
    expect(printed).toMatchObject({ code: 0, err: `The plant's key: ${fingerprint()}\n` });
    const given = await verdictOn(csv, '--keys', fileOf(printed.out));
    expect(given.report).toMatchObject({ ok: true, proven: 6, claimed: 2, keysFrom: 'given' });
    const own = { keys: [{ tablet: 't1', key: plant.tablets[0]?.key.publicKey }] };
    const plain = await verdictOn(csv, '--keys', fileOf(JSON.stringify(own)));
    expect(plain.report).toMatchObject({ ok: true, proven: 3, claimed: 5, plant: null, keysFrom: 'given' });
  });

  test('takes no key from the file: a chain made up with its own key in its first entry is claimed', async () => {
    const key = newKey();
    const point = Buffer.from(key.publicKey, 'base64url');
    const jwk = {
      kty: 'EC',
      crv: 'P-256',
      x: point.subarray(1, 33).toString('base64url'),
      y: point.subarray(33).toString('base64url'),
    };
    const forged = makeChain({
      tablet: 't1',
      count: 4,
      key,
      kind: 'tablet.opened',
      payload: () => ({ key: jwk }),
    });
    const lone = await verdictOn(textOf(forged));
    expect(lone.code).toBe(0);
    expect(lone.report).toMatchObject({ ok: true, proven: 0, claimed: 4, plant: null });
    expect(lone.report.claims[0].why).toBe('own-word-for-its-key');
    // In the true tablet's name, beside the plant's true list.
    const lines = linesOf(await exported());
    const put = [...lines.filter(({ tablet }) => tablet !== 't1'), ...forged];
    expect((await verdictOn(textOf(put))).report).toMatchObject({ proven: 3, claimed: 6 });
  });

  test('answers no where the list was changed, and takes no key of it', async () => {
    const lines = linesOf(await exported());
    const thief = newKey();
    const honest = plant.tablets[0]?.key.publicKey ?? '';
    const record = lines.at(-1) as Entry; // the plant's line is the last
    const keys = String(record.payload['keys']).replace(honest, thief.publicKey);
    const altered = sealEntry({ ...record, payload: { keys } });
    const { code, err, report } = await verdictOn(textOf([...lines.slice(0, -1), altered]));
    expect(code).toBe(1);
    expect(report).toMatchObject({ ok: false, proven: 0, claimed: 8, plant: null });
    expect(err).toMatch(/list of keys was changed/);
    const unread = sealEntry({ ...record, payload: {} });
    expect((await verdictOn(textOf([unread]))).code).toBe(1);
    const unsealed = { ...record, payload: { keys } };
    const loose = await verdictOn(textOf([...lines.slice(0, -1), unsealed]));
    expect(loose.report.firstBroken).toMatchObject({ tablet: '(plant)', fault: 'hash-differs' });
    const twice = await verdictOn(textOf([...lines, record]));
    expect(twice.report.firstBroken).toMatchObject({ tablet: '(plant)', fault: 'doubled' });
  });

  test("names another plant's key where somebody put a list of their own, and answers no to --plant", async () => {
    const thief = newKey();
    const keys = await otherList('t1', thief);
    const chain = makeChain({ tablet: 't1', count: 3, key: thief });
    const text = textOf([...chain, makeProofRecord({ keys }, { epoch: 'e', atMs: 1_000 })]);
    const alone = await verdictOn(text);
    expect(alone.report).toMatchObject({ proven: 3, plant: { name: 'Brae Works' } });
    expect(alone.report.plant.fingerprint).not.toBe(fingerprint());
    const asked = await verdictOn(text, '--plant', fingerprint().replaceAll(':', '').toLowerCase());
    expect(asked.code).toBe(1);
    expect(asked.report).toMatchObject({ ok: false, proven: 0, claimed: 3 });
    expect(asked.err).toContain(fingerprint());
    expect((await verdictOn(await exported(), '--plant', fingerprint())).report).toMatchObject({ proven: 6 });
    expect((await verdictOn(text, '--plant', 'abc')).code).toBe(2);
    expect((await verdictOn(text, '--keys', fileOf('no list'))).code).toBe(2);
    expect((await verdictOn(text, '--keys', fileOf('{"keys":[{"tablet":"t1","key":"no"}]}'))).code).toBe(2);
  });

  test('proves no entry whose text was changed under its old hash and signature, nor one cut off from its signature', async () => {
    const lines = linesOf(await exported());
    // Three were written and sent at once: the last is the head, which vouches for the two before it.
    const last = lines.filter(({ tablet }) => tablet === 't1').at(-1) as Entry;
    const swap = (entry: Entry) => textOf(lines.map((one) => (one === last ? entry : one)));
    const [first] = lines.filter(({ tablet }) => tablet === 't1') as [Entry];
    const covered = await verdictOn(
      textOf(lines.map((one) => (one === first ? { ...first, payload: { text: 'bent' } } : one))),
    );
    expect(covered.report).toMatchObject({ proven: 5, claimed: 3, firstBroken: { fault: 'hash-differs' } });
    const bent = await verdictOn(swap({ ...last, payload: { text: 'bent' } }));
    expect(bent.code).toBe(1);
    expect(bent.report).toMatchObject({ proven: 3, claimed: 5, firstBroken: { fault: 'hash-differs' } });
    const draft = { ...last, payload: { text: 'bent' } };
    const sealed = await verdictOn(swap({ ...draft, hash: hashDraft(draft) }));
    expect(sealed.code).toBe(1);
    expect(sealed.report).toMatchObject({ proven: 3, firstBroken: { fault: 'signature-differs' } });
    const bare = await verdictOn(swap({ ...last, sig: null }));
    expect(bare.report).toMatchObject({ proven: 3, claimed: 5 });
    expect(bare.report.claims.map((claim: { why: string }) => claim.why)).toContain('not-signed');
  });

  test('only claims what a tablet signed after it was shut out', async () => {
    await exported();
    const { store, context } = plant.server.running;
    await store.revokeTablet('t2', Date.parse('2026-03-02T06:00:02.500Z'));
    const keys = (await call(['serve', 'keys', '--data', plant.server.folder])).out;
    expect(parsePlantList(keys.slice(0, keys.lastIndexOf('\n\n') + 1))?.keys.map((key) => key.until)).toEqual(
      [null, '2026-03-02T06:00:02.500Z'],
    );
    const { path: link } = await makeTicket(
      store,
      { format: 'json', from: null, to: null, line: null },
      context.nowMs(),
    );
    const { report } = await verdictOn(await (await fetch(plant.server.running.url + link)).text());
    // The head stands at the third, which is later: nothing signed in time vouches for the two before it.
    expect(report).toMatchObject({ proven: 3, claimed: 5 });
    expect(report.claims).toContainEqual({
      tablet: 't2',
      epoch: 'e1',
      why: 'shut-out-before',
      entries: 3,
      broughtBy: null,
    });
  });

  test('keeps the list through an export of a part, and a reader that knows none of it still finds the file whole', async () => {
    const text = await exported();
    const file = fileOf(text);
    const part = await call(['log', 'export', file, '--format', 'json', '--from', '2026-03-02T06:00:02Z']);
    expect((await verdictOn(part.out)).report).toMatchObject({ ok: true, proven: 4, claimed: 1, omitted: 3 });
    // As every earlier reader did it: each line an entry by the schema, each chain whole.
    const entries = linesOf(text).map((line) => entrySchema.parse(line));
    expect(verifyChains(entries)).toMatchObject({ ok: true, entries: 9 });
  });
});

describe('the head in an export', () => {
  test('proves that the file is the whole log up to it, and is kept for later', async () => {
    const { report } = await verdictOn(await exported());
    const { root, head, ...counts } = report.tree;
    expect(counts).toEqual({ size: 8, entries: 8, leftOut: 0, beyond: 0, beginsWithEarlier: null });
    const tree = await plant.server.running.store.tree();
    expect(root).toBe(Buffer.from(tree?.root ?? '', 'hex').toString('base64'));
    expect(head.split('\n').slice(1, 3)).toEqual(['8', root]);
  });

  test('proves a part that the server left the rest out of, and a part of that part', async () => {
    await exported();
    const { store, context, url } = plant.server.running;
    const wish = { format: 'json', from: '2026-03-02T06:00:02Z', to: null, line: null } as const;
    const { path: link } = await makeTicket(store, wish, context.nowMs());
    const text = await (await fetch(url + link)).text();
    const part = await verdictOn(text);
    expect(part.code).toBe(0);
    expect(part.report.tree).toMatchObject({ size: 8, entries: 5, leftOut: 3, beyond: 0 });
    const less = await call([
      'log',
      'export',
      fileOf(text),
      '--format',
      'json',
      '--to',
      '2026-03-02T06:00:02Z',
    ]);
    const lessPart = await verdictOn(less.out);
    expect(lessPart).toMatchObject({ code: 0, err: '' });
    expect(lessPart.report.tree).toMatchObject({ size: 8, entries: 3, leftOut: 5, beyond: 0 });
  });

  test('shows a cut-off end, which no chain shows by itself, and names what is gone', async () => {
    const lines = linesOf(await exported());
    const cut = lines.filter((entry) => !(entry.tablet === 't2' && entry.seq === 3));
    const { code, err, report } = await verdictOn(textOf(cut));
    expect(code).toBe(1);
    expect(report).toMatchObject({ ok: false, firstBroken: null, tree: null });
    expect(err).toMatch(/entry t2\/e1\/3 is in the plant's log/);
  });

  test('shows a chain that the holder of a tablet’s own key made anew', async () => {
    const text = await exported();
    const key = plant.tablets[0]?.key;
    if (!key) throw new Error('no tablet');
    const anew = await Promise.all(
      makeChain({ tablet: 't1', count: 3, payload: () => ({ text: 'another story' }) }).map(
        async (entry) => ({
          ...entry,
          sig: await key.sign(entryText(entry.hash)),
        }),
      ),
    );
    const forged = textOf([...linesOf(text).filter(({ tablet }) => tablet !== 't1'), ...anew]);
    const { code, err, report } = await verdictOn(forged);
    expect(report).toMatchObject({ proven: 6, firstBroken: null, ok: false, tree: null });
    expect(code).toBe(1);
    expect(err).toMatch(/not those of the log whose head the plant signed/);
  });

  test('shows against a head kept elsewhere that the log went on, or that it was changed or went back since', async () => {
    const before = await exported();
    const kept = fileOf((await call(['log', 'verify', '-'], before)).out);
    const { store, context, url } = plant.server.running;
    const wish = { format: 'json', from: null, to: null, line: null } as const;
    const fetchNow = async (change: Partial<ExportRequest> = {}) => {
      const { path: link } = await makeTicket(store, { ...wish, ...change }, context.nowMs());
      return (await fetch(url + link)).text();
    };
    await store.append(
      [{ sender: 'x', entries: makeChain({ tablet: 'x', count: 3 }).map((one) => toChecked(one)) }],
      1,
    );
    const now = await fetchNow();
    expect((await verdictOn(now, '--heads', kept)).report).toMatchObject({
      ok: true,
      tree: { beginsWithEarlier: true },
    });
    const part = await verdictOn(await fetchNow({ from: '2026-03-02T06:00:03Z' }));
    expect(part.report.tree.beginsWithEarlier).toBeNull();
    const later = fileOf((await call(['log', 'verify', '-'], now)).out);
    const back = await verdictOn(before, '--heads', later);
    expect(back.code).toBe(1);
    expect(back.err).toMatch(/had 11 entries at the earlier head, and has 8 now/);
    // The plant's own key signs another story of the same length.
    const { plant: key } = context.key;
    const head = { origin: key.ed25519.name, size: 8, root: new Uint8Array(32) };
    const other = JSON.stringify({ heads: [], tree: { head: key.signNote(treeHeadText(head)) } });
    const changed = await verdictOn(now, '--heads', fileOf(other));
    expect(changed.code).toBe(1);
    expect(changed.err).toMatch(/does not begin with that of the earlier head/);
  });

  test('counts what was written after it apart, and answers no to a head or a cover that was changed', async () => {
    const lines = linesOf(await exported());
    const record = lines.at(-1) as Entry; // the plant's line is the last
    const later = makeChain({ tablet: 'new', count: 2 });
    expect((await verdictOn(textOf([...lines, ...later]))).report.tree).toMatchObject({
      entries: 8,
      beyond: 2,
    });
    const tree = record.payload['tree'] as Record<string, string>; // as the server writes it
    const changes = [
      { ...tree, head: tree['head']?.replace('\n8\n', '\n9\n') },
      { ...tree, head: 'none' },
      { ...tree, cover: Buffer.alloc(32).toString('base64') },
      { ...tree, at: {} },
      { ...tree, at: { 't1/e1': '1@0+3 1@2+1' } },
      { ...tree, at: { 't1/e1': '1@0+999999999999999' } },
    ];
    for (const change of changes) {
      const altered = sealEntry({ ...record, payload: { ...record.payload, tree: change as JsonObject } });
      const { code, err } = await verdictOn(textOf([...lines.slice(0, -1), altered]));
      expect(code, JSON.stringify(change)).toBe(1);
      expect(err).toMatch(/the log's tree/);
    }
  });
});

describe('a tablet', () => {
  test("cannot write the plant's line itself", async () => {
    const tablet = await plant.join('t1');
    const [entry] = makeChain({ tablet: 't1', count: 1, kind: proofKind });
    if (!entry) throw new Error('one was asked for');
    const signed = { ...entry, sig: await tablet.key.sign(entryText(entry.hash)) };
    const pushed = await tablet.caller.call('/api/push', pushedSchema, {
      json: { sentMs: 1, entries: [signed] },
    });
    expect(pushed).toMatchObject({ ok: true, value: { faults: [{ id: 't1/e1/1', fault: 'name-taken' }] } });
  });
});
