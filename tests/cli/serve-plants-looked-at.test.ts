// What `serve plants` says of a plant whose server runs, by the settings that lie beside it.

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { plantRowName } from '../../src/server/stores/tables.ts';
import { newFolder } from '../contract/databases.ts';
import { startTestServer, type TestServer } from '../src/server/tablets.ts';
import { call } from './call.ts';

let folder: ReturnType<typeof newFolder>;
let server: TestServer;
beforeEach(async () => {
  folder = newFolder();
  mkdirSync(join(folder.path, 'etc'));
  server = await startTestServer({ folder: join(folder.path, 'brae'), plant: 'Brae Works' });
});
afterEach(async () => {
  await server.stop();
  folder.remove();
});

/** The lines on a plant with these settings, served on the port of the running server. */
async function look(settings: object): Promise<readonly string[]> {
  const port = Number(new URL(server.running.url).port);
  writeFileSync(join(folder.path, 'etc', 'brae.json'), JSON.stringify({ port, ...settings }));
  const { out } = await call(['serve', 'plants', join(folder.path, 'etc'), '--data', folder.path]);
  return out.split('\n');
}

it('says that it runs, also where its settings name no plant', async () => {
  for (const settings of [{ plant: 'Brae Works' }, {}])
    expect(await look(settings)).toContainEqual(
      expect.stringMatching(/^brae {2}good {4}server: runs, \d+ entries$/),
    );
});

it('says whose server runs there where it is called otherwise, as after it was renamed', async () => {
  await server.running.store.writeMeta(plantRowName, 'Brae Works North');
  const lines = await look({ plant: 'Brae Works North' });
  expect(lines).toContain(
    'brae  WARNING server: “Brae Works” runs there; if that is its name of before, start it again',
  );
  expect(lines.find((line) => line.includes(' port: '))).toContain(
    'start it again if that is its name of before',
  );
});

it('looks at the data folder that is served, and says that one in the file is not used', async () => {
  const [plant, data] = ['Brae Works', join(folder.path, 'elsewhere')];
  const lines = await look({ plant, data });
  expect(lines).toContain(
    `brae  WRONG   configuration: "data" in it is not used by reelward-plant, which serves ${join(folder.path, 'brae')}: take it out`,
  );
  expect(lines.find((line) => line.includes(' store: '))).toContain(
    `entries in ${join(folder.path, 'brae')}`,
  );
  const same = await look({ plant, data: join(folder.path, 'brae') });
  expect(same).toContain('brae  good    configuration: understood');
});
