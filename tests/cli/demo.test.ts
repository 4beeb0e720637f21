// `reelward demo` from a caller's side: what it exports, and what it refuses in one line.

import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { withoutSecrets } from '../../shared/floor/secrets.ts';
import { verifyChains } from '../../shared/log/chain.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { entrySchema } from '../../shared/log/entry-schema.ts';
import { call } from './call.ts';

const readEntries = (text: string) =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => entrySchema.parse(JSON.parse(line)));

describe('reelward demo --export', () => {
  test('writes the log of eight hours, one entry a line, whose chains hold', async () => {
    const { code, out, err } = await call(['demo', '--export', '-']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const entries = readEntries(out);
    expect(verifyChains(entries).ok).toBe(true);
    expect(entries.filter((entry) => entry.kind === 'panels.counted').length).toBeGreaterThan(600);
    expect(entries.at(-1)?.at.slice(0, 13)).toMatch(/^2026-03-02T1[34]/);
  });

  test('is taken by `reelward log verify`', async () => {
    const { out } = await call(['demo', '--export', '-', '--hours', '1']);
    const { code, out: report } = await call(['log', 'verify', '-'], out);
    expect(code).toBe(0);
    expect(JSON.parse(report)).toMatchObject({ ok: true, tablets: 2, entries: readEntries(out).length });
  });

  test('is the same as what `log export --format json` makes of it', async () => {
    const { out } = await call(['demo', '--export', '-', '--hours', '1', '--seed', '9']);
    const again = await call(['log', 'export', '-', '--format', 'json'], out);
    expect(again.code).toBe(0);
    expect(
      again.out
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line)),
    ).toEqual(
      out
        .trimEnd()
        .split('\n')
        .map((line) => withoutSecrets(JSON.parse(line) as Entry)),
    );
  });

  test('writes to a file and prints nothing', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'reelward-export-'));
    try {
      const file = join(folder, 'shift.ndjson');
      const result = await call([
        'demo',
        '--export',
        file,
        '--seed',
        '7',
        '--hours',
        '0.5',
        '--start',
        '2026-07-01T22:00:00+02:00',
      ]);
      expect(result).toEqual({ code: 0, out: '', err: '' });
      const entries = readEntries(await readFile(file, 'utf8'));
      const started = entries.find((entry) => entry.kind === 'run.started');
      expect(Date.parse(started?.at ?? '')).toBe(Date.parse('2026-07-01T20:00:00Z'));
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });

  test('gives the same log for the same seed and another for another', async () => {
    const [one, same, other] = await Promise.all(
      ['5', '5', '6'].map((seed) => call(['demo', '--export', '-', '--hours', '0.2', '--seed', seed])),
    );
    expect(same?.out).toBe(one?.out);
    expect(other?.out).not.toBe(one?.out);
  });
});

describe('reelward demo refuses with exit 2 and one line', () => {
  test.each([
    [['--seed', '-1'], /--seed/],
    [['--seed', '1.5'], /--seed: expected a whole number from 0 to 4294967295, found 1.5/],
    [['--export', '-', '--hours', '0'], /--hours: expected a number from 0.01 to 168, found 0/],
    [['--export', '-', '--hours', 'all'], /--hours/],
    [['--export', ''], /--export: expected a file/],
    [['--export', '/no/such/folder/x.ndjson', '--hours', '0.1'], /--export: .* cannot be written \(ENOENT\)/],
    [['--export', '-', '--start', 'yesterday'], /--start: expected ISO 8601 with offset/],
    [['--export', '-', '--play', '2'], /--play: does not go with --export/],
    [['--hours', '3'], /--hours: does not go with a demo that is served/],
    [['--play', '0'], /--play: expected a number from 0.1 to 600, found 0/],
    [['--port', '99999'], /--port/],
    [['somewhere'], /expected options only, found somewhere/],
    [['--colour', 'red'], /--colour/],
  ])('%j', async (args, said) => {
    const { code, out, err } = await call(['demo', ...args]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(said);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });
});
