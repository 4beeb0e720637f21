// Attacks on rights against a running server: whoever writes entries as a lead without a ticket of that lead for that tablet gets
// them into the log, where they stand as unproven, and gets no right by them. Honest tablets lose nothing.

import { generateKeyPairSync } from 'node:crypto';
import { join } from 'node:path';
import { SignJWT } from 'jose';
import Papa from 'papaparse';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { ticketMs, ticketType } from '../../../shared/floor/ticket.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { parseExport } from '../../../shared/log/export-read.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { readProofRecord } from '../../../shared/log/proof-record.ts';
import { serverChain } from '../../../shared/log/server-chain.ts';
import {
  checkedSchema,
  codeMadeSchema,
  plantKeysSchema,
  pulledSchema,
  pushedSchema,
} from '../../../shared/wire/messages.ts';
import { trustFromNote } from '../../../src/app/store/tickets.ts';
import { trustOf } from '../../../src/app/store/trust.ts';
import { exportBytes } from '../../../src/server/http/export-routes.ts';
import { readRights } from '../../../src/server/people/rights.ts';
import { restoreInto } from '../../../src/server/stores/restore.ts';
import { beginChain, joinChain, type TestChain } from './chains.ts';
import {
  boss,
  enrolAt,
  maker,
  newClock,
  newTablet,
  pinRecord,
  startTestServer,
  type TestServer,
} from './tablets.ts';

const oper = { person: 'oper', name: 'Oda', role: 'operator', badge: 'B-1', pin: pinRecord('1111') } as const;
/** Whom the attacker would like to be. */
const mal = { person: 'mal', name: 'Mal', role: 'engineer', badge: 'B-9', pin: pinRecord('9999') } as const;
const cleared = {
  of: 'x',
  line: 'L1',
  slot: 'M1-F-001',
  reason: 'looked',
  by: 'boss',
  checked: 'server',
} as const;

let server: TestServer;
let clock: ReturnType<typeof newClock>;
/** The lead's tablet, and one in bad hands. */
let lead: TestChain;
let bad: TestChain;

async function check(chain: TestChain, badge: string, pin: string, stays = true) {
  const json = { badge, person: null, pin, stays };
  return chain.tablet.caller.call('/api/people/check', checkedSchema, { json });
}

/** Signs in at the server and writes the ticket down, as the app does. */
async function signIn(
  chain: TestChain,
  person: typeof boss | typeof maker,
  pin: string,
  stays = true,
): Promise<string> {
  const checked = await check(chain, person.badge, pin, stays);
  if (!checked.ok || checked.value.ticket === undefined) throw new Error('no ticket');
  await chain.tell('ticket.taken', { person: person.person, ticket: checked.value.ticket });
  return checked.value.ticket;
}

/** The floor as a tablet folds it that knows the plant's key; `more`: entries that came another way. */
async function floorNow(chain: TestChain, more: readonly Entry[] = []): Promise<FloorState> {
  const keys = await chain.tablet.caller.call('/api/keys', plantKeysSchema);
  const pulled = await chain.tablet.caller.call('/api/pull?after=0.0000000000000000', pulledSchema);
  if (!keys.ok || !pulled.ok || keys.value.tickets === undefined) throw new Error('no answer');
  const kept = trustFromNote({ note: keys.value.tickets, serverKey: server.running.context.key.publicKey });
  if (!kept) throw new Error('no note');
  const trust = trustOf(kept);
  const entries = [...(pulled.value.entries as Entry[]), ...more].sort(compareEntries);
  await trust.look(entries);
  return applyAll(emptyState(), entries, trust);
}

const isKnown = async (person: string) => (await server.running.context.people.people()).has(person);

/** The attacker adds himself, as the lead; then everything is sent. */
async function addMal(): Promise<Entry> {
  const added = await bad.tell('person.added', mal, { who: 'boss' });
  await bad.push();
  return added;
}

