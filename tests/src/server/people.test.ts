// Who may what: enrolment by one-time code, revocation, badges and PINs on the server and without it, roles.

import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Role } from '../../../shared/kit/roles.ts';
import { pinLockMs, pinTries } from '../../../shared/wire/limits.ts';
import {
  checkedSchema,
  codeMadeSchema,
  exportMadeSchema,
  infoSchema,
  offeredSchema,
  tabletsSchema,
} from '../../../shared/wire/messages.ts';
import { derivePin } from '../../../src/app/device/pin.ts';
import { enrolTablet, readEnrolCode } from '../../../src/app/sync/enrol.ts';
import {
  checkWho,
  offlineLifeMs,
  type PersonParts,
  type PinRecord,
  type SeenPerson,
} from '../../../src/app/sync/person.ts';
import { makeCode } from '../../../src/server/codes.ts';
import { pinFits } from '../../../src/server/people/pin.ts';
import {
  enrolAt,
  newClock,
  newTablet,
  pinRecord,
  startTestServer,
  type TestServer,
  type TestTablet,
  until,
} from './tablets.ts';

let server: TestServer;
let tablet: TestTablet;
const clock = newClock();

const people = [
  { person: 'p1', name: 'Operator One', role: 'operator' as Role, badge: 'B-1', pin: pinRecord('1111') },
  { person: 'p2', name: 'Lead Two', role: 'lead' as Role, badge: 'B-2', pin: pinRecord('2222') },
  { person: 'p3', name: 'Engineer Three', role: 'engineer' as Role, badge: 'B-3', pin: pinRecord('3333') },
  { person: 'p4', name: 'Operator Four', role: 'operator' as Role, badge: 'B-4', pin: null },
];

beforeAll(async () => {
  server = await startTestServer({ clock });
  tablet = await newTablet('t1', server.running.url, clock);
  await enrolAt(server.running, tablet);
  tablet.log.write(people.length, (seq) => people[seq - 1] ?? {}, 'person.added');
  tablet.start();
  await until('the people', async () => (await server.running.store.head()).pos === people.length);
  await tablet.stop();
});
afterAll(() => server.stop());

/** Each test begins later than any window or lock of the one before. */
beforeEach(() => {
  clock.shiftMs += pinLockMs + 1;
});

const check = (badge: string | null, pin: string | null, person: string | null = null) =>
  tablet.caller.call('/api/people/check', checkedSchema, { json: { badge, person, pin } });

async function tokenOf(badge: string, pin: string | null): Promise<string> {
  const checked = await check(badge, pin);
  if (!checked.ok) throw new Error(checked.error.code);
  return checked.value.token;
}

describe('enrolment', () => {
  it('takes a code once, however it is typed, and not after ten minutes', async () => {
    const { code } = await makeCode(server.running.store, clock.nowMs());
    const first = await newTablet('n1', server.running.url, clock);
    const typed = ` ${code.toLowerCase().replace('-', ' ')} `;
    expect(await enrolTablet(first, { code: typed, name: 'Line 1' })).toMatchObject({
      ok: true,
      value: { plant: 'Brae Works' },
    });
    const second = await newTablet('n2', server.running.url, clock);
    expect(await enrolTablet(second, { code, name: 'Line 1' })).toMatchObject({
      ok: false,
      error: { code: 'code-wrong' },
    });
    const late = await makeCode(server.running.store, clock.nowMs());
    clock.shiftMs += 10 * 60_000;
    expect(await enrolTablet(second, { code: late.code, name: 'x' })).toMatchObject({
      error: { code: 'code-wrong' },
    });
    expect(await enrolTablet(second, { code: 'AAAAA-AAAAA', name: 'x' })).toMatchObject({
      error: { code: 'code-wrong' },
    });
    expect(second.log.memory.enrolled).toBeNull();
  });

  it('cannot be guessed at: tries from one address are counted', async () => {
    const own = await startTestServer();
    const guesser = await newTablet('g', own.running.url);
    const codes = [];
    for (let at = 0; at < 35; at += 1) {
      const answer = await enrolTablet(guesser, {
        code: `AAAAA-AAA${String(at).padStart(2, '0')}`,
        name: 'x',
      });
      codes.push(answer.ok ? 'ok' : answer.error.code);
    }
    await own.stop();
    expect(codes.slice(0, 30)).toEqual(Array(30).fill('code-wrong'));
    expect(codes.slice(30)).toEqual(Array(5).fill('too-often'));
  });

  it('needs the key that it brings', async () => {
    const { code } = await makeCode(server.running.store, clock.nowMs());
    const thief = await newTablet('n3', server.running.url, clock);
    const key = { ...thief.key, publicKey: tablet.key.publicKey };
    const stolen = await enrolTablet({ ...thief, key }, { code, name: 'x' });
    expect(stolen).toMatchObject({ ok: false, error: { code: 'signature-wrong' } });
    // The code is still good: a failed proof does not use it up.
    expect(await enrolTablet(thief, { code, name: 'x' })).toMatchObject({ ok: true });
  });

  it.each([
    ['https://plant.local:8443/#enrol=ABCDE-FGHJK', 'ABCDE-FGHJK'],
    ['abcdefghjk', 'ABCDE-FGHJK'],
    [' abcde fghjk ', 'ABCDE-FGHJK'],
    ['https://plant.local/', null],
    ['ABCDE', null],
  ])('`readEnrolCode(%s)` reads %s', (text, code) => {
    expect(readEnrolCode(text)).toBe(code);
  });
});

