// Attacks with chains of tablets that were never let in, against a running server: nobody writes in another's name without answering for
// it, and a name that was taken so keeps no tablet out.

import '../app/store/browser.ts';

import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { pushedSchema } from '../../../shared/wire/messages.ts';
import { broughtText } from '../../../shared/wire/signing.ts';
import { openStore } from '../../../src/app/store/store.ts';
import { createSyncLog } from '../../../src/app/store/sync-log.ts';
import { enrolTablet } from '../../../src/app/sync/enrol.ts';
import { createSyncKey } from '../../../src/app/sync/key.ts';
import { startSync } from '../../../src/app/sync/loop.ts';
import type { SyncStatus } from '../../../src/app/sync/ports.ts';
import { makeCode } from '../../../src/server/codes.ts';
import { makeChain, newKey } from '../../contract/entries.ts';
import { beginChain } from './chains.ts';
import { newTablet, newWorld, type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();

const onServer = async () =>
  (await plant.server.running.store.page(0, 1_000)).map((row) => JSON.parse(row.text) as Entry);

async function push(by: TestTablet, entries: readonly Entry[], signs: TestTablet | null) {
  const { tablet = '', epoch = '', seq = 0, hash = '' } = entries.at(-1) ?? {};
  const end = { tablet, epoch, seq, hash };
  const brought = signs ? [{ ...end, sig: await signs.key.sign(broughtText(end)) }] : undefined;
  const json = { sentMs: Date.now(), entries, brought };
  const pushed = await by.caller.call('/api/push', pushedSchema, { json });
  return pushed.ok ? pushed.value.faults.map(({ fault }) => fault) : pushed.error.code;
}

describe('a chain in the name of a tablet that was never let in', () => {
  it('is taken from no one who does not sign that it was brought', async () => {
    const [evil, other] = [await plant.join('evil'), await plant.join('other')];
    const nonsense = makeChain({ tablet: 'ghost', count: 2, key: newKey() });
    expect(await push(evil, nonsense, null)).toEqual(['signature-missing']);
    expect(await push(evil, makeChain({ tablet: 'ghost', count: 1 }), null)).toEqual(['signature-missing']);
    expect(await push(evil, nonsense, other)).toEqual(['signature-missing']);
    expect(await onServer()).toEqual([]);
    expect(await push(evil, nonsense, evil)).toEqual([]);
    const words = await plant.server.running.store.allBrought();
    expect(words).toMatchObject([{ tablet: 'ghost', seq: 2, via: 'evil' }]);
  });

  it('is taken from a tablet of the plant that has it from before the server lost it', async () => {
    const [gone, honest] = [await plant.join('gone'), await plant.join('honest')];
    gone.log.write(3);
    gone.start();
    honest.start();
    await until('both', () => honest.log.entries().length === 3);
    await gone.stop();
    const { store } = plant.server.running;
    await honest.log.takeIn(makeChain({ tablet: 'broken', count: 4, key: newKey() }));
    await honest.stop();
    honest.start();
    await until('the broken one', async () => (await store.head()).pos === 7);
    expect(honest.status()?.quarantined).toEqual([]);
    expect(await store.allBrought()).toMatchObject([{ tablet: 'broken', seq: 4, via: 'honest' }]);
  });

  it.each([
    ['shorter than', 1],
    ['as long as', 2],
    ['longer than', 3],
  ])('%s its own keeps that tablet out of nothing once it is let in', async (_, count) => {
    const evil = await plant.join('evil');
    const { running } = plant.server;
    const clock = { nowMs: Date.now, isSure: () => true };
    const store = await openStore({ clock, appVersion: '1', tabletName: 'front', name: `squatted-${count}` });
    await store.append([{ kind: 'tablet.named', payload: { name: 'Line 1 front' } }], null);
    const { tablet, epoch, keys } = store.identity;
    const squatter = { ...(await newTablet(tablet, running.url)) };
    const forged = await beginChain(squatter, { nowMs: Date.now, epoch });
    for (let at = 1; at < count; at += 1) await forged.tell('tablet.named', { name: 'forged' });
    expect(await push(evil, forged.entries, evil)).toEqual([]);

    if (!keys) throw new Error('no keys');
    const [log, key] = [createSyncLog(store), await createSyncKey(tablet, keys)];
    const { code } = await makeCode(running.store, Date.now());
    const world = newWorld(running.url);
    expect(await enrolTablet({ log, key, world }, { code, name: 'front' })).toMatchObject({ ok: true });
    const stop = new AbortController();
    let status: SyncStatus | null = null;
    const onStatus = (next: SyncStatus) => {
      status = next;
    };
    const loop = startSync({ log, key, world, onStatus, signal: stop.signal });
    const names = async () =>
      (await onServer())
        .filter(({ kind }) => kind === 'tablet.named')
        .map(({ payload }) => payload['name'])
        .sort();
    await until('its own entry', async () => (await names()).includes('Line 1 front'));
    await until('nothing to send', () => status?.phase === 'live' && status.backlog === 0);
    expect(status).toMatchObject({ quarantined: [] });
    expect(store.identity).toMatchObject({ tablet });
    expect(store.identity.epoch).not.toBe(epoch);
    expect((await names()).filter((name) => name !== 'forged')).toEqual(['Line 1 front']);
    // What was written first is not thrown away.
    expect(await store.log.aside.count()).toBe(2);
    // The name is its own now: nobody brings more under it.
    await forged.tell('tablet.named', { name: 'again' });
    expect(await push(evil, forged.entries, evil)).toContain('signature-differs');
    stop.abort();
    await loop.done;
    await store.close();
  });
});
