// `reelward log` on files: exit codes, what is printed, signatures, and every form read back.

import { webcrypto } from 'node:crypto';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import readXlsxFile from 'read-excel-file/node';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Entry } from '../../shared/log/entry.ts';
import { exportLog } from '../../shared/log/export.ts';
import { exportColumns, itemToJson } from '../../shared/log/export-rows.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { hashDraft, sealEntry } from '../../shared/log/seal.ts';
import { beginStory, counted, started, tellPlant, verified } from '../shared/floor/story.ts';
import { call } from './call.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'reelward-log-'));
const file = (name: string) => path.join(folder, name);

const story = beginStory();
tellPlant(story);
story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: '=HYPERLINK("x")', reel: 'K1' }));
story.tell('tablet.opened', { name: 'rear', app: '0.1.0', key: null, previous: null }, { tablet: 'T2' });
story.tell('run.started', started('run-1'), { tablet: 'T2' });
story.tell('panels.counted', counted('run-1', 4), { tablet: 'T2' });
story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 4, note: 'é 😀' });
const log = [...story.entries].sort(compareEntries);
const jsonOf = (entries: readonly Entry[]) =>
  exportLog(entries)
    .map((item) => `${itemToJson(item)}\n`)
    .join('');

async function verdictOn(input: string | Uint8Array, ...more: string[]) {
  const { code, out, err } = await call(['log', 'verify', '-', ...more], input);
  return { code, err, report: code === 2 ? null : JSON.parse(out) };
}

describe('reelward log verify', () => {
  test('answers 0 and counts on a whole log', async () => {
    const { code, report, err } = await verdictOn(jsonOf(log));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(report).toMatchObject({
      entries: log.length,
      tablets: 2,
      ok: true,
      firstBroken: null,
      omitted: 0,
    });
    expect(report.heads).toHaveLength(2);
  });

  test('answers 1 and names the entry on standard error too where a fact was changed', async () => {
    const { code, report, err } = await verdictOn(jsonOf(log).replace('"add":4', '"add":5'));
    expect(code).toBe(1);
    expect(report).toMatchObject({ ok: false, firstBroken: { id: 'T2/T2-life-1/3', fault: 'hash-differs' } });
    expect(err).toMatch(/^reelward log: entry T2\/T2-life-1\/3: hash-differs: .*\n$/);
  });

  test('answers 1 where a key was added to an entry, and names the key', async () => {
    const { code, report } = await verdictOn(jsonOf(log).replace('{"at"', '{"approved":true,"at"'));
    expect(code).toBe(1);
    expect(report.firstBroken).toMatchObject({
      id: 'T1/T1-life-1/1',
      fault: 'not-a-record',
      column: 'approved',
    });
  });

  test('answers 2 with line and expectation on what is no log', async () => {
    const rows: readonly (readonly [string, RegExp])[] = [
      ['part,slot\n', /line 1, entry: expected entry, found part, slot/],
      [`${jsonOf(log)}{"v":1,`, new RegExp(`line ${log.length + 1}: expected one JSON record`)],
      ['{"part":"R-100"}', /line 1/],
    ];
    for (const [input, told] of rows) {
      const { code, err } = await verdictOn(input);
      expect({ code, lines: err.split('\n').length }, input).toEqual({ code: 2, lines: 2 });
      expect(err).toMatch(told);
    }
    expect((await call(['log', 'verify', file('none')])).err).toContain('no such file');
    expect((await call(['log', 'check', file('none')])).code).toBe(2);
    expect((await call(['log'])).code).toBe(2);
    expect((await verdictOn(Uint8Array.of(0xff, 0xfe, 0xfa))).code).toBe(2);
    expect((await verdictOn(Uint8Array.of(0x50, 0x4b, 3, 4, 0))).code).toBe(2);
  });

  test('sees a cut-off end only with an earlier answer at hand', async () => {
    const whole = await call(['log', 'verify', '-'], jsonOf(log));
    writeFileSync(file('heads.json'), whole.out);
    const cut = jsonOf(log.slice(0, -1));
    expect((await verdictOn(cut)).code).toBe(0);
    const { code, report } = await verdictOn(cut, '--heads', file('heads.json'));
    expect(code).toBe(1);
    expect(report.firstBroken).toMatchObject({ fault: 'truncated', seq: log.at(-1)?.seq });
  });
});

