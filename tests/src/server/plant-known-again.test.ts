// A tablet knows its own plant again: under another name, with another key, and where nobody had named it when the tablet joined.

import { afterEach, beforeEach, expect, it } from 'vitest';
import { isOtherPlant } from '../../../src/app/sync/other-plant.ts';
import { plantRowName } from '../../../src/server/stores/tables.ts';
import { enrolAt, newTablet, startTestServer, type TestServer, type TestTablet, until } from './tablets.ts';

let server: TestServer;
let tablet: TestTablet;
beforeEach(async () => {
  server = await startTestServer({ plant: null });
  tablet = await newTablet('t1', server.running.url);
});
afterEach(async () => {
  await tablet.stop();
  await server.stop();
});

/** What a tablet remembers that once joined here; the server does not know it. */
function joinedOnce(plant: string, serverKey: string): void {
  tablet.log.memory = { ...tablet.log.memory, enrolled: { plant, serverKey } };
}

it('keeps what the plant is called by now, as its signed list of keys says', async () => {
  await enrolAt(server.running, tablet);
  expect(tablet.log.memory.enrolled?.plant).toBe('Plant');
  await server.running.store.writeMeta(plantRowName, 'Brae Works');
  await server.restart();
  tablet.start();
  await until('the name', () => tablet.log.memory.enrolled?.plant === 'Brae Works');
});

it.each([
  ['called otherwise since', { plant: 'Brae Works North', isSameKey: true }, 'tablet-unknown'],
  ['named by nobody', { plant: 'Plant', isSameKey: false }, 'tablet-unknown'],
  ['another', { plant: 'Tarn Works', isSameKey: false }, 'other-plant'],
] as const)(
  'a server that does not know the tablet, of a plant %s',
  async (_what, { plant, isSameKey }, reason) => {
    await server.running.store.writeMeta(plantRowName, 'Brae Works');
    await server.restart();
    joinedOnce(plant, isSameKey ? server.running.context.key.publicKey : 'another');
    tablet.log.write(1);
    tablet.start();
    await until('the refusal', () => tablet.status()?.phase === 'refused');
    expect(tablet.status()?.reason).toBe(reason);
  },
);

it('takes no plant for another by name and key where one of them has no name', () => {
  const own = { plant: 'Plant', serverKey: 'a' };
  expect(isOtherPlant(own, { plant: 'Brae Works', serverKey: 'b' })).toBe(false);
  expect(isOtherPlant({ plant: 'Brae Works', serverKey: 'b' }, own)).toBe(false);
  expect(isOtherPlant({ plant: 'Tarn Works', serverKey: 'b' }, { plant: 'Brae Works', serverKey: 'c' })).toBe(
    true,
  );
});
