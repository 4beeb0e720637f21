// The papers that people keep (changeover, first panel, splice, containment, measured reel, handover), by a real server: each is proven as the page
// does it and drawn as the page draws it, its code is read by another decoder than drew it, and the command line proves it without the log.

import '../store/browser.ts';

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { VNode } from 'preact';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import type { EntryKind, PayloadOf } from '../../../../shared/floor/kinds.ts';
import { isKeptOnPaper } from '../../../../shared/floor/printed-kinds.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { plantKeysSchema } from '../../../../shared/wire/messages.ts';
import { Record } from '../../../../src/app/print/Record.tsx';
import { paperProof } from '../../../../src/app/print/record-proof.ts';
import { CacheDatabase } from '../../../../src/app/store/database.ts';
import { keptRecord, recordPort } from '../../../../src/app/store/records.ts';
import { askRecord } from '../../../../src/app/sync/records.ts';
import { fetchEveryArea, fetchWords } from '../../../../src/app/words/fetch.ts';
import { call } from '../../../cli/call.ts';
import { newFiles } from '../../../cli/new-file.ts';
import { payloadExamples } from '../../../shared/floor/examples.ts';
import { verified } from '../../../shared/floor/story.ts';
import { joinChain, type TestChain } from '../../server/chains.ts';
import { newClock, startTestServer, type TestServer } from '../../server/tablets.ts';

/** The kinds of which a paper is kept, each once; and a splice, of which the act says that it is one. */
const kinds = [
  'changeover.released',
  'changeover.left-open',
  'checklist.closed',
  'step.signed',
  'panel.measured',
  'panel.looked',
  'reel.measured',
  'panels.contained',
  'containment.signed',
  'shift.handed',
  'shift.taken',
] as const satisfies readonly EntryKind[];

const newFile = newFiles('paper');
let server: TestServer;
let chain: TestChain;
let list: string;
let keys: string;
const cache = new CacheDatabase('papers');
const acked = () => ({ 'front/e1': chain.entries.length });
const port = recordPort(
  cache,
  () => ({ tablet: 'front', epoch: 'e1' }),
  async (_, seq, limit) => chain.entries.slice(seq, seq + limit),
);
/** The numbers of the entries whose proofs the tablet asked for. */
let asked: readonly number[] = [];

beforeAll(async () => {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });
  await fetchWords('en');
  await fetchEveryArea('en');
  const clock = newClock();
  server = await startTestServer({ clock });
  chain = await joinChain(server.running, 'front', clock);
  const tell = <K extends EntryKind>(kind: K, payload: PayloadOf<K>) =>
    chain.tell(kind, payload, { who: 'ana' });
  await tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  await tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K2', act: 'splice' }));
  for (const kind of kinds) await tell(kind, payloadExamples[kind] as PayloadOf<typeof kind>);
  await chain.push();
  const told = await chain.tablet.caller.call('/api/keys', plantKeysSchema);
  if (!told.ok) throw new Error(told.error.code);
  keys = told.value.keys;
  const wanted = await port.wanted(acked());
  asked = wanted.map(({ seq }) => seq);
  for (const name of wanted) {
    const record = await askRecord(chain.tablet.caller, server.running.context.key.publicKey, name);
    if (record === null || record === 'not-there' || 'code' in record)
      throw new Error(`no proof of ${name.seq}`);
    await port.keep(entryId(name), record);
  }
  list = newFile((await call(['serve', 'keys', '--data', server.folder])).out);
});
afterAll(() => server.stop());

/** What a drawing of the page comes to: its parts, those that functions make included. */
function* partsOf(node: unknown): Generator<VNode<Readonly<{ [name: string]: unknown }>>> {
  if (Array.isArray(node)) for (const each of node) yield* partsOf(each);
  if (typeof node !== 'object' || node === null || !('type' in node)) return;
  const part = node as VNode<Readonly<{ [name: string]: unknown }>>; // a part of preact's, as drawn
  if (typeof part.type === 'function') {
    yield* partsOf((part.type as (props: object) => unknown)(part.props));
    return;
  }
  yield part;
  yield* partsOf(part.props['children']);
}

/** The code on the paper as a camera's picture: three dots a square. */
function pictureOf(viewBox: string, path: string) {
  const [from = 0, , side = 0] = viewBox.split(' ').map(Number);
  const [scale, width] = [3, side * 3];
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y, long] of path.matchAll(/M(\d+) (\d+)h(\d+)v1/g))
    for (let dy = 0; dy < scale; dy += 1)
      for (let dx = 0; dx < Number(long) * scale; dx += 1) {
        const at = (((Number(y) - from) * scale + dy) * width + (Number(x) - from) * scale + dx) * 4;
        data.fill(0, at, at + 3);
      }
  return { data, width, height: width, colorSpace: 'srgb' as const };
}

/** The entry on paper by its kept proof: what a scanner reads off it. */
async function scanned(entry: Entry): Promise<string> {
  const record = await keptRecord(cache, entryId(entry));
  const proof = record && (await paperProof(entry, record, keys));
  if (!proof) throw new Error(`no proof of ${entry.kind}`);
  const paper = Record({ title: entry.kind, facts: [], hash: entry.hash, told: [], proof });
  const parts = [...partsOf(paper)];
  const of = (type: string, name: string) =>
    String(parts.find((part) => part.type === type)?.props[name] ?? '');
  const picture = pictureOf(of('svg', 'viewBox'), of('path', 'd'));
  const found = await readBarcodes(picture, { formats: ['QRCode'], textMode: 'Plain', tryHarder: true });
  expect(found).toHaveLength(1);
  return found[0]?.text ?? '';
}

describe('the papers that people keep', () => {
  test('are those of these entries and of no other, and a tablet keeps the proof of each', async () => {
    const kept = chain.entries.filter(isKeptOnPaper);
    expect(kept.map(({ kind, payload }) => (kind === 'reel.verified' ? payload['act'] : kind))).toEqual([
      'splice',
      ...kinds,
    ]);
    expect(asked).toEqual(kept.map(({ seq }) => seq));
    expect(await port.wanted(acked())).toEqual([]);
  });

  test.each([['splice', 'reel.verified'] as const, ...kinds.map((kind) => [kind, kind] as const)])(
    'of a %s is read off the page and proven without the log',
    async (_, kind) => {
      const entry = chain.entries.filter(isKeptOnPaper).find((one) => one.kind === kind);
      if (!entry) throw new Error(`no ${kind}`);
      const text = await scanned(entry);
      const { code, out, err } = await call(['log', 'verify', '--record', '-', '--keys', list], text);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      const { hash, payload } = entry;
      const report = JSON.parse(out);
      expect(report).toMatchObject({ ok: true, proven: 1, claimed: 0, hash });
      // A long one is proven by its hash.
      if (report.entry !== null) expect(report.entry).toMatchObject({ kind, payload });
      // A letter of the paper changed, and it proves nothing.
      const bent = text.replace(
        /^extra (.{40})(.)/m,
        (_, before, one) => `extra ${before}${one === 'A' ? 'B' : 'A'}`,
      );
      expect(bent).not.toBe(text);
      const changed = await call(['log', 'verify', '--record', '-', '--keys', list], bent);
      expect(changed.code).not.toBe(0);
    },
  );
});
