// Which plants would take each other's port, by the addresses that their settings name.

import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { freePort, newFolder } from '../contract/databases.ts';
import { call } from './call.ts';

let folder: ReturnType<typeof newFolder>;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => folder.remove());

/** What is said of ports of a first and a second plant with these settings. */
async function shared(first: object, second: object): Promise<readonly string[]> {
  const etc = join(folder.path, 'etc');
  rmSync(etc, { recursive: true, force: true });
  mkdirSync(etc);
  const port = await freePort();
  for (const [name, more] of Object.entries({ brae: first, tarn: second }))
    writeFileSync(join(etc, `${name}.json`), JSON.stringify({ plant: name, port, ...more }));
  const { out } = await call(['serve', 'plants', etc, '--data', join(folder.path, 'data')]);
  return out
    .replaceAll(String(port), 'P')
    .split('\n')
    .filter((line) => line.includes('port P is') && line.includes('too'));
}

const both = [
  'brae  WRONG   configuration: port P is tarn’s too',
  'tarn  WRONG   configuration: port P is brae’s too',
];

test.each(['127.0.0.1', 'localhost', '::1'])(
  'a plant on %s alone and one on another address of the computer may have one port',
  async (host) => {
    expect(await shared({ host }, { listen: '192.168.7.20' })).toEqual([]);
  },
);

test.each([
  ['two names of the computer for itself', { host: 'localhost' }, { host: '127.0.0.1' }],
  [
    'the computer’s name for itself and its address of the other family',
    { host: 'localhost' },
    { host: '::1' },
  ],
  ['every address and one of them', { listen: '0.0.0.0' }, { listen: '192.168.7.20' }],
  [
    'a name for others, which is every address, and itself',
    { host: 'reelward.local' },
    { host: 'localhost' },
  ],
])('%s: one port is not for both', async (_, first, second) => {
  expect(await shared(first, second)).toEqual(both);
});