/** In the log, marked on every tablet, and of no effect at the server. */
async function expectUnproven(entry: Entry, why: string): Promise<void> {
  const floor = await floorNow(lead);
  expect(floor.unproven.get(entryId(entry))).toMatchObject({ why, settled: null });
  expect(await isKnown('mal')).toBe(false);
  const tried = await check(bad, 'B-9', '9999');
  expect(tried).toMatchObject({ ok: false, error: { code: 'person-unproven' } });
}

beforeEach(async () => {
  clock = newClock();
  server = await startTestServer({ clock, app: '1' });
  lead = await joinChain(server.running, 't1', clock);
  bad = await joinChain(server.running, 't2', clock);
  for (const person of [maker, boss, oper]) await lead.tell('person.added', person, { who: 'maker' });
  await lead.push();
  await signIn(lead, boss, '2222');
  await lead.push();
});
afterEach(() => server.stop());

describe('a ticket', () => {
  it('proves what its person does on its tablet, to the server and to every tablet', async () => {
    const added = await lead.tell('person.added', mal, { who: 'boss' });
    const hold = await lead.tell('hold.cleared', cleared);
    await lead.push();
    expect([...(await floorNow(bad)).unproven.keys()]).toEqual([]);
    expect(await isKnown('mal')).toBe(true);
    expect((await floorNow(bad)).people.has('mal')).toBe(true);
    expect([added.seq, hold.seq]).toEqual([6, 7]);
  });

  it('is not given before somebody who may add people has come, nor for a badge alone', async () => {
    const other = await startTestServer({ clock });
    try {
      const tablet = await newTablet('t9', other.running.url, clock);
      await enrolAt(other.running, tablet);
      const chain = await beginChain(tablet, clock);
      await chain.tell('person.added', oper);
      await chain.push();
      const checked = await check(chain, 'B-1', '1111');
      expect(checked.ok && checked.value.ticket).toBe(undefined);
      expect(await other.running.context.tickets.started()).toBe(null);
    } finally {
      await other.stop();
    }
    const badge = await lead.tablet.caller.call('/api/people/check', checkedSchema, {
      json: { badge: 'B-2', person: null, pin: null },
    });
    expect(badge.ok && badge.value.ticket).toBe(undefined);
  });

  it('leaves what the log held before the first one as it was: nobody is accused', async () => {
    expect(await isKnown('oper')).toBe(true);
    expect((await floorNow(lead)).unproven.size).toBe(0);
  });

  it('holds on after the server has started again', async () => {
    await server.restart();
    await lead.tell('person.added', mal, { who: 'boss' });
    await lead.push();
    expect(await isKnown('mal')).toBe(true);
  });
});

describe('a backup put back', () => {
  it('leaves the line where it was drawn: what tablets send again is not accused', async () => {
    const before = await server.running.context.tickets.started();
    const file = join(server.folder, 'old.sqlite');
    const empty = await startTestServer({ clock });
    await empty.running.store.backupTo(file);
    await empty.stop();
    await server.restart(async () => {
      await restoreInto({ file, folder: server.folder, database: null, replace: true, nowMs: clock.nowMs });
    });
    expect(before).not.toBe(null);
    expect(await server.running.context.tickets.started()).toBe(before);
  });
});

