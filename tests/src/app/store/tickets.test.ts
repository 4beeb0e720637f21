// Tickets on a tablet: checked by the page's own cryptography, and what they prove stands in the state, also after a new start.

import './browser.ts';

import { afterEach, describe, expect, test } from 'vitest';
import { entryId } from '../../../../shared/log/entry.ts';
import { packBootstrap, unpackBootstrap } from '../../../../src/app/store/pack.ts';
import { foldName, openStore, type Store } from '../../../../src/app/store/store.ts';
import { isSigned } from '../../../../src/app/store/tickets.ts';
import { beginPlant } from './ticket-plant.ts';

/** RFC 7515, A.3.1: a token signed with ES256, and its key. */
const signed =
  'eyJhbGciOiJFUzI1NiJ9.eyJpc3MiOiJqb2UiLA0KICJleHAiOjEzMDA4MTkzODAsDQogImh0dHA6Ly9leGFtcGxlLmNvbS9pc19yb290Ijp0cnVlfQ';
const signature = Buffer.from(
  'DtEhU3ljbEg8L38VWAfUAqOyKAM6-Xx-F4GawxaepmXFCgfTjDxw5djxLa8ISlSApmWQxfKTUJqPP3-Kg6NU1Q',
  'base64url',
);
const key = {
  x: 'f83OJ3D2xF1Bg8vub9tLe1gHMzV76e8Tus9uPHvRVEU',
  y: 'x_FEzRu9m36HLN_tue659LNpXW6pCyStikYjKIWI5a0',
};
const point = Buffer.concat([
  Buffer.from([4]),
  Buffer.from(key.x, 'base64url'),
  Buffer.from(key.y, 'base64url'),
]);

describe('`isSigned()`', () => {
  test('finds the token of RFC 7515, A.3 signed by its key, told either way', async () => {
    expect(await isSigned(signed, signature, key)).toBe(true);
    expect(await isSigned(signed, signature, point)).toBe(true);
  });

  test('finds it not signed where a bit of it, of the signature or the key is another', async () => {
    expect(await isSigned(`${signed}x`, signature, key)).toBe(false);
    expect(
      await isSigned(
        signed,
        signature.map((byte, at) => (at === 5 ? byte ^ 1 : byte)),
        key,
      ),
    ).toBe(false);
    expect(await isSigned(signed, signature, { ...key, x: key.y })).toBe(false);
    expect(await isSigned(signed, signature.subarray(1), key)).toBe(false);
    expect(await isSigned(signed, new Uint8Array(64), key)).toBe(false);
  });
});

let stores: Store[] = [];
let nowMs = Date.UTC(2026, 2, 2, 6);
let turn = 0;
afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
});

async function open(name: string): Promise<Store> {
  const clock = { nowMs: () => nowMs++ };
  const store = await openStore({ clock, appVersion: '0.1.0', tabletName: name, name });
  stores.push(store);
  return store;
}

async function close(store: Store): Promise<void> {
  stores = stores.filter((each) => each !== store);
  await store.close();
}

const chosen = { kind: 'setup.chosen', payload: { line: 'L1', setup: 'A' } } as const;

