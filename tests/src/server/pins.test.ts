// Attacks on PINs against a running server: what checks a PIN is in no entry, no export, no backup and no answer; no tablet sets another
// tablet's PIN, locks the leads out, or checks offline what it never checked with the server.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { pinLockMs, pinTries } from '../../../shared/wire/limits.ts';
import { checkedSchema, pinsKeptSchema, pulledSchema } from '../../../shared/wire/messages.ts';
import { checkWho, type KeptPins, type LocalPerson, type SeenPerson } from '../../../src/app/sync/person.ts';
import { openServerKey } from '../../../src/server/keys.ts';
import { createPinSeal } from '../../../src/server/people/pin-seal.ts';
import { restoreInto } from '../../../src/server/stores/restore.ts';
import { joinChain, type TestChain } from './chains.ts';
import { newClock, newTablet, pinRecord, startTestServer, type TestServer } from './tablets.ts';

const salt = 'feedfacefeedface';
const checkOf = (pin: string) => pinRecord(pin, salt);
const boss = { person: 'boss', name: 'Bea', role: 'lead', badge: 'B-2', pinSet: 'pin-of-boss' } as const;
const aide = { person: 'aide', name: 'Ada', role: 'lead', badge: 'B-3', pinSet: 'pin-of-aide' } as const;

let server: TestServer;
let clock: ReturnType<typeof newClock>;
let lead: TestChain;
let bad: TestChain;

const check = async ({ tablet }: TestChain, person: string, pin: string) => {
  const json = { badge: null, person, pin, stays: true };
  const answer = await tablet.caller.call('/api/people/check', checkedSchema, { json });
  return answer.ok ? 'ok' : answer.error.code;
};
const hand = async ({ tablet }: TestChain, pin: string, told: string) => {
  const json = { pins: [{ pin, ...checkOf(told) }] };
  const answer = await tablet.caller.call('/api/people/pins', pinsKeptSchema, { json });
  return answer.ok ? answer.value.kept : answer.error.code;
};

beforeEach(async () => {
  clock = newClock();
  server = await startTestServer({ clock });
  lead = await joinChain(server.running, 't1', clock);
  bad = await joinChain(server.running, 't2', clock);
  for (const person of [boss, aide]) await lead.tell('person.added', person, { who: 'boss' });
  await lead.push();
  expect(await hand(lead, boss.pinSet, '2222')).toEqual([boss.pinSet]);
  expect(await hand(lead, aide.pinSet, '3333')).toEqual([aide.pinSet]);
});
afterEach(() => server.stop());

describe('what checks a PIN', () => {
  it('is in nothing that the server sends or that leaves it, and checks the PIN all the same', async () => {
    expect(await check(bad, 'boss', '2221')).toBe('pin-wrong');
    expect(await check(bad, 'boss', '2222')).toBe('ok');
    const { hash } = checkOf('2222');
    const pulled = await bad.tablet.caller.call('/api/pull?after=0.0000000000000000', pulledSchema);
    expect(JSON.stringify(pulled)).toContain('pin-of-boss');
    expect(JSON.stringify(pulled)).not.toContain(salt);
    const file = join(server.folder, 'copy.sqlite');
    await server.running.store.backupTo(file);
    // The salt is of no use alone; the verifier is sealed with what no backup holds.
    expect(readFileSync(file).includes(hash)).toBe(false);
    const kept = await server.running.store.findPin(JSON.stringify(['t1', boss.pinSet]));
    expect(kept?.verifier).not.toContain(hash);
    const other = createPinSeal((await openServerKey({ keepMeta: async (_, value) => value })).secret);
    expect(other.isOwn(kept?.verifier ?? '')).toBe(false);
    expect(await other.fits(hash, kept?.verifier ?? '')).toBe(false);
  });

  it('comes only from the tablet whose entry set the PIN, once, and counts only where that entry does', async () => {
    expect(await hand(bad, boss.pinSet, '9999')).toEqual([]);
    expect(await hand(lead, boss.pinSet, '9999')).toEqual([boss.pinSet]);
    expect(await check(lead, 'boss', '9999')).toBe('pin-wrong');
    expect(await check(lead, 'boss', '2222')).toBe('ok');
    // From here on a right is asked for: what the bad tablet says of the lead, under the PIN's own name too, counts for nothing.
    for (const pinSet of ['mine', boss.pinSet]) {
      await bad.tell('person.added', { ...boss, pinSet }, { who: 'boss' });
      await bad.push();
      expect(await hand(bad, pinSet, '9999')).toEqual([pinSet]);
      expect(await check(bad, 'boss', '9999')).toBe('pin-wrong');
      expect(await check(bad, 'boss', '2222')).toBe('ok');
    }
  });

  it('that is not here yet is asked of the tablet, and not answered as a wrong PIN', async () => {
    await lead.tell('person.added', { ...aide, pinSet: 'newer' }, { who: 'boss' });
    await lead.push();
    expect(await check(bad, 'aide', '3333')).toBe('person-unproven');
    expect(await hand(lead, 'newer', '4444')).toEqual(['newer']);
    expect(await check(bad, 'aide', '3333')).toBe('pin-wrong');
    expect(await check(bad, 'aide', '4444')).toBe('ok');
    // Another name, the same PIN.
    const { pinSet: _, ...renamed } = aide;
    await lead.tell('person.added', { ...renamed, name: 'Ada B.' }, { who: 'boss' });
    await lead.push();
    expect(await check(bad, 'aide', '4444')).toBe('ok');
  });

  it('outlives a restore beside the key, and comes again from its tablet where the key is gone', async () => {
    const file = join(server.folder, 'copy.sqlite');
    await server.running.store.backupTo(file);
    const restored = { file, folder: server.folder, database: null, nowMs: Date.now, replace: true };
    await server.restart(async () => void (await restoreInto(restored)));
    expect(await check(lead, 'boss', '2222')).toBe('ok');
    await server.running.store.writeMeta('server_key', newPem());
    await server.restart();
    expect(await check(lead, 'boss', '2222')).toBe('person-unproven');
    expect(await hand(lead, boss.pinSet, '2222')).toEqual([boss.pinSet]);
    expect(await check(lead, 'boss', '2222')).toBe('ok');
  });
});

