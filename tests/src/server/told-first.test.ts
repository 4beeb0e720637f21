// Who is let in or shut out stands in the plant's log before it is done: what could not be told is not done, and may be asked for again.

import { userInfo } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { checkedSchema } from '../../../shared/wire/messages.ts';
import { enrolTablet } from '../../../src/app/sync/enrol.ts';
import { makeCode, terminal } from '../../../src/server/codes.ts';
import { boss, maker, newTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant({ app: '1' });

/** Makes the log refuse entries of one kind, as a full disk does; answers what ends that. */
function refuseKind(kind: string): () => void {
  const run = (text: string) => {
    const raw = new Database(join(plant.server.folder, 'log.sqlite'));
    raw.exec(text);
    raw.close();
  };
  run(`create trigger refuse before insert on entries when new.kind = '${kind}'
    begin select raise(abort, 'refused'); end`);
  return () => run('drop trigger refuse');
}

const told = async (kind: string) =>
  (await plant.server.running.store.ofKinds([kind], 0)).map(({ text }) => JSON.parse(text).payload.tablet);

describe('what cannot be told in the log', () => {
  it('lets no tablet in', async () => {
    const allow = refuseKind('tablet.let-in');
    const { running } = plant.server;
    const tablet = await newTablet('late', running.url);
    const code = async () => (await makeCode(running.store, Date.now())).code;
    expect(await enrolTablet(tablet, { code: await code(), name: 'Late' })).toMatchObject({ ok: false });
    expect(await running.store.findTablet('late')).toBeNull();
    allow();
    expect(await enrolTablet(tablet, { code: await code(), name: 'Late' })).toMatchObject({ ok: true });
    expect(await told('tablet.let-in')).toEqual(['late']);
  });

  it('shuts none out until it can, and then says so', async () => {
    const tablet = await plant.join('tabA');
    const gone = await plant.join('gone');
    tablet.log.write(2, (seq) => ({ ...(seq === 1 ? boss : maker) }), 'person.added');
    tablet.start();
    const { store } = plant.server.running;
    await until('the people', async () => (await store.ofKinds(['person.added'], 0)).length === 2);
    const checked = await tablet.caller.call('/api/people/check', checkedSchema, {
      json: { badge: 'B-2', person: null, pin: '2222' },
    });
    if (!checked.ok) throw new Error(checked.error.code);
    const shutOut = () =>
      tablet.caller.call('/api/tablets/revoke', z.object({ revoked: z.boolean() }), {
        json: { tablet: gone.key.tablet },
        person: checked.value.token,
      });
    const allow = refuseKind('tablet.shut-out');
    expect(await shutOut()).toMatchObject({ ok: false });
    expect(await told('tablet.shut-out')).toEqual([]);
    allow();
    expect(await shutOut()).toMatchObject({ value: { revoked: true } });
    expect(await shutOut()).toMatchObject({ value: { revoked: false } });
    expect(await told('tablet.shut-out')).toEqual(['gone']);
  });
});

describe('`terminal()`', () => {
  it('names the account, by its number where it has no name', () => {
    expect(terminal()).toEqual({ person: null, account: userInfo().username });
    const nameless = () => {
      throw new Error('uv_os_get_passwd returned ENOENT');
    };
    expect(terminal(nameless)).toEqual({ person: null, account: `uid ${process.getuid?.()}` });
  });
});
