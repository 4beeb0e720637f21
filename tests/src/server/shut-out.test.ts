// Who is shut out stays so: over a restore, in a stream that is open, with a token that is still good, and against a code in the wrong hands.

import { chmodSync, mkdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkedSchema, codeMadeSchema, offeredSchema } from '../../../shared/wire/messages.ts';
import { enrolTablet } from '../../../src/app/sync/enrol.ts';
import { makeCode } from '../../../src/server/codes.ts';
import { hashOf } from '../../../src/server/keys.ts';
import { openStore } from '../../../src/server/stores/open.ts';
import { restoreInto } from '../../../src/server/stores/restore.ts';
import { newFolder } from '../../contract/databases.ts';
import { beginChain } from './chains.ts';
import { newTablet, pinRecord, type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();

const offer = (tablet: TestTablet) =>
  tablet.caller.call('/api/offer', offeredSchema, { json: { heads: [] } });

describe('a restore', () => {
  const options = (folder: string, file: string) => ({
    file,
    folder,
    database: null,
    nowMs: Date.now,
    replace: true,
  });

  it('keeps out whoever was shut out since the backup, and every tablet tells that the server went back', async () => {
    const [stolen, honest] = [await plant.join('stolen'), await plant.join('honest')];
    honest.log.write(3);
    honest.start();
    await until('three entries', async () => (await plant.server.running.store.head()).pos === 3);
    const file = join(plant.server.folder, 'copy.sqlite');
    await plant.server.running.store.backupTo(file);
    await plant.server.running.store.revokeTablet('stolen', Date.now());
    let letIn: readonly unknown[] = [];
    await plant.server.restart(async () => {
      ({ letIn } = await restoreInto(options(plant.server.folder, file)));
    });
    const answerTo = async (tablet: TestTablet) => {
      const answer = await offer(tablet);
      return answer.ok ? 'ok' : answer.error.code;
    };
    // A connection of before the restart may break first.
    await until('an answer', async () => (await answerTo(stolen)) !== 'unreachable');
    expect(await answerTo(stolen)).toBe('tablet-revoked');
    expect(await answerTo(honest)).toBe('ok');
    expect(letIn).toEqual([]);
    honest.now();
    await until('the news', () => (honest.status()?.rolledBackMs ?? null) !== null);
    expect(honest.log.memory.rolledBackMs).toBe(honest.status()?.rolledBackMs);
  });

  it('where nothing else is known lists who is let in, and takes no code that was made before', async () => {
    await plant.join('one');
    await plant.join('two');
    const { code } = await makeCode(plant.server.running.store, Date.now());
    const file = join(plant.server.folder, 'copy.sqlite');
    await plant.server.running.store.backupTo(file);
    const other = newFolder();
    const { letIn } = await restoreInto(options(other.path, file));
    expect(letIn.map(({ tablet }) => tablet)).toEqual(['one', 'two']);
    const store = await openStore({ folder: other.path, database: null, nowMs: Date.now });
    expect(await store.takeOneTime(hashOf(code.replace('-', '')), 'enrol', Date.now())).toBeNull();
    await store.close();
    other.remove();
  });

  it('leaves the server the key that it signs with, though no backup holds one', async () => {
    const key = plant.server.running.context.key.publicKey;
    const file = join(plant.server.folder, 'copy.sqlite');
    await plant.server.running.store.backupTo(file);
    expect(readFileSync(file).includes('PRIVATE KEY')).toBe(false);
    await plant.server.restart(async () => {
      await restoreInto(options(plant.server.folder, file));
    });
    expect(plant.server.running.context.key.publicKey).toBe(key);
  });
});

describe('files of the store', () => {
  it("are their owner's alone, in a folder that others may look into too", async () => {
    const folder = newFolder();
    const data = join(folder.path, 'data');
    mkdirSync(data, { mode: 0o755 });
    chmodSync(data, 0o755);
    const store = await openStore({ folder: data, database: null, nowMs: Date.now });
    const copy = join(data, 'copy.sqlite');
    await store.backupTo(copy);
    const modes = ['log.sqlite', 'log.sqlite-wal', 'copy.sqlite'].map((name) =>
      (statSync(join(data, name)).mode & 0o777).toString(8),
    );
    expect(modes).toEqual(['600', '600', '600']);
    await store.close();
    folder.remove();
  });
});

describe('an enrolment code', () => {
  it('does not take the place of an active tablet, unless the lead named that one', async () => {
    const real = await plant.join('tabA');
    const thief = await newTablet('tabA', plant.server.running.url);
    const { code } = await makeCode(plant.server.running.store, Date.now());
    expect(await enrolTablet(thief, { code, name: 'Line 1' })).toMatchObject({
      ok: false,
      error: { code: 'tablet-active' },
    });
    expect(await offer(real)).toMatchObject({ ok: true });
    const other = await makeCode(plant.server.running.store, Date.now(), { replaces: 'tabB' });
    expect(await enrolTablet(thief, { code: other.code, name: 'Line 1' })).toMatchObject({ ok: false });
    const meant = await makeCode(plant.server.running.store, Date.now(), { replaces: 'tabA' });
    expect(await enrolTablet(thief, { code: meant.code, name: 'Line 1' })).toMatchObject({ ok: true });
    expect(await offer(thief)).toMatchObject({ ok: true });
  });
});

describe('a lead who was removed', () => {
  it('makes no code with the token of a moment ago', async () => {
    const tablet = await plant.join('t1');
    const chain = await beginChain(tablet, { nowMs: Date.now });
    const pin = pinRecord('2222');
    const lead = { person: 'p2', name: 'Lead Two', role: 'lead', badge: 'B-2', pin } as const;
    await chain.tell('person.added', lead);
    // Somebody else who may, since the last of them stays.
    await chain.tell('person.added', { ...lead, person: 'p3', name: 'Lead Three', badge: 'B-3' });
    await chain.push();
    const signIn = async (badge: string) => {
      const checked = await tablet.caller.call('/api/people/check', checkedSchema, {
        json: { badge, person: null, pin: '2222', stays: true },
      });
      if (!checked.ok) throw new Error(checked.error.code);
      return checked.value;
    };
    const { token } = await signIn('B-2');
    const ask = () => tablet.caller.call('/api/codes', codeMadeSchema, { json: {}, person: token });
    expect(await ask()).toMatchObject({ ok: true });
    await chain.tell('ticket.taken', { person: 'p3', ticket: (await signIn('B-3')).ticket ?? '' });
    await chain.tell('person.removed', { person: 'p2' }, { who: 'p3' });
    await chain.push();
    expect(await ask()).toMatchObject({ ok: false, error: { code: 'person-unproven' } });
  });
});

describe('a tablet shut out at the terminal', () => {
  it('gets not one entry more through the stream that it has open', async () => {
    const [lost, honest] = [await plant.join('lost'), await plant.join('honest')];
    lost.start();
    await until(
      'live',
      () => lost.status()?.phase === 'live' && plant.server.running.context.live.count() === 1,
    );
    // Another process on the same folder: no signal reaches the server.
    const terminal = await openStore({ folder: plant.server.folder, database: null, nowMs: Date.now });
    await terminal.revokeTablet('lost', Date.now());
    await terminal.close();
    honest.log.write(1);
    honest.start();
    await until('the entry', async () => (await plant.server.running.store.head()).pos === 1);
    await until('the end of the stream', () => lost.status()?.phase === 'refused');
    expect(lost.status()?.reason).toBe('tablet-revoked');
    expect(lost.log.entries()).toEqual([]);
  });
});