function newPem(): string {
  let pem = '';
  void openServerKey({
    keepMeta: async (_, value) => {
      pem = value;
      return value;
    },
  });
  return pem;
}

describe('wrong PINs', () => {
  it('on one tablet lock nobody out on another', async () => {
    for (const person of ['boss', 'aide'])
      for (let at = 0; at <= pinTries; at += 1) await check(bad, person, '0000');
    for (const [person, pin] of [
      ['boss', '2222'],
      ['aide', '3333'],
    ] as const) {
      expect(await check(bad, person, pin)).toBe('person-locked');
      expect(await check(lead, person, pin)).toBe('ok');
    }
  });

  it('of one person after the other lock the tablet, and no other; right ones do not count', async () => {
    const people = Array.from({ length: 6 }, (_, at) => ({ ...aide, person: `p${at}`, pinSet: `pin-${at}` }));
    for (const person of people) await lead.tell('person.added', person, { who: 'boss' });
    await lead.push();
    for (const { pinSet } of people) await hand(lead, pinSet, '5555');
    const codes: string[] = [];
    for (const { person } of people)
      for (let at = 0; at < 4; at += 1) codes.push(await check(bad, person, '0000'));
    expect(codes.filter((code) => code === 'pin-wrong')).toHaveLength(20);
    expect(await check(bad, 'boss', '2222')).toBe('person-locked');
    for (let at = 0; at < 22; at += 1) expect(await check(lead, 'boss', '2222')).toBe('ok');
  });

  it('lock for longer each time', async () => {
    const lock = async () => {
      for (let at = 0; at <= pinTries; at += 1) await check(bad, 'boss', '0000');
    };
    await lock();
    clock.shiftMs += pinLockMs + 1;
    expect(await check(bad, 'boss', '0000')).toBe('pin-wrong');
    await lock();
    clock.shiftMs += pinLockMs + 1;
    expect(await check(bad, 'boss', '2222')).toBe('person-locked');
    clock.shiftMs += pinLockMs;
    expect(await check(bad, 'boss', '2222')).toBe('ok');
  });
});

describe('`checkWho()` without the server', () => {
  const people: readonly LocalPerson[] = [
    { person: 'boss', name: 'Bea', role: 'lead', pin: null, pinSet: { pin: boss.pinSet } },
  ];
  const kept = new Map<string, ReturnType<typeof checkOf>>();
  const seen = new Map<string, SeenPerson>();
  const pins: KeptPins = {
    read: async (pin) => kept.get(pin) ?? null,
    keep: async (pin, told) => void kept.set(pin, checkOf(told)),
  };
  const parts = (caller: TestChain['tablet']['caller'] | null) => ({
    caller,
    people,
    byBadge: (text: string) => (text === 'B-2' ? 'boss' : null),
    pins,
    seen: {
      read: async (person: string) => seen.get(person) ?? null,
      write: async (person: string, next: SeenPerson) => void seen.set(person, next),
    },
    nowMs: clock.nowMs,
  });
  const claim = (pin: string | null, badge: string | null = null) => ({ badge, person: 'boss', pin });
  beforeEach(() => {
    kept.clear();
    seen.clear();
  });

  it('says plainly that a PIN was never entered here, and lets the badge in', async () => {
    const away = (await newTablet('t3', 'http://127.0.0.1:9', clock)).caller;
    for (const caller of [away, null])
      expect(await checkWho(claim('2222'), parts(caller))).toMatchObject({ error: { code: 'pin-not-here' } });
    expect(await checkWho(claim(null, 'B-2'), parts(away))).toMatchObject({ ok: true });
    expect(await checkWho(claim('2222'), parts(bad.tablet.caller))).toMatchObject({ ok: true });
    expect(await checkWho(claim('2222'), parts(away))).toMatchObject({
      ok: true,
      value: { pinChecked: true, checkedOffline: true },
    });
    expect(await checkWho(claim('2221'), parts(away))).toMatchObject({ error: { code: 'pin-wrong' } });
  });

  it('hands over first what was set here a moment ago', async () => {
    await lead.tell('person.added', { ...boss, pinSet: 'newer' }, { who: 'boss' });
    await lead.push();
    kept.set('newer', checkOf('4444'));
    const now = {
      ...parts(lead.tablet.caller),
      people: people.map((one) => ({ ...one, pinSet: { pin: 'newer' } })),
    };
    const offline = { ok: true, value: { checkedOffline: true, ticket: null } };
    expect(await checkWho(claim('4444'), now)).toMatchObject(offline);
    const handPins = async () => void (await hand(lead, 'newer', '4444'));
    expect(await checkWho(claim('4444'), { ...now, handPins })).toMatchObject({
      ok: true,
      value: { checkedOffline: false, ticket: expect.any(String) },
    });
  });

  it('keeps nothing of a wrong PIN, nor of a badge alone', async () => {
    await checkWho(claim('9999'), parts(bad.tablet.caller));
    await checkWho(claim(null, 'B-2'), parts(bad.tablet.caller));
    expect(kept.size).toBe(0);
  });
});
