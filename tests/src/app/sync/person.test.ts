// How long the server is given to say who stands here: as long as a person at a line waits, but longer where nobody else can tell.

import { expect, test } from 'vitest';
import type { Caller } from '../../../../src/app/sync/http.ts';
import { checkWho, type PersonClaim, type PersonParts } from '../../../../src/app/sync/person.ts';

const person = {
  person: 'ana',
  name: 'Ana',
  role: 'lead',
  badge: 'B-1',
  pin: null,
  pinSet: { pin: 'p1' },
} as const;
const kept = { salt: 's', hash: 'h', rounds: 1 };
const seen = { confirmedMs: 0, wrong: 0, lockedUntilMs: 0 };
const byPin: PersonClaim = { badge: null, person: 'ana', pin: '4401' };

/** How long the server was given for a claim, ms. */
async function givenFor(
  claim: PersonClaim,
  known: Partial<{ pin: typeof kept; seen: typeof seen; nobody: true }>,
) {
  const given: (number | undefined)[] = [];
  const caller = {
    call: async (_path: string, _schema: unknown, asked: { readonly timeoutMs?: number }) => {
      given.push(asked.timeoutMs);
      return { ok: false, error: { code: 'unreachable', facts: {} } };
    },
  } as unknown as Caller; // asks nothing else
  const parts: PersonParts = {
    caller,
    people: known.nobody ? [] : [person],
    byBadge: (text) => (!known.nobody && text === person.badge ? person.person : null),
    seen: { read: async () => known.seen ?? null, write: async () => undefined },
    pins: { read: async () => known.pin ?? null, keep: async () => undefined },
    nowMs: () => 0,
    derive: async () => 'h',
  };
  await checkWho(claim, parts);
  return given;
}

test('a person whom the tablet can check by itself waits three seconds for the server', async () => {
  expect(await givenFor(byPin, { pin: kept, seen })).toEqual([3000]);
  expect(await givenFor({ badge: 'B-1', person: null, pin: null }, {})).toEqual([3000]);
});

test('one whom only the server can check is waited for longer', async () => {
  expect(await givenFor(byPin, {})).toEqual([10_000]);
  expect(await givenFor(byPin, { pin: kept })).toEqual([10_000]);
  expect(await givenFor(byPin, { seen })).toEqual([10_000]);
  expect(await givenFor({ badge: 'B-9', person: null, pin: null }, { nobody: true })).toEqual([10_000]);
});