describe('a tablet in bad hands', () => {
  it('gets no right by entries as a lead without a ticket', async () => {
    const hold = await bad.tell('hold.cleared', cleared);
    await expectUnproven(await addMal(), 'no-ticket');
    expect((await floorNow(lead)).unproven.get(entryId(hold))).toMatchObject({ by: 'boss', needs: 'lead' });
  });

  it('gets none by the ticket of another tablet', async () => {
    const ticket = lead.entries.at(-1)?.payload['ticket'] as string; // just signed in
    await bad.tell('ticket.taken', { person: 'boss', ticket });
    await expectUnproven(await addMal(), 'no-ticket');
  });

  it('gets none by a ticket of another plant', async () => {
    const other = await startTestServer({ clock });
    try {
      const tablet = { ...bad.tablet, caller: (await newTablet('t2', other.running.url, clock)).caller };
      const given = await other.running.context.tickets.give(boss, bad.tablet.key, {
        nowMs: clock.nowMs(),
        stays: true,
      });
      expect(tablet.name).toBe('t2');
      await bad.tell('ticket.taken', { person: 'boss', ticket: String(given) });
    } finally {
      await other.stop();
    }
    await expectUnproven(await addMal(), 'no-ticket');
  });

  it.each(['another key', 'no signature', 'the public key as a secret', 'a role of its own'])(
    'gets none by a ticket made up with %s',
    async (how) => {
      // A real one to begin with: the operator's.
      const checked = await check(bad, 'B-1', '1111');
      const real = (checked.ok && checked.value.ticket) || '';
      const [head = '', body = '', sig = ''] = real.split('.');
      const claims = { ...JSON.parse(Buffer.from(body, 'base64url').toString()), sub: 'boss', role: 'lead' };
      const packed = (value: object) => Buffer.from(JSON.stringify(value)).toString('base64url');
      const own = generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey;
      const header = { alg: 'ES256', typ: ticketType };
      const made = {
        'another key': await new SignJWT(claims).setProtectedHeader(header).sign(own),
        'no signature': `${packed({ alg: 'none', typ: ticketType })}.${packed(claims)}.`,
        'the public key as a secret': await new SignJWT(claims)
          .setProtectedHeader({ alg: 'HS256', typ: ticketType })
          .sign(Buffer.from(server.running.context.key.publicKey, 'base64url')),
        'a role of its own': `${head}.${packed(claims)}.${sig}`,
      }[how];
      await bad.tell('ticket.taken', { person: 'boss', ticket: String(made) });
      await expectUnproven(await addMal(), 'no-ticket');
    },
  );

  it("gets none by an operator's own ticket", async () => {
    const checked = await check(bad, 'B-1', '1111');
    await bad.tell('ticket.taken', { person: 'oper', ticket: (checked.ok && checked.value.ticket) || '' });
    const added = await bad.tell('person.added', mal, { who: 'oper' });
    await bad.push();
    await expectUnproven(added, 'role');
  });

  it('gets none by a ticket that is over', async () => {
    await signIn(bad, boss, '2222');
    await bad.push();
    clock.shiftMs += ticketMs + 3_600_000;
    await expectUnproven(await addMal(), 'ticket-over');
  });

  it('gets none by a ticket that was for one decision, an hour later', async () => {
    await signIn(bad, boss, '2222', false);
    await bad.push();
    clock.shiftMs += 3_600_000;
    await expectUnproven(await addMal(), 'ticket-over');
  });

  it('gets none by the ticket of a person who was removed, or has a lesser role since', async () => {
    await signIn(bad, boss, '2222');
    await bad.push();
    await signIn(lead, maker, '3333');
    await lead.tell('person.added', { ...boss, role: 'operator' }, { who: 'maker' });
    await lead.push();
    clock.shiftMs += 1000;
    await expectUnproven(await addMal(), 'no-ticket');
    await lead.tell('person.removed', { person: 'boss' }, { who: 'maker' });
    await lead.push();
    clock.shiftMs += 1000;
    await expectUnproven(await addMal(), 'no-ticket');
  });

  it('gets none by a chain that is dated back to before the plant gave tickets', async () => {
    const yearAgo = clock.nowMs() - 365 * 86_400_000;
    const old = await beginChain(bad.tablet, { nowMs: () => yearAgo, epoch: 'e0' });
    const added = await old.tell('person.added', mal, { who: 'boss' });
    await old.push();
    await expectUnproven(added, 'no-ticket');
  });

  it('cannot take the lead out, nor confirm its own entries', async () => {
    const added = await addMal();
    await bad.tell('person.removed', { person: 'boss' }, { who: 'maker' });
    await bad.tell('unproven.settled', {
      entries: [entryId(added)],
      settled: 'confirmed',
      by: 'boss',
      reason: 'x',
    });
    await bad.push();
    await expectUnproven(added, 'no-ticket');
    expect(await check(lead, 'B-2', '2222')).toMatchObject({ ok: true });
  });

  it('costs an honest tablet none of its entries', async () => {
    await addMal();
    await lead.tell('hold.cleared', cleared);
    await lead.push();
    const marks = await server.running.store.marks([{ tablet: 't1', epoch: 'e1' }]);
    expect(marks).toEqual([{ tablet: 't1', epoch: 'e1', seq: lead.entries.length }]);
    expect(await server.running.store.quarantined()).toEqual([]);
  });
});