describe('reelward log verify with signatures', () => {
  let signed: readonly Entry[] = [];
  let sign: (hash: string) => Promise<string>;

  beforeAll(async () => {
    const kind = { name: 'ECDSA', namedCurve: 'P-256' };
    const keys = await webcrypto.subtle.generateKey(kind, true, ['sign', 'verify']);
    const { kty = '', crv = '', x = '', y = '' } = await webcrypto.subtle.exportKey('jwk', keys.publicKey);
    sign = async (hash) => {
      const how = { name: 'ECDSA', hash: 'SHA-256' };
      const bytes = await webcrypto.subtle.sign(how, keys.privateKey, new TextEncoder().encode(hash));
      return Buffer.from(bytes).toString('base64url');
    };
    let prev = '0'.repeat(64);
    const entries: Entry[] = [];
    for (const entry of story.entries.filter(({ tablet }) => tablet === 'T1')) {
      const payload = entry.seq === 1 ? { ...entry.payload, key: { kty, crv, x, y } } : entry.payload;
      const sealed = sealEntry({ ...entry, payload, prev });
      entries.push({ ...sealed, sig: await sign(sealed.hash) });
      prev = sealed.hash;
    }
    signed = entries;
  });

  test('holds where every entry is signed by the key that its chain names', async () => {
    const { code, report } = await verdictOn(jsonOf(signed));
    expect(code).toBe(0);
    expect(report.signatures).toMatchObject({ checked: signed.length, withoutKey: 0 });
  });

  test('says how many entries no key is known for', async () => {
    const { report } = await verdictOn(jsonOf(log));
    expect(report.signatures).toEqual({ checked: 0, withoutKey: log.length, signedTo: [] });
  });

  test('fails where the last entry was forged and sealed anew, with the old signature, none, or a damaged one', async () => {
    const last = signed.at(-1) as Entry; // the story is not empty
    const draft = { ...last, payload: { ...last.payload, panels: 9 } };
    const forged = { ...draft, hash: hashDraft(draft) };
    const damaged = { ...last, sig: `${last.sig} ` };
    for (const [entry, fault] of [
      [forged, 'signature-differs'],
      [{ ...forged, sig: null }, 'signature-missing'],
      [damaged, 'signature-differs'],
    ] as const) {
      const { code, report } = await verdictOn(jsonOf([...signed.slice(0, -1), entry]));
      expect(code).toBe(1);
      expect(report.firstBroken).toMatchObject({ fault, seq: last.seq });
    }
  });

  const isHead = (seq: number) => seq % 3 === 0;
  const headsOnly = () =>
    signed.map((entry) => (isHead(entry.seq) || entry === signed.at(-1) ? entry : { ...entry, sig: null }));

  test('holds where heads alone are signed, and says up to where', async () => {
    const last = signed.at(-1) as Entry;
    const whole = await verdictOn(jsonOf(headsOnly()));
    expect(whole.code).toBe(0);
    expect(whole.report.signatures.signedTo).toEqual([
      { tablet: 'T1', epoch: last.epoch, signedTo: last.seq, lastSeq: last.seq, notVouched: 0 },
    ]);
    const list = file('t1-keys.json');
    writeFileSync(list, JSON.stringify({ keys: [{ tablet: 'T1', key: signed[0]?.payload['key'] }] }));
    const listed = await verdictOn(jsonOf(headsOnly()), '--keys', list);
    expect(listed.report).toMatchObject({ proven: signed.length, claimed: 0 });
  });

  test('fails where the end lost its head, at the first entry that nobody vouches for', async () => {
    const bare = headsOnly().map((entry) => (entry === signed.at(-1) ? { ...entry, sig: null } : entry));
    const last = bare.filter(({ sig }) => sig !== null).at(-1) as Entry;
    const { code, report } = await verdictOn(jsonOf(bare));
    expect(code).toBe(1);
    expect(report.firstBroken).toMatchObject({ fault: 'signature-missing', seq: last.seq + 1 });
    expect(report.signatures.signedTo).toMatchObject([
      { signedTo: last.seq, lastSeq: signed.length, notVouched: signed.length - last.seq },
    ]);
  });

  test('says of a part what its head, being left out, does not vouch for, and that it is whole all the same', async () => {
    const first = signed[1] as Entry; // the second of the chain, whose head is the third
    writeFileSync(file('heads.json'), jsonOf(headsOnly()));
    const kept = await call(['log', 'export', file('heads.json'), '--format', 'json', '--to', first.at]);
    const { code, report } = await verdictOn(kept.out);
    expect(code).toBe(0);
    const [chain] = report.signatures.signedTo;
    expect(chain).toMatchObject({ tablet: 'T1', notVouched: chain.lastSeq - chain.signedTo });
    expect(chain.lastSeq).toBeGreaterThanOrEqual(2);
  });

  test('fails at the first entry where its key is none', async () => {
    const [first] = signed;
    const draft = {
      ...(first as Entry),
      payload: { ...first?.payload, key: { kty: 'EC', crv: 'P-256', x: 'no', y: 'no' } },
    };
    const { report } = await verdictOn(jsonOf([{ ...draft, hash: hashDraft(draft) }]));
    expect(report.firstBroken).toMatchObject({ fault: 'signature-differs', seq: 1 });
  });
});