describe('revocation', () => {
  it('shuts a tablet out at once, ends its live stream, and a new code lets it in again', async () => {
    const lost = await newTablet('n4', server.running.url, clock);
    await enrolAt(server.running, lost);
    lost.start();
    await until('live', () => lost.status()?.phase === 'live' && server.running.context.live.count() > 0);
    const person = await tokenOf('B-2', '2222');
    const json = { tablet: 'n4' };
    const { z } = await import('zod');
    const revoked = await tablet.caller.call('/api/tablets/revoke', z.object({ revoked: z.boolean() }), {
      json,
      person,
    });
    expect(revoked).toMatchObject({ ok: true, value: { revoked: true } });
    await until('the news', () => lost.status()?.phase === 'refused');
    expect(lost.status()?.reason).toBe('tablet-revoked');
    await lost.stop();
    const shut = await lost.caller.call('/api/offer', offeredSchema, { json: { heads: [] } });
    expect(shut).toMatchObject({ ok: false, error: { code: 'tablet-revoked' } });
    await enrolAt(server.running, lost);
    expect(await lost.caller.call('/api/offer', offeredSchema, { json: { heads: [] } })).toMatchObject({
      ok: true,
    });
  });

  it('by an operator is refused', async () => {
    const { z } = await import('zod');
    const person = await tokenOf('B-1', '1111');
    const json = { tablet: 't1' };
    const answer = await tablet.caller.call('/api/tablets/revoke', z.object({}), { json, person });
    expect(answer).toMatchObject({ ok: false, error: { code: 'role-lacking' } });
  });
});

