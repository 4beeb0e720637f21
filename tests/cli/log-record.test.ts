// One entry on paper: it is proven without the log, a changed one is not, and what a camera reads off the page is what was printed.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { formatEntryProof, parseEntryProof } from '../../shared/log/entry-proof.ts';
import { treeHeadText } from '../../shared/log/tree-head.ts';
import { makeTicket } from '../../src/server/codes.ts';
import { makeChain, toChecked } from '../contract/entries.ts';
import { usePlant } from '../src/server/use-plant.ts';
import { call } from './call.ts';
import { newFiles } from './new-file.ts';

const plant = usePlant();
const newFile = newFiles('record');

async function exported(count = 11, payload?: (seq: number) => { text: string }): Promise<string> {
  const { store, context, url } = plant.server.running;
  for (const tablet of ['a', 'b']) {
    const entries = makeChain({ tablet, count, ...(payload ? { payload } : {}) }).map((entry) =>
      toChecked(entry),
    );
    await store.append([{ sender: tablet, entries }], 1);
  }
  const wish = { format: 'json', from: null, to: null, line: null } as const;
  const { path: link } = await makeTicket(store, wish, context.nowMs());
  return newFile(await (await fetch(url + link)).text());
}
const listOf = async () => newFile((await call(['serve', 'keys', '--data', plant.server.folder])).out);
async function verdictOn(text: string, ...more: readonly string[]) {
  const { code, out, err } = await call(['log', 'verify', '--record', '-', ...more], text);
  return { code, err, report: code === 2 ? null : JSON.parse(out) };
}

beforeAll(async () => {
  const file = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  const wasm = readFileSync(file);
  await prepareZXingModule({
    overrides: { wasmBinary: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) },
    fireImmediately: true,
  });
});

/** The drawing on the page as a camera's picture: three dots a module. */
function pictureOf(page: string) {
  const side = Number(/viewBox="-4 -4 (\d+)/.exec(page)?.[1]);
  const [scale, width] = [3, side * 3];
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y] of page.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
    for (let dy = 0; dy < scale; dy += 1)
      for (let dx = 0; dx < scale; dx += 1) {
        const at = (((Number(y) + 4) * scale + dy) * width + (Number(x) + 4) * scale + dx) * 4;
        data.fill(0, at, at + 3);
      }
  return { data, width, height: width, colorSpace: 'srgb' as const };
}

describe('reelward log record', () => {
  test('of every entry of a log is proven by the plant’s list, without the log', async () => {
    const log = await exported();
    const list = await listOf();
    for (const id of ['a/e1/1', 'a/e1/11', 'b/e1/6', 'b/e1/11']) {
      const { code, out, err } = await call(['log', 'record', log, '--entry', id]);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      const verdict = await verdictOn(out, '--keys', list);
      expect(verdict).toMatchObject({ code: 0, err: '' });
      expect(verdict.report).toMatchObject({ ok: true, proven: 1, claimed: 0, id, keysFrom: 'given' });
      expect(verdict.report.place.size).toBe(22);
      // Line ends as another system writes them, and nothing at the end.
      expect((await verdictOn(out.trimEnd().replaceAll('\n', '\r\n'), '--keys', list)).report.proven).toBe(1);
    }
    const unknown = await verdictOn((await call(['log', 'record', log, '--entry', 'a/e1/1'])).out);
    expect(unknown.report).toMatchObject({ ok: true, proven: 0, claimed: 1, plant: null });
  });

  test('that was changed, or signed by nobody or somebody else, is not', async () => {
    const log = await exported();
    const list = await listOf();
    const { out } = await call(['log', 'record', log, '--entry', 'a/e1/4']);
    const read = parseEntryProof(out);
    if (!read) throw new Error('not read');
    const text = new TextDecoder().decode(read.extra);
    const bytesOf = (changed: string) => new TextEncoder().encode(changed);
    const { plant: key } = plant.server.running.context.key;
    const otherHead = treeHeadText({ origin: key.ed25519.name, size: 22, root: new Uint8Array(32) });
    const cases: readonly (readonly [string, RegExp])[] = [
      [
        formatEntryProof({ ...read, extra: bytesOf(text.replace('note 4', 'note 5')) }),
        /text is not what its hash says/,
      ],
      [formatEntryProof({ ...read, extra: new Uint8Array(32) }), /not at its place/],
      [formatEntryProof({ ...read, extra: bytesOf('{}') }), /entry in it cannot be read/],
      [formatEntryProof({ ...read, index: read.index + 1 }), /not at its place/],
      [formatEntryProof({ ...read, proof: read.proof.slice(1) }), /not at its place/],
      [formatEntryProof({ ...read, note: key.signNote(otherHead) }), /not at its place/],
      [
        formatEntryProof({ ...read, note: read.note.replace(/.{6}\n$/, 'AAAAA=\n') }),
        /cannot be read|not signed/,
      ],
    ];
    for (const [changed, why] of cases) {
      const { code, err, report } = await verdictOn(changed, '--keys', list);
      expect(report).toMatchObject({ ok: false, proven: 0, claimed: 1 });
      expect({ code, err }).toEqual({ code: 1, err: expect.stringMatching(why) });
    }
    const fingerprint = `${'00:'.repeat(31)}00`;
    expect((await verdictOn(out, '--keys', list, '--plant', fingerprint)).code).toBe(1);
    expect((await verdictOn('no record')).code).toBe(2);
    expect((await call(['log', 'record', log, '--entry', 'a/e1/99'])).code).toBe(2);
    expect((await call(['log', 'record', log])).code).toBe(2);
    const cut = newFile(
      readFileSync(log, 'utf8')
        .replace(/"cover":"[^"]*"/, '"cover":"AAAA"')
        .replace(/.*"seq":7,.*\n/, ''),
    );
    expect((await call(['log', 'record', cut, '--entry', 'a/e1/1'])).code).toBe(2);
  });

  test('of a long entry holds its hash, and an export says which entry that is', async () => {
    const log = await exported(3, () => ({ text: 'x'.repeat(3_000) }));
    const { out } = await call(['log', 'record', log, '--entry', 'b/e1/2']);
    expect(out.length).toBeLessThan(2_000);
    const alone = await verdictOn(out, '--keys', await listOf());
    expect(alone.report).toMatchObject({ proven: 1, entry: null, id: null });
    const beside = await verdictOn(out, log);
    expect(beside.report).toMatchObject({ proven: 1, id: 'b/e1/2', keysFrom: 'export' });
  });

  test('stands on a page for paper as a code that reads back as it was written', async () => {
    const log = await exported(3, () => ({ text: '<b>"x" & y</b>' }));
    const page = newFile();
    const { code, out } = await call(['log', 'record', log, '--entry', 'a/e1/2', '--page', page]);
    expect({ code, out }).toEqual({ code: 0, out: '' });
    const html = readFileSync(page, 'utf8');
    expect(html).not.toContain('<b>');
    expect(html).toContain('a/e1/2');
    const [found] = await readBarcodes(pictureOf(html), { formats: ['QRCode'] });
    const scanned = found?.text ?? '';
    expect(scanned).toBe((await call(['log', 'record', log, '--entry', 'a/e1/2'])).out);
    expect((await verdictOn(scanned, '--keys', await listOf())).report).toMatchObject({
      proven: 1,
      id: 'a/e1/2',
    });
  });
});