describe('reelward log export', () => {
  beforeAll(() => writeFileSync(file('log.json'), jsonOf([...log].reverse())));
  afterAll(() => expect(readFileSync(file('log.json'), 'utf8')).toBe(jsonOf([...log].reverse())));

  test('writes JSON lines in folding order and CSV to standard output', async () => {
    const json = await call(['log', 'export', file('log.json'), '--format', 'json']);
    expect(json).toEqual({ code: 0, err: '', out: jsonOf(log) });
    const csv = await call(['log', 'export', file('log.json'), '--format', 'csv']);
    expect(csv.out.split('\r\n')[0]).toBe(exportColumns.join(','));
    expect(csv.out).toContain('"\'=HYPERLINK(""x"")"');
    expect((await verdictOn(csv.out)).report).toMatchObject({ ok: true, entries: log.length });
  });

  test('writes a workbook with moments, numbers and texts that verifies, and whose altered cell does not', async () => {
    const out = file('log.xlsx');
    expect(await call(['log', 'export', file('log.json'), '--format', 'xlsx', '--out', out])).toEqual({
      code: 0,
      out: '',
      err: '',
    });
    const [sheet] = await readXlsxFile(readFileSync(out));
    expect(sheet?.data[0]).toEqual([...exportColumns]);
    for (const row of sheet?.data.slice(1) ?? []) {
      exportColumns.forEach((column, at) => {
        const cell = row[at] ?? null;
        if (column === 'at') expect(cell).toBeInstanceOf(Date);
        else if (cell !== null)
          expect(typeof cell).toBe(['seq', 'quantity', 'panels'].includes(column) ? 'number' : 'string');
      });
    }
    expect((await verdictOn(readFileSync(out))).report).toMatchObject({
      ok: true,
      entries: log.length,
      tablets: 2,
    });
    const csv = (await call(['log', 'export', out, '--format', 'csv'])).out;
    const { code, report } = await verdictOn(csv.replace(',1000,accepted,', ',9000,accepted,'));
    expect(code).toBe(1);
    expect(report.firstBroken).toMatchObject({
      fault: 'cell-differs',
      column: 'quantity',
      wanted: '1000',
      found: '9000',
    });
    expect(report.faults).toHaveLength(1);
  });

  test('keeps what the options ask for, and the rest verifies as left out', async () => {
    const args = ['log', 'export', file('log.json'), '--format', 'json'];
    const { out } = await call([...args, '--line', 'L1', '--kind', 'run.started', '--kind', 'run.ended']);
    const kinds = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).kind);
    expect(kinds.filter(Boolean)).toEqual(['run.started', 'run.ended']);
    expect((await verdictOn(out)).report).toMatchObject({ ok: true, entries: 2, omitted: log.length - 2 });
    const late = await call([...args, '--from', log.at(-2)?.at ?? '', '--to', log.at(-1)?.at ?? '']);
    expect((await verdictOn(late.out)).report).toMatchObject({ ok: true, entries: 2 });
  });

  test('answers 2 and says what was expected where the call or the file is not understood', async () => {
    const rows: readonly (readonly [string[], string])[] = [
      [['--format', 'pdf'], 'expected one of csv, xlsx, json'],
      [[], '--format'],
      [['--format', 'csv', '--from', 'monday'], '--from: expected a moment'],
      [['--format', 'csv', '--lines', 'L1'], '--lines'],
      [['--format', 'xlsx', '--out', path.join(folder, 'none', 'a.xlsx')], 'cannot be written'],
      [['--format', 'xlsx'], '--out'],
    ];
    for (const [more, told] of rows) {
      const { code, err, out } = await call(['log', 'export', file('log.json'), ...more]);
      expect({ code, out }, more.join(' ')).toEqual({ code: 2, out: '' });
      expect(err).toContain(told);
    }
    writeFileSync(file('bad.json'), `${jsonOf(log)}{"v":2}`);
    const bad = await call(['log', 'export', file('bad.json'), '--format', 'csv']);
    expect(bad.code).toBe(2);
    expect(bad.err).toContain(`line ${log.length + 1}`);
  });
});