describe('a store', () => {
  test('asks no entry for a ticket while the plant gives none', async () => {
    const store = await open(`tickets-${turn++}`);
    await store.append([chosen], 'boss');
    expect(store.trust()).toBe(null);
    expect(store.foldName()).toBe(foldName);
    expect(store.floor().unproven.size).toBe(0);
  });

  test('marks what no ticket stands behind from the start on, and knows it again when it is opened anew', async () => {
    const name = `tickets-${turn++}`;
    const store = await open(name);
    await store.append([chosen], 'boss'); // before
    const plant = await beginPlant(store, () => nowMs);
    const [open1] = await store.append([chosen], 'boss');
    await store.trustTickets(plant.start);
    await store.append([{ kind: 'ticket.taken', payload: { person: 'boss', ticket: plant.ticket } }], null);
    await store.append([chosen], 'boss');
    const [other] = await store.append([chosen], 'somebody');
    const wanted = [open1, other].map((entry) => entry && entryId(entry));
    expect([...store.floor().unproven.keys()]).toEqual(wanted);
    expect(store.foldName()).not.toBe(foldName);
    await store.trustTickets(plant.start); // heard again: nothing changes
    expect([...store.floor().unproven.keys()]).toEqual(wanted);
    await close(store);
    const again = await open(name);
    expect([...again.floor().unproven.keys()]).toEqual(wanted);
    await again.append([chosen], 'boss');
    expect(again.floor().unproven.size).toBe(2);
  });

  test('is not deceived by a ticket with a letter changed, nor by one of another plant', async () => {
    const store = await open(`tickets-${turn++}`);
    const plant = await beginPlant(store, () => nowMs);
    const other = await beginPlant(store, () => nowMs);
    await store.trustTickets(plant.start);
    const [head = '', body = '', sig = ''] = plant.ticket.split('.');
    const claims = { ...JSON.parse(Buffer.from(body, 'base64url').toString()), role: 'engineer' };
    const forged = `${head}.${Buffer.from(JSON.stringify(claims)).toString('base64url')}.${sig}`;
    for (const ticket of [forged, other.ticket, 'e30.e30.AA', 'nothing'])
      await store.append([{ kind: 'ticket.taken', payload: { person: 'boss', ticket } }], null);
    await store.append([chosen], 'boss');
    expect([...store.floor().unproven.values()]).toMatchObject([{ why: 'no-ticket', needs: 'lead' }]);
    expect(store.floor().tickets.size).toBe(0);
  });

  test('ends its tickets where the server shut it out, also after a new start and in what it hands on', async () => {
    const name = `tickets-${turn++}`;
    const store = await open(name);
    const plant = await beginPlant(store, () => nowMs);
    await store.trustTickets(plant.start);
    await store.append([{ kind: 'ticket.taken', payload: { person: 'boss', ticket: plant.ticket } }], null);
    const shut = plant.shutOut();
    nowMs += 3_600_000;
    const [late] = await store.append([chosen], 'boss');
    expect(store.floor().unproven.size).toBe(0); // nobody has told it yet
    await store.takeIn([shut]);
    const marks = [late].map((entry) => entry && entryId(entry));
    expect([...store.floor().unproven.keys()]).toEqual(marks);
    await close(store);
    const again = await open(name);
    expect([...again.floor().unproven.keys()]).toEqual(marks);
    const { shutOuts } = again.floor();
    expect([...shutOuts]).toEqual([[again.identity.tablet, [Date.parse(shut.at)]]]);
    const [fold, { tablet, epoch, hlc }] = [again.foldName(), shut];
    const place = { tablet, epoch, seq: 2 };
    const handed = { fold, state: again.floor(), position: { ...place, hlc }, count: 2, heads: [place] };
    const taken = unpackBootstrap(packBootstrap({ bootstrap: handed, tail: [] }), fold);
    expect(taken?.bootstrap.state.shutOuts).toEqual(shutOuts);
    const fresh = await plant.give('boss');
    await again.append(
      [{ kind: 'ticket.taken', payload: { person: 'boss', ticket: fresh ?? '' } }, chosen],
      'boss',
    );
    expect([...again.floor().unproven.keys()]).toEqual(marks);
  });

  test('takes no word for it that another key signed', async () => {
    const store = await open(`tickets-${turn++}`);
    const plant = await beginPlant(store, () => nowMs);
    const other = await beginPlant(store, () => nowMs);
    await store.trustTickets(plant.start);
    await store.append([{ kind: 'ticket.taken', payload: { person: 'boss', ticket: plant.ticket } }], null);
    await store.takeIn([plant.shutOut(other.serverKey.sign)]);
    nowMs += 3_600_000;
    await store.append([chosen], 'boss');
    expect([store.floor().unproven.size, store.floor().shutOuts.size]).toEqual([0, 0]);
  });
});
