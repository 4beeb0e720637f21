// An export goes out of the house: whoever gets one finds no badge in it and nothing to try PINs by, whatever the log of an older version
// holds; and what is left out can be told from what somebody changed.

import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Entry, JsonObject } from '../../shared/log/entry.ts';
import { leftOutName } from '../../shared/log/export.ts';
import { readLogFile } from '../../src/cli/log-file.ts';
import { makeTicket } from '../../src/server/codes.ts';
import { until } from '../src/server/tablets.ts';
import { usePlant } from '../src/server/use-plant.ts';
import { call } from './call.ts';

const plant = usePlant();
const folder = mkdtempSync(path.join(os.tmpdir(), 'reelward-secrets-'));

const pin = { salt: '0badc0de0badc0de', hash: 'c0ffee'.repeat(10), rounds: 600_000 };
const people: readonly JsonObject[] = [
  { person: 'ana', name: 'Ana', role: 'lead', badge: 'BADGE-4711', pin },
  { person: 'bo', name: 'Bo', role: 'operator', badge: 'BADGE-4712', pin: null },
];
const secrets = ['BADGE-471', pin.salt, pin.hash, '600000'];

async function exported(format: 'json' | 'csv' | 'xlsx'): Promise<string> {
  const tablet = await plant.join('t1');
  tablet.log.write(2, (seq) => people[seq - 1] ?? {}, 'person.added');
  tablet.log.write(1);
  tablet.start();
  const { store, context, url } = plant.server.running;
  await until('all entries', async () => (await store.head()).pos === 3);
  const { path: link } = await makeTicket(
    store,
    { format, from: null, to: null, line: null },
    context.nowMs(),
  );
  const file = path.join(folder, `${format}.txt`);
  writeFileSync(file, Buffer.from(await (await fetch(url + link)).arrayBuffer()));
  return file;
}

const quiet = { stdin: async () => new Uint8Array(), stdout: () => undefined, stderr: () => undefined };
const asJson = async (file: string) => {
  const { code, out, err } = await call(['log', 'export', file, '--format', 'json'], '');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return out;
};
const verdictOn = async (file: string) => {
  const { code, out, err } = await call(['log', 'verify', file], '');
  return { code, err, report: JSON.parse(out) };
};

describe('an export of a log with badges and PINs in it', () => {
  test.each(['json', 'csv', 'xlsx'] as const)('as %s has neither, and is whole', async (format) => {
    const file = await exported(format);
    const { entries } = await readLogFile(file, quiet);
    const text = JSON.stringify(entries) + (format === 'xlsx' ? '' : readFileSync(file, 'utf8'));
    for (const secret of secrets) expect(text).not.toContain(secret);
    expect(text).toContain('"name":"Ana"');
    const { code, report } = await verdictOn(file);
    expect(code).toBe(0);
    expect(report).toMatchObject({ ok: true, entries: 3, textsLeftOut: ['t1/e1/1', 't1/e1/2'] });
    expect(report.claims).toMatchObject([
      { tablet: 't1', why: 'text-left-out', entries: 2 },
      ...(format === 'json' ? [] : [{}]),
    ]);
    if (format === 'json') expect(report).toMatchObject({ proven: 1, claimed: 2 });
  });

  test('does not hold where what is left out is none of it, or where hash, place or signature were changed', async () => {
    const file = await exported('json');
    const lines = (await asJson(file))
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Entry);
    const changed = async (at: number, change: (entry: Entry) => Partial<Entry>) => {
      const altered = lines.map((entry, index) => (index === at ? { ...entry, ...change(entry) } : entry));
      const other = path.join(folder, 'changed.txt');
      writeFileSync(other, altered.map((entry) => `${JSON.stringify(entry)}\n`).join(''));
      const { code, report } = await verdictOn(other);
      return { code, fault: report.firstBroken?.fault };
    };
    const saying = (fields: readonly string[]) => (entry: Entry) => ({
      payload: { ...entry.payload, [leftOutName]: fields },
    });
    expect(await changed(0, () => ({ hash: 'a'.repeat(64) }))).toMatchObject({ code: 1 });
    expect(await changed(0, () => ({ sig: 'A'.repeat(86) }))).toEqual({
      code: 1,
      fault: 'signature-differs',
    });
    expect(await changed(0, () => ({ seq: 2 }))).toMatchObject({ code: 1 });
    // A field too many, one that is there all the same, none, and a kind of which nothing is left out.
    for (const fields of [['badge', 'name'], ['pin', 'role'], []])
      expect(await changed(0, saying(fields))).toEqual({ code: 1, fault: 'hash-differs' });
    expect(await changed(2, saying(['badge']))).toEqual({ code: 1, fault: 'hash-differs' });
  });
});
