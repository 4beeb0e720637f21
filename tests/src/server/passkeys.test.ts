// Signatures of passkeys, checked by the server's library and by the page's own cryptography: both say the same of the same entry. And
// against a running server: what a false one signs is taken, and stands as unproven on every tablet and in exports.

import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import { joinedSignature } from '../../../shared/floor/passkey-sign.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { parseExport } from '../../../shared/log/export-read.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { readProofRecord } from '../../../shared/log/proof-record.ts';
import { checkedSchema, plantKeysSchema, pulledSchema } from '../../../shared/wire/messages.ts';
import { signedBy as signedOnTablet } from '../../../src/app/store/passkeys.ts';
import { trustFromNote } from '../../../src/app/store/tickets.ts';
import { trustOf } from '../../../src/app/store/trust.ts';
import { exportBytes } from '../../../src/server/http/export-routes.ts';
import { signedBy as signedOnServer } from '../../../src/server/people/passkeys.ts';
import {
  newPasskey,
  registered,
  type Signing,
  signWith,
  type TestPasskey,
} from '../../shared/floor/authenticator.ts';
import { beginStory, startMs } from '../../shared/floor/story.ts';
import { joinChain, type TestChain } from './chains.ts';
import { boss, maker, newClock, startTestServer, type TestServer } from './tablets.ts';

const cleared = { of: 'x', line: 'L1', slot: 'M1-F-001', reason: 'looked', checked: 'tablet' } as const;

/** A hold cleared, signed as told. */
function signedEntry(passkey: TestPasskey, bent: Partial<Signing> = {}, change: object = {}): Entry {
  const payload = { ...cleared, by: 'ana' };
  const acts = [{ kind: 'hold.cleared', payload }];
  const chain = { tablet: 'T1', epoch: 'T1-life-1' };
  const use = signWith(passkey, { chain, asked: startMs, acts, ...bent });
  return beginStory().tell('hold.cleared', { ...payload, passkey: { ...use, ...change } });
}

const bothSay = async (entry: Entry) => [
  (await signedOnServer(entry)) !== null,
  (await signedOnTablet(entry)) !== null,
];

describe('the signature of a passkey', () => {
  it('holds on server and tablet, whichever kind of key, also by http on this very machine', async () => {
    for (const kind of ['EC', 'RSA'] as const)
      expect(await bothSay(signedEntry(newPasskey(kind))), kind).toEqual([true, true]);
    const local = { host: 'localhost', origin: 'http://localhost:8080' };
    expect(await bothSay(signedEntry(newPasskey(), local))).toEqual([true, true]);
    // Numbers of any length in the signature's form: some begin with a zero, some are short.
    for (let times = 0; times < 40; times += 1)
      expect(await bothSay(signedEntry(newPasskey()))).toEqual([true, true]);
  });

  it.each<[string, Partial<Signing>]>([
    ['another challenge', { challenge: 'A'.repeat(43) }],
    ['another page', { origin: 'https://elsewhere.test' }],
    ['another host', { origin: 'https://plant.test.elsewhere.test' }],
    ['no user made sure of', { flags: 1 }],
    ['no user there', { flags: 4 }],
    ['a registration', { type: 'webauthn.create' }],
    ['another tablet', { chain: { tablet: 'T2', epoch: 'T2-life-1' } }],
    ['another act', { acts: [{ kind: 'hold.cleared', payload: { ...cleared, by: 'bo' } }] }],
  ])('over %s does not', async (_, bent) => {
    expect(await bothSay(signedEntry(newPasskey(), bent))).toEqual([false, false]);
  });

  it('by another key, or bent, does not', async () => {
    const { key } = newPasskey();
    const passkey = newPasskey();
    const [honest, rsa] = [signedEntry(passkey), newPasskey('RSA')];
    const use = honest.payload['passkey'] as { readonly sig: string; readonly data: string };
    for (const change of [
      { key },
      { key: rsa.key },
      { key: { ...key, y: key.kty === 'EC' ? key.x : '' } },
      { sig: use.sig.slice(0, -4) },
      { sig: `${use.sig}AAAA` },
      { sig: 'AAAA' },
      { data: `${use.data}AAAA` },
      { data: use.data.slice(0, 8) },
    ])
      expect(await bothSay(signedEntry(passkey, {}, change)), JSON.stringify(change)).toEqual([false, false]);
  });

  it('is taken out of its form as RFC 3279 has it, and nothing else is', () => {
    const one = Buffer.from('3006020101020102', 'hex');
    const joined = Buffer.concat([Buffer.alloc(31), Buffer.from([1]), Buffer.alloc(31), Buffer.from([2])]);
    expect(Buffer.from(joinedSignature(one) ?? [])).toEqual(joined);
    for (const hex of [
      '',
      '3006',
      '30060201010202',
      '3006020101020202',
      '3106020101020102',
      '300602010102010200',
      '3004020002 00',
      '30070202000102 0102',
      '3006020181020102',
    ])
      expect(joinedSignature(Buffer.from(hex.replace(' ', ''), 'hex')), hex).toBe(null);
  });
});