describe('badge and PIN on the server', () => {
  it.each([
    ['badge and PIN', 'B-2', '2222', null, { person: 'p2', role: 'lead', pinChecked: true }],
    ['name and PIN', null, '3333', 'p3', { person: 'p3', role: 'engineer', pinChecked: true }],
    ['badge alone', 'B-1', null, null, { person: 'p1', role: 'operator', pinChecked: false }],
  ] as const)('%s names the person', async (_, badge, pin, person, wanted) => {
    expect(await check(badge, pin, person)).toMatchObject({ ok: true, value: wanted });
  });

  it.each([
    ['a badge of nobody', 'B-9', '1111', null, 'person-unproven'],
    ['a name alone', null, null, 'p1', 'person-unproven'],
    ['nothing', null, null, null, 'person-unproven'],
    ['a PIN where none is set', 'B-4', '1111', null, 'pin-wrong'],
    ['the PIN of another', 'B-1', '2222', null, 'pin-wrong'],
  ] as const)('%s is refused', async (_, badge, pin, person, code) => {
    expect(await check(badge, pin, person)).toMatchObject({ ok: false, error: { code } });
  });

  it('locks after five wrong PINs, also for the right one, until a quarter of an hour is over', async () => {
    for (let at = 1; at <= pinTries; at += 1) {
      const wrong = await check('B-3', '0000');
      expect(wrong).toMatchObject({ error: { code: 'pin-wrong', facts: { triesLeft: pinTries - at } } });
    }
    expect(await check('B-3', '3333')).toMatchObject({ error: { code: 'person-locked' } });
    clock.shiftMs += pinLockMs - 60_000;
    expect(await check('B-3', '3333')).toMatchObject({ error: { code: 'person-locked' } });
    clock.shiftMs += 60_001;
    expect(await check('B-3', '3333')).toMatchObject({ ok: true });
  });

  it('counts guesses made at the same time', async () => {
    const guesses = Array.from({ length: 12 }, (_, at) => check('B-3', `90${at}`));
    const codes = (await Promise.all(guesses)).map((answer) => (answer.ok ? 'ok' : answer.error.code));
    expect(codes.filter((code) => code === 'pin-wrong')).toHaveLength(pinTries);
    expect(codes.filter((code) => code === 'person-locked')).toHaveLength(12 - pinTries);
  });

  it('derives a PIN as the tablet does', async () => {
    // RFC 7914 section 11: PBKDF2-HMAC-SHA-256, password "passwd", salt "salt", 1 round; its first 32 bytes.
    const published = '55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc';
    expect(await derivePin('passwd', 'salt', 1)).toBe(published);
    expect(await pinFits('passwd', { salt: 'salt', hash: published, rounds: 1 })).toBe(true);
    expect(await pinFits('passwe', { salt: 'salt', hash: published, rounds: 1 })).toBe(false);
    expect(await pinFits('passwd', { salt: 'salt', hash: 'zz', rounds: 1 })).toBe(false);
    expect(await pinFits('passwd', { salt: 'salt', hash: published, rounds: 1e12 })).toBe(false);
  });
});

describe('what needs a role', () => {
  it('codes, the list of tablets and exports are for lead and engineer with PIN, on the tablet that checked them', async () => {
    const lead = await tokenOf('B-2', '2222');
    const leadBadge = await tokenOf('B-2', null);
    const operator = await tokenOf('B-1', '1111');
    const json = { format: 'json', from: null, to: null, line: null };
    const asks = [
      (person: string) => tablet.caller.call('/api/codes', codeMadeSchema, { json: {}, person }),
      (person: string) => tablet.caller.call('/api/tablets', tabletsSchema, { person }),
      (person: string) => tablet.caller.call('/api/export', exportMadeSchema, { json, person }),
    ];
    for (const ask of asks) {
      expect(await ask(lead)).toMatchObject({ ok: true });
      expect(await ask(leadBadge)).toMatchObject({ error: { code: 'role-lacking' } });
      expect(await ask(operator)).toMatchObject({ error: { code: 'role-lacking' } });
      expect(await ask('made up')).toMatchObject({ error: { code: 'person-unproven' } });
    }
    const other = await newTablet('n5', server.running.url, clock);
    await enrolAt(server.running, other);
    const borrowed = await other.caller.call('/api/codes', codeMadeSchema, { json: {}, person: lead });
    expect(borrowed).toMatchObject({ error: { code: 'person-unproven' } });
    clock.shiftMs += 15 * 60_000 + 1;
    expect(await asks[0]?.(lead)).toMatchObject({ error: { code: 'person-unproven' } });
  });

  it("a lead's code enrols a tablet", async () => {
    const made = await tablet.caller.call('/api/codes', codeMadeSchema, {
      json: {},
      person: await tokenOf('B-2', '2222'),
    });
    if (!made.ok) throw new Error(made.error.code);
    const next = await newTablet('n6', server.running.url, clock);
    const code = readEnrolCode(`http://x${made.value.path}`);
    expect(await enrolTablet(next, { code: code ?? '', name: 'Line 6' })).toMatchObject({ ok: true });
  });

  it('`/api/info` tells anybody no more than how to talk', async () => {
    const info = infoSchema.parse(await (await fetch(`${server.running.url}/api/info`)).json());
    expect(Object.keys(info).sort()).toEqual(
      ['certificateEndsMs', 'plant', 'serverEpoch', 'serverKey', 'serverMs', 'wire', 'wireFloor'].sort(),
    );
  });
});