describe("a lead's word", () => {
  const settle = async (entry: Entry, settled: 'confirmed' | 'rejected') => {
    await lead.tell('unproven.settled', {
      entries: [entryId(entry)],
      settled,
      by: 'boss',
      reason: 'I know of it',
    });
    await lead.push();
  };

  it('confirms a person who was added without a ticket: from then on the server knows them', async () => {
    const added = await addMal();
    await settle(added, 'confirmed');
    expect((await floorNow(bad)).unproven.get(entryId(added))?.settled).toMatchObject({
      as: 'confirmed',
      by: 'boss',
    });
    const checked = await check(bad, 'B-9', '9999');
    if (!checked.ok) throw new Error(checked.error.code);
    const made = await bad.tablet.caller.call('/api/codes', codeMadeSchema, {
      json: {},
      person: checked.value.token,
    });
    expect(made.ok).toBe(true);
  });

  it('rejects one for good', async () => {
    const added = await addMal();
    await settle(added, 'rejected');
    await settle(added, 'confirmed');
    expect((await floorNow(bad)).unproven.get(entryId(added))?.settled).toMatchObject({ as: 'rejected' });
    expect(await isKnown('mal')).toBe(false);
  });

  it('settles nothing that takes an engineer', async () => {
    const ruled = await bad.tell('line.crewed', { line: 'L1', operators: 2 }, { who: 'maker' });
    const moved = await bad.tell('feeder.withdrawn', { feeder: 'F1', reason: 'bent' }, { who: 'maker' });
    await bad.push();
    await settle(moved, 'confirmed');
    const { unproven } = await floorNow(bad);
    expect(unproven.has(entryId(ruled))).toBe(false);
    expect(unproven.get(entryId(moved))).toMatchObject({ needs: 'engineer', settled: null });
  });
});

describe('an export', () => {
  const textOf = async (format: 'csv' | 'json') => {
    const asked = { format, from: null, to: null, line: null };
    const parts: Uint8Array[] = [];
    for await (const part of await exportBytes(asked, server.running.context)) parts.push(part);
    return Buffer.concat(parts).toString();
  };

  it('says what is proven, row by row, and reads back whole', async () => {
    const added = await addMal();
    await lead.tell('hold.cleared', cleared);
    await lead.push();
    const csv = await textOf('csv');
    expect(parseExport(csv)).toMatchObject({ faults: [] });
    const [header = [], ...rows] = Papa.parse<string[]>(csv.trim()).data;
    const column = (name: string) => rows.map((row) => row[header.indexOf(name)] ?? '');
    const said = column('kind').map((kind, at) => [kind, column('right')[at]]);
    expect(said.filter(([kind]) => kind === 'person.added')).toEqual([
      ...Array.from({ length: 3 }, () => ['person.added', 'before-tickets']),
      ['person.added', 'unproven'],
    ]);
    expect(said).toContainEqual(['hold.cleared', 'proven']);
    expect(said).toContainEqual(['ticket.taken', '']);
    const [record] = parseExport(await textOf('json')).proofs ?? [];
    expect(record && readProofRecord(record)?.rights).toEqual({
      unproven: [entryId(added)],
      confirmed: [],
      rejected: [],
    });
  });
});

