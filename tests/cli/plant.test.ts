// The file for a second plant, from the command line: made out of the log of the demo plant, and checked.

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { applyAll } from '../../shared/floor/fold.ts';
import { plantDrafts } from '../../shared/floor/plant-file.ts';
import { emptyState } from '../../shared/floor/state.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { lockFolder } from '../../src/server/stores/sqlite/lock.ts';
import { makeChain, toChecked } from '../contract/entries.ts';
import { call } from './call.ts';

const folder = mkdtempSync(join(tmpdir(), 'reelward-plant-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

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

/** The file of the demo plant. */
async function demoFile(): Promise<string> {
  const log = (await call(['demo', '--export', '-', '--hours', '0.05'])).out;
  const file = join(folder, 'first.json');
  writeFileSync(file, (await call(['plant', '-'], log)).out);
  return file;
}

/** The log of a data folder, in commit order. */
async function logOf(data: string): Promise<readonly Entry[]> {
  const store = await openStore({ folder: data, database: null, nowMs: Date.now });
  try {
    const { pos } = await store.head();
    return (await store.page(0, pos)).map(({ text }) => JSON.parse(text) as Entry);
  } finally {
    await store.close();
  }
}

test('a second plant begins from the file of the first, with all that it tells and nobody in it', async () => {
  const file = await demoFile();
  const data = join(folder, 'second');
  const begun = await call(['serve', 'begin', file, '--data', data]);
  expect([begun.code, begun.out]).toEqual([0, '']);
  const { slots, parts } = JSON.parse((await call(['plant', file, '--check'])).out);
  expect(begun.err).toContain(`Begun from a file: lines 1, slots ${slots}, parts ${parts}, `);
  const entries = await logOf(data);
  const state = applyAll(emptyState(), entries);
  const told = (JSON.parse(readFileSync(file, 'utf8')) as { told: { kind: string; payload: object }[] }).told;
  const again = JSON.parse(JSON.stringify(plantDrafts(state)));
  expect(again).toEqual(told.filter(({ kind }) => kind !== 'plant.named'));
  expect([state.people.size, state.plant.size, state.reels.size]).toEqual([0, 0, 0]);
  // What nobody signed is claimed, and the chain is whole.
  const exported = entries.map((entry) => `${JSON.stringify(entry)}\n`).join('');
  const verified = await call(['log', 'verify', '-'], exported);
  expect([verified.code, JSON.parse(verified.out)]).toEqual([
    0,
    expect.objectContaining({ ok: true, tablets: 1, claimed: entries.length }),
  ]);
  // A file is not laid over what is there.
  const twice = await call(['serve', 'begin', file, '--data', data]);
  expect([twice.code, twice.err]).toEqual([2, expect.stringContaining('has lines already')]);
  expect(await logOf(data)).toHaveLength(entries.length);
});

test('a plant begins only where there is nobody and no server, and from a file that is whole', async () => {
  const file = await demoFile();
  const [made, held] = [join(folder, 'none'), join(folder, 'held')];
  const cases = [
    [['begin', join(folder, 'lost.json')], '', 'no such file'],
    [['begin', '-'], 'hello', 'standard input: expected a file that "reelward plant" or the app wrote'],
    [
      ['begin', '-'],
      '{"file":"reelward-plant","version":1,"name":null,"told":[{"kind":"person.added","payload":{}}]}',
      'told[0].kind: expected one of',
    ],
    [
      ['begin', '-'],
      readFileSync(file, 'utf8').replace('"line.defined"', '"line.refined"'),
      'found line.refined',
    ],
    [['begin'], '', 'expected nothing or check, plants FOLDER, begin FILE'],
  ] as const;
  for (const [act, input, says] of cases) {
    const answer = await call(['serve', ...act, '--data', made], input);
    expect([answer.code, answer.out]).toEqual([2, '']);
    expect(answer.err).toContain(says);
    expect(answer.err.trim().split('\n')).toHaveLength(1);
    expect(existsSync(made)).toBe(false);
  }
  const unlock = lockFolder(held);
  const running = await call(['serve', 'begin', file, '--data', held]);
  unlock?.();
  expect([running.code, running.err]).toEqual([
    2,
    expect.stringContaining('a server runs on this data folder'),
  ]);
  // Somebody who joined first is asked to do it, and to stand for it.
  const store = await openStore({ folder: held, database: null, nowMs: Date.now });
  const [first] = makeChain({ tablet: 't1', count: 1, kind: 'person.added' });
  if (first) await store.append([{ sender: 't1', entries: [toChecked(first)] }], Date.now());
  await store.close();
  const people = await call(['serve', 'begin', file, '--data', held]);
  expect([people.code, people.err]).toEqual([2, expect.stringContaining('has people already')]);
  expect(await logOf(held)).toHaveLength(1);
});