describe('`checkWho()` without the server', () => {
  const seen = new Map<string, SeenPerson>();
  const pins = new Map<string, PinRecord>();
  const parts = (change: Partial<PersonParts> = {}): PersonParts => ({
    caller: null,
    people,
    byBadge: (text) => people.find(({ badge }) => badge === text)?.person ?? null,
    seen: {
      read: async (person) => seen.get(person) ?? null,
      write: async (person, next) => {
        seen.set(person, next);
      },
    },
    pins: {
      read: async (pin) => pins.get(pin) ?? null,
      keep: async (pin, told) => void pins.set(pin, pinRecord(told)),
    },
    nowMs: clock.nowMs,
    ...change,
  });
  const away = async () => (await newTablet('x', 'http://127.0.0.1:9', clock)).caller;
  const claim = (badge: string | null, pin: string | null) => ({ badge, pin, person: null });
  beforeEach(() => seen.clear());

  it('asks the server first, and says that it was asked', async () => {
    const found = await checkWho(claim('B-2', '2222'), parts({ caller: tablet.caller }));
    expect(found).toMatchObject({
      ok: true,
      value: { person: 'p2', checkedOffline: false, pinChecked: true },
    });
    expect(seen.get('p2')).toMatchObject({ wrong: 0 });
    const wrong = await checkWho(claim('B-2', '9999'), parts({ caller: tablet.caller }));
    expect(wrong).toMatchObject({ ok: false, error: { code: 'pin-wrong', triesLeft: 4 } });
    expect(await checkWho(claim('B-99', null), parts({ caller: tablet.caller }))).toMatchObject({
      error: { code: 'badge-unknown' },
    });
  });

  it('checks a person seen on this tablet within three days, and says that it was offline', async () => {
    const caller = await away();
    expect(await checkWho(claim('B-2', '2222'), parts({ caller }))).toMatchObject({
      error: { code: 'not-seen-here' },
    });
    await checkWho(claim('B-2', '2222'), parts({ caller: tablet.caller }));
    expect(await checkWho(claim('B-2', '2222'), parts({ caller }))).toMatchObject({
      ok: true,
      value: { person: 'p2', checkedOffline: true, pinChecked: true, session: null },
    });
    clock.shiftMs += offlineLifeMs + 60_000;
    expect(await checkWho(claim('B-2', '2222'), parts({ caller }))).toMatchObject({
      error: { code: 'seen-too-long-ago' },
    });
    expect(await checkWho(claim('B-2', null), parts({ caller }))).toMatchObject({
      ok: true,
      value: { pinChecked: false },
    });
  });

  it('locks after five wrong PINs and counts each before it is looked at', async () => {
    await checkWho(claim('B-1', '1111'), parts({ caller: tablet.caller }));
    const caller = await away();
    const codes = [];
    for (let at = 0; at < pinTries; at += 1) {
      const answer = await checkWho(claim('B-1', '0000'), parts({ caller }));
      codes.push(answer.ok ? 'ok' : answer.error.code);
    }
    expect(codes).toEqual(['pin-wrong', 'pin-wrong', 'pin-wrong', 'pin-wrong', 'locked']);
    expect(await checkWho(claim('B-1', '1111'), parts({ caller }))).toMatchObject({
      error: { code: 'locked' },
    });
    clock.shiftMs += pinLockMs + 1;
    expect(await checkWho(claim('B-1', '1111'), parts({ caller }))).toMatchObject({ ok: true });
    // The plug pulled while a PIN is being checked does not give the try back.
    const derive = async () => {
      expect(seen.get('p1')?.wrong).toBe(1);
      return '';
    };
    await checkWho(claim('B-1', '0000'), parts({ caller, derive }));
  });

  it('of a tablet that was never enrolled asks its own log', async () => {
    expect(await checkWho(claim('B-2', '2222'), parts())).toMatchObject({
      ok: true,
      value: { checkedOffline: true },
    });
    expect(await checkWho(claim('B-4', null), parts())).toMatchObject({
      ok: true,
      value: { pinChecked: false },
    });
    expect(await checkWho(claim('B-4', '1'), parts())).toMatchObject({ error: { code: 'pin-not-set' } });
    expect(await checkWho(claim('B-9', '1'), parts())).toMatchObject({ error: { code: 'badge-unknown' } });
    expect(await checkWho({ badge: null, person: 'p1', pin: null }, parts())).toMatchObject({
      error: { code: 'badge-or-pin-wanted' },
    });
  });
});