describe('a tablet that was shut out', () => {
  /** The lead shuts the tablet out, as at a tablet's screen. */
  async function shutOut(tablet: string): Promise<void> {
    const checked = await check(lead, boss.badge, '2222');
    if (!checked.ok) throw new Error(checked.error.code);
    const { token } = checked.value;
    const answer = await lead.tablet.caller.open('/api/tablets/revoke', { json: { tablet }, person: token });
    expect(answer.ok).toBe(true);
  }
  /** Another tablet brings what it wrote. */
  async function bring(entries: readonly Entry[]): Promise<void> {
    const brought = await lead.tablet.caller.call('/api/push', pushedSchema, {
      json: { sentMs: clock.nowMs(), entries },
    });
    expect(brought).toMatchObject({ ok: true, value: { faults: [] } });
  }
  /** What the server's export and a tablet's fold hold for unproven: the same. */
  async function unproven(): Promise<readonly string[]> {
    const { marks } = await readRights(server.running.store, server.running.context.tickets);
    expect([...(await floorNow(lead)).unproven.keys()].sort()).toEqual([...marks.unproven].sort());
    return marks.unproven;
  }

  it('takes its tickets with it: what is brought in its name later proves nothing, here and on every tablet', async () => {
    await signIn(bad, boss, '2222');
    await bad.push();
    await shutOut('t2');
    clock.shiftMs += 3_600_000;
    const added = await bad.tell('person.added', mal, { who: 'boss' });
    await bring([added]);
    expect(await isKnown('mal')).toBe(false);
    expect((await floorNow(lead)).unproven.get(entryId(added))).toMatchObject({ why: 'ticket-over' });
    expect(await unproven()).toEqual([entryId(added)]);
  });

  it('keeps proven what it did before and what is brought later', async () => {
    await signIn(bad, boss, '2222');
    await bad.push();
    const before = await bad.tell('hold.cleared', cleared);
    clock.shiftMs += 3_600_000;
    await shutOut('t2');
    await bring([before]);
    expect(await unproven()).toEqual([]);
  });

  it('let in again works with a new ticket; what it wrote while it was out stays unproven', async () => {
    await signIn(bad, boss, '2222');
    await bad.push();
    await shutOut('t2');
    clock.shiftMs += 3_600_000;
    const meanwhile = await bad.tell('hold.cleared', cleared);
    clock.shiftMs += 1000;
    await enrolAt(server.running, bad.tablet);
    await bad.push();
    expect(await unproven()).toEqual([entryId(meanwhile)]);
    await signIn(bad, boss, '2222');
    await bad.tell('hold.cleared', cleared);
    await bad.push();
    expect(await unproven()).toEqual([entryId(meanwhile)]);
  });

  it('is one that the server says: what another tablet says of it, under its own name or the server’s, ends nothing', async () => {
    const own = (await server.running.store.heads()).find(({ tablet }) => tablet === serverChain);
    const payload = { tablet: 't1', person: null, account: 'keeper' };
    await bad.tell('tablet.shut-out', payload);
    await bad.push();
    // A chain of the server's name, which no server takes once it has one; a log of elsewhere may hold it.
    const feigned = await beginChain(
      { ...bad.tablet, name: serverChain },
      { nowMs: clock.nowMs, epoch: 'x' },
    );
    await feigned.tell('tablet.shut-out', payload);
    const pushed = await bad.tablet.caller.call('/api/push', pushedSchema, {
      json: { sentMs: clock.nowMs(), entries: feigned.entries },
    });
    expect(pushed.ok && pushed.value.faults.map(({ fault }) => fault)).toEqual(['signature-differs']);
    expect(own).toBeDefined();
    clock.shiftMs += 3_600_000;
    await lead.tell('hold.cleared', cleared);
    await lead.push();
    expect(await unproven()).toEqual([]);
    const floor = await floorNow(lead, feigned.entries);
    expect([floor.unproven.size, floor.shutOuts.size]).toEqual([0, 0]);
  });

  it('ends its tickets at the server also where no entry tells it, as of servers of before', async () => {
    await signIn(bad, boss, '2222');
    await bad.push();
    await server.running.store.revokeTablet('t2', clock.nowMs());
    clock.shiftMs += 3_600_000;
    const added = await bad.tell('person.added', mal, { who: 'boss' });
    await bring([added]);
    expect(await isKnown('mal')).toBe(false);
  });
});
