// The file for a second plant, from the command line: made out of the log of the demo plant, and checked.

import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { call } from './call.ts';

const folder = mkdtempSync(join(tmpdir(), 'reelward-plant-'));

test('an exported log becomes the file of its plant, which --check counts', async () => {
  const log = join(folder, 'log.ndjson');
  expect((await call(['demo', '--export', log, '--hours', '0.05'], '')).code).toBe(0);
  const made = await call(['plant', log], '');
  expect(made.code).toBe(0);
  const file = join(folder, 'plant.json');
  writeFileSync(file, made.out);
  const kinds = JSON.parse(made.out).told.map(({ kind }: { kind: string }) => kind);
  expect(kinds).toContain('line.defined');
  expect(kinds.filter((kind: string) => /^(person|reel|setup|run|tablet)\./.test(kind))).toEqual([]);
  const checked = await call(['plant', file, '--check'], '');
  expect(checked.code).toBe(0);
  expect(JSON.parse(checked.out)).toMatchObject({ lines: 1 });
});

test('what is no log, no file or no plant is told in one line', async () => {
  const cases = [
    [['plant', '-'], 'hello', 2, 'expected an exported log'],
    [['plant', '-'], '', 2, 'found nothing'],
    [['plant', '-', '--check'], 'hello', 2, 'no JSON'],
    [['plant', '-', '--check'], '{"a":1}', 2, 'other JSON'],
    [
      ['plant', '-', '--check'],
      '{"file":"reelward-plant","version":1,"name":null,"told":[{"kind":"line.defined","payload":{}}]}',
      2,
      'told[0].payload.line',
    ],
  ] as const;
  for (const [args, input, code, says] of cases) {
    const answer = await call([...args], input);
    expect(answer.code).toBe(code);
    expect(answer.err).toContain(says);
    expect(answer.err.trim().split('\n')).toHaveLength(1);
    expect(answer.out).toBe('');
  }
});