describe('a plant with passkeys', () => {
  let server: TestServer;
  let clock: ReturnType<typeof newClock>;
  let chain: TestChain;
  let bad: TestChain;
  const passkey = newPasskey();

  beforeEach(async () => {
    clock = newClock();
    server = await startTestServer({ clock });
    chain = await joinChain(server.running, 't1', clock);
    bad = await joinChain(server.running, 't2', clock);
    for (const person of [maker, boss]) await chain.tell('person.added', person, { who: 'maker' });
    await chain.push();
    const json = { badge: 'B-3', person: null, pin: '3333', stays: true };
    const checked = await chain.tablet.caller.call('/api/people/check', checkedSchema, { json });
    if (!checked.ok || checked.value.ticket === undefined) throw new Error('no ticket');
    await chain.tell('ticket.taken', { person: 'maker', ticket: checked.value.ticket });
    await chain.tell('passkey.added', registered(passkey, 'boss', { by: 'maker' }), { who: 'maker' });
    await chain.push();
  });
  afterEach(() => server.stop());

  /** The lead clears a hold at a tablet where nobody entered a PIN. */
  async function clear(at: TestChain, by: TestPasskey, bent: Partial<Signing> = {}): Promise<Entry> {
    const payload = { ...cleared, by: 'boss' };
    const acts = [{ kind: 'hold.cleared', payload }];
    const ends = { tablet: at.tablet.name, epoch: 'e1' };
    const use = signWith(by, { chain: ends, asked: clock.nowMs(), acts, ...bent });
    const entry = await at.tell('hold.cleared', { ...payload, passkey: use }, { who: 'boss' });
    await at.push();
    return entry;
  }

  /** The floor as a tablet folds it that knows the plant's key. */
  async function floorNow(): Promise<FloorState> {
    const { caller } = chain.tablet;
    const keys = await caller.call('/api/keys', plantKeysSchema);
    const pulled = await caller.call('/api/pull?after=0.0000000000000000', pulledSchema);
    if (!keys.ok || !pulled.ok || keys.value.tickets === undefined) throw new Error('no answer');
    const kept = trustFromNote({ note: keys.value.tickets, serverKey: server.running.context.key.publicKey });
    if (!kept) throw new Error('no note');
    const trust = trustOf(kept);
    const entries = (pulled.value.entries as Entry[]).sort(compareEntries);
    await trust.look(entries);
    return applyAll(emptyState(), entries, trust);
  }

  async function exported(format: 'json' | 'csv') {
    const wish = { format, from: null, to: null, line: null } as const;
    const chunks: Buffer[] = [];
    for await (const chunk of await exportBytes(wish, server.running.context))
      chunks.push(Buffer.from(chunk));
    return Buffer.concat(chunks).toString();
  }

  it('proves who cleared a hold where no server gave a ticket', async () => {
    const entry = await clear(bad, passkey);
    expect((await floorNow()).unproven.size).toBe(0);
    const rights = readProofRecord(parseExport(await exported('json')).proofs?.[0] as Entry)?.rights;
    expect(rights).toEqual({ unproven: [], confirmed: [], rejected: [] });
    const rows = (await exported('csv')).split('\r\n').filter((row) => row.includes(entry.hash));
    expect(rows[0]).toContain(',passkey,');
  });

  it('takes what a false one signed into the log, and marks it on tablets and in exports', async () => {
    const stranger = { ...newPasskey(), credential: passkey.credential };
    const forged = await clear(bad, stranger);
    const unverified = await clear(bad, passkey, { flags: 1 });
    const floor = await floorNow();
    for (const entry of [forged, unverified])
      expect(floor.unproven.get(entryId(entry))).toMatchObject({ why: 'passkey', by: 'boss' });
    const rights = readProofRecord(parseExport(await exported('json')).proofs?.[0] as Entry)?.rights;
    expect([...(rights?.unproven ?? [])].sort()).toEqual([forged, unverified].map(entryId).sort());
  });

  it('believes no passkey that a tablet registered in a lead’s name without a ticket', async () => {
    const own = newPasskey();
    await bad.tell('passkey.added', registered(own, 'boss', { by: 'boss' }), { who: 'boss' });
    const entry = await clear(bad, own);
    expect((await floorNow()).unproven.get(entryId(entry))).toMatchObject({ why: 'no-ticket' });
  });
});
