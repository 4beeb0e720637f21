import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { call } from './call.ts';

function lines(out: string): Record<string, unknown>[] {
  return out
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Record<string, unknown>); // a line of output is an object
}

const KEYS = [
  'part',
  'supplierPart',
  'quantity',
  'lot',
  'dateCode',
  'made',
  'expires',
  'reel',
  'supplier',
  'country',
  'msl',
  'order',
  'fields',
  'warnings',
];

describe('reelward label', () => {
  it('reads one label a line, in order, every key present', async () => {
    const input = [
      {
        codes: [
          '[)>\x1e06\x1dPCUST-0042\x1d1PABC0603-103\x1dQ4000\x1d1TLOT77\x1d10D2618\x1d4LMY\x1d13E3\x1e\x04',
        ],
      },
      { codes: ['PCU-77', 'Q4000', '1TSV82'] },
      { codes: [] },
    ];
    const { code, out, err } = await call(
      ['label', '-'],
      input.map((line) => JSON.stringify(line)).join('\n'),
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const read = lines(out);
    expect(read).toHaveLength(3);
    for (const line of read) expect(Object.keys(line)).toEqual(expect.arrayContaining(KEYS));
    expect(read[0]).toMatchObject({
      part: 'CUST-0042',
      supplierPart: 'ABC0603-103',
      quantity: 4000,
      lot: 'LOT77',
      dateCode: '2618',
      made: { year: 2026, week: 18 },
      country: 'MY',
      msl: '3',
      expires: null,
      reel: null,
      warnings: [],
    });
    expect(read[0]?.['fields']).toContainEqual({ id: 'Q', title: 'quantity', value: '4000' });
    expect(read[1]).toMatchObject({ part: 'CU-77', quantity: 4000, lot: 'SV82' });
    expect(read[2]?.['warnings']).toEqual(['no code was read off this label']);
  });

  it('gives an error on the line that it cannot read, and goes on', async () => {
    const input = Buffer.concat([
      Buffer.from('{"codes":["4LMY"]}\r\n\n{"codes":"X"}\n{"kodes":["X"]}\n{"codes":["'),
      Buffer.from([0xff, 0xfe]),
      Buffer.from('"]}\nnull\n{"codes":["4LJP"]}\n\n'),
    ]);
    const { code, out } = await call(['label', '-'], input);
    const read = lines(out);
    expect(code).toBe(0);
    expect(read).toHaveLength(7);
    expect([read[0]?.['country'], read[6]?.['country']]).toEqual(['MY', 'JP']);
    const errors = read.slice(1, 6).map((line) => line['error'] as string); // each a message
    expect(errors[0]).toMatch(/^line 2: not JSON/);
    expect(errors[1]).toMatch(/^line 3: codes: /);
    expect(errors[2]).toMatch(/^line 4: kodes: key not known here/);
    expect(errors[3]).toMatch(/^line 5: expected UTF-8/);
    expect(errors[4]).toMatch(/^line 6: \(document\): /);
    for (const line of read.slice(1, 6)) expect(Object.keys(line)).toEqual(['error']);
  });

  it('reads nothing as no label', async () => {
    expect(await call(['label', '-'], '')).toEqual({ code: 0, out: '', err: '' });
  });

  it('applies site rules', async () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), 'labels-')), 'rules.json');
    const pieces = [
      { text: 'ART#' },
      { takes: 'any', field: 'part' },
      { text: '#' },
      { takes: 'digits', field: 'quantity' },
    ];
    writeFileSync(file, JSON.stringify([{ rule: 'brae-1', version: 1, codes: [{ pieces }] }]));
    const { out } = await call(['label', '-', '--rules', file], '{"codes":["ART#CU-77#4000"]}');
    expect(lines(out)[0]).toMatchObject({ part: 'CU-77', quantity: 4000, rules: ['brae-1'] });
  });

  it('refuses rules that it does not understand, with the path', async () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), 'labels-')), 'rules.json');
    writeFileSync(
      file,
      JSON.stringify([{ rule: 'r', version: 0, codes: [{ pieces: [{ takes: 'digits', field: 'lot' }] }] }]),
    );
    const { code, err, out } = await call(['label', '-', '--rules', file], '{"codes":[]}');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('[0].version');
  });

  it('refuses a call that it does not understand', async () => {
    expect((await call(['label'])).code).toBe(2);
    expect((await call(['label', '-', '--rule', 'x'])).code).toBe(2);
    expect((await call(['label', '/no/such/file'])).err).toContain('no such file');
  });

  it('helps', async () => {
    const { code, out } = await call(['label', '--help']);
    expect(code).toBe(0);
    expect(out).toContain('--rules FILE');
  });
});
