// What a passkey proves of an entry: the same on every tablet, whatever came first; and nothing once it is another's, removed, or false.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standOfKind } from '../../../shared/floor/acts.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { payloadSchemas } from '../../../shared/floor/kinds.ts';
import { passkeyUse, readUse } from '../../../shared/floor/passkey-sign.ts';
import { passkeysOf } from '../../../shared/floor/passkeys-of.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import type { Trust } from '../../../shared/floor/rights.ts';
import { passkeyKinds } from '../../../shared/floor/signed-kinds.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { newPasskey, registered, type Signing, signWith, type TestPasskey } from './authenticator.ts';
import { beginStory, type Story, startMs, tellPlant } from './story.ts';

/** Entries whose signature does not hold, by their hash. */
const broken = new Set<string>();
const trust: Trust = {
  before: new Map(),
  claimsOf: ({ payload }) => JSON.parse(payload.ticket),
  signedBy: (entry) => (broken.has(entry.hash) ? null : readUse(entry as Entry)), // what is folded is a whole entry
  isOfServer: () => false,
};
const chain = { tablet: 'T1', epoch: 'T1-life-1' };
const cleared = { of: 'x', line: 'L1', slot: 'M1-F-001', reason: 'seen', checked: 'tablet' } as const;

function giveTicket(story: Story, person: string, role: 'lead' | 'engineer', tablet = 'T1'): void {
  const claims = { person, role, fromMs: startMs, untilMs: startMs + 900_000 };
  story.tell('ticket.taken', { person, ticket: JSON.stringify(claims) }, { tablet });
}

function clear(story: Story, passkey: TestPasskey, by: string, bent: Partial<Signing> = {}, at = 100): Entry {
  const payload = { ...cleared, by };
  const acts = [{ kind: 'hold.cleared', payload }];
  const use = signWith(passkey, { chain, asked: startMs + at * 1000, acts, ...bent });
  return story.tell('hold.cleared', { ...payload, passkey: use }, { at });
}

const foldAll = (story: Story) => applyAll(emptyState(), [...story.entries].sort(compareEntries), trust);
const whyOf = (story: Story, entry: Entry) => foldAll(story).unproven.get(entryId(entry))?.why ?? null;

/** A plant whose lead ana has a passkey that an engineer registered. */
function begin(facts: Parameters<typeof registered>[2] = { by: 'eve' }) {
  const story = beginStory();
  tellPlant(story);
  giveTicket(story, 'eve', 'engineer');
  const passkey = newPasskey();
  const added = story.tell('passkey.added', registered(passkey, 'ana', facts));
  return { story, passkey, added };
}

describe('a passkey', () => {
  test('proves what its person decides, without any ticket', () => {
    const { story, passkey, added } = begin();
    const entry = clear(story, passkey, 'ana');
    const floor = foldAll(story);
    expect([whyOf(story, added), whyOf(story, entry)]).toEqual([null, null]);
    expect(standOfKind(floor, entry, trust)).toBe('passkey');
    expect(readUse(entry)?.host).toBe('plant.test');
  });

  test('signs several acts at once, each provable by itself', () => {
    const { story, passkey } = begin();
    const left = {
      changeover: 'c',
      line: 'L1',
      by: 'ana',
      left: [{ what: 'feeder', slot: null, part: null, reel: null, step: null }],
    } as never;
    const released = { changeover: 'c', line: 'L1', by: 'ana', reason: 'ok', checked: 'tablet' } as const;
    const acts = [
      { kind: 'changeover.left-open', payload: left },
      { kind: 'changeover.released', payload: released },
    ];
    const use = signWith(passkey, { chain, asked: startMs + 90_000, acts });
    const entry = story.tell('changeover.released', { ...released, passkey: use }, { at: 91 });
    expect(readUse(entry)).not.toBe(null);
    expect(whyOf(story, entry)).toBe(null);
  });

  test.each<[string, Partial<Signing>]>([
    ['another challenge', { challenge: 'A'.repeat(43) }],
    ['another act', { acts: [{ kind: 'hold.cleared', payload: { ...cleared, by: 'ana', of: 'y' } }] }],
    ['another kind', { acts: [{ kind: 'hold.declined', payload: { ...cleared, by: 'ana' } }] }],
    ['another tablet', { chain: { tablet: 'T2', epoch: 'T2-life-1' } }],
    ['another life of the tablet', { chain: { tablet: 'T1', epoch: 'T1-life-0' } }],
    ['another time', { asked: startMs - 20 * 60_000 }],
    ['another page', { origin: 'https://elsewhere.test' }],
    ['a page in another page', { crossOrigin: true }],
    ['a registration', { type: 'webauthn.create' }],
    ['no user made sure of', { flags: 1 }],
    ['no user there', { flags: 4 }],
    ['more than it was asked for', { flags: 0x85 }],
    ['a backup of what has none', { flags: 0x15 }],
  ])('that signed %s proves nothing', (_, bent) => {
    const { story, passkey } = begin();
    const entry = clear(story, passkey, 'ana', bent);
    expect(readUse(entry)).toBe(null);
    expect(whyOf(story, entry)).toBe('passkey');
    expect(passkeyUse(entry)).not.toBe(null);
  });

  test('proves nothing where its signature does not hold, also beside a ticket', () => {
    const { story, passkey } = begin();
    giveTicket(story, 'ana', 'lead');
    const entry = clear(story, passkey, 'ana');
    broken.add(entry.hash);
    expect(whyOf(story, entry)).toBe('passkey');
  });

  test('put into another entry proves nothing there', () => {
    const { story, passkey } = begin();
    const payload = { ...cleared, by: 'ana' };
    const use = signWith(passkey, {
      chain,
      asked: startMs + 100_000,
      acts: [{ kind: 'hold.cleared', payload }],
    });
    const honest = story.tell('hold.cleared', { ...payload, passkey: use }, { at: 100 });
    const other = story.tell('hold.cleared', { ...payload, of: 'other', passkey: use }, { at: 101 });
    const elsewhere = story.tell('hold.cleared', { ...payload, passkey: use }, { at: 102, tablet: 'T2' });
    const late = story.tell('hold.cleared', { ...payload, passkey: use }, { at: 3000 });
    expect([honest, other, elsewhere, late].map((entry) => whyOf(story, entry))).toEqual([
      null,
      'passkey',
      'passkey',
      'passkey',
    ]);
  });

  test('is its person’s alone, with its own key, for its own page, from its registration on', () => {
    const { story, passkey } = begin();
    const stranger = newPasskey();
    const forged = { ...stranger, credential: passkey.credential };
    const entries = [
      clear(story, passkey, 'bo', {}, 100),
      clear(story, stranger, 'ana', {}, 101),
      clear(story, forged, 'ana', {}, 102),
      clear(story, passkey, 'ana', { host: 'other.test' }, 103),
    ];
    expect(entries.map((entry) => whyOf(story, entry))).toEqual(entries.map(() => 'passkey'));
    const late = newPasskey();
    const early = clear(story, late, 'ana', {}, 110);
    giveTicket(story, 'eve', 'engineer');
    story.tell('passkey.added', registered(late, 'ana', { by: 'eve' }), { at: 120 });
    expect([early, clear(story, late, 'ana', {}, 130)].map((entry) => whyOf(story, entry))).toEqual([
      'passkey',
      null,
    ]);
  });

  test('proves nothing from its removal on, and what it signed before stays proven', () => {
    const { story, passkey } = begin();
    const before = clear(story, passkey, 'ana', {}, 100);
    const { credential } = passkey;
    const removal = { credential, person: 'ana', role: 'lead', by: 'eve', checked: 'server' } as const;
    story.tell('passkey.removed', removal, { at: 101 });
    const after = clear(story, passkey, 'ana', {}, 102);
    expect([whyOf(story, before), whyOf(story, after)]).toEqual([null, 'passkey']);
    const floor = foldAll(story);
    expect(passkeysOf(floor.passkeys, 'ana')).toEqual([]);
    expect(standOfKind(floor, before, trust)).toBe('passkey');
  });

  test('goes with its person, and follows the role', () => {
    const person = { person: 'ana', name: 'Ana', badge: 'B', pin: null } as const;
    const { story, passkey } = begin();
    giveTicket(story, 'eve', 'engineer');
    story.tell('person.added', { ...person, role: 'lead' }, { who: 'eve', at: 50 });
    story.tell('person.added', { ...person, role: 'operator' }, { who: 'eve', at: 60 });
    const operator = clear(story, passkey, 'ana', {}, 70);
    expect(whyOf(story, operator)).toBe('passkey');
    const other = begin();
    giveTicket(other.story, 'eve', 'engineer');
    other.story.tell('person.removed', { person: 'ana' }, { who: 'eve', at: 60 });
    expect(whyOf(other.story, clear(other.story, other.passkey, 'ana', {}, 70))).toBe('passkey');
  });

  test('that nothing proves the registration of proves nothing, until a lead confirms that', () => {
    const { story, passkey, added } = begin({ by: 'mal' });
    expect(whyOf(story, added)).toBe('no-ticket');
    const alone = clear(story, passkey, 'ana', {}, 100);
    expect(whyOf(story, alone)).toBe('no-ticket');
    giveTicket(story, 'ana', 'lead');
    const beside = clear(story, passkey, 'ana', {}, 200);
    expect(whyOf(story, beside)).toBe(null);
    expect(standOfKind(foldAll(story), beside, trust)).toBe('proven');
    giveTicket(story, 'eve', 'engineer');
    const word = { settled: 'confirmed', by: 'eve', reason: '' } as const;
    story.tell('unproven.settled', { entries: [entryId(added)], ...word }, { at: 300 });
    const confirmed = clear(story, passkey, 'ana', {}, 301);
    expect(standOfKind(foldAll(story), confirmed, trust)).toBe('passkey');
  });

  test('of a lead is registered by the lead, and an engineer’s by no lead', () => {
    const lead = begin({ by: 'ana' });
    expect(whyOf(lead.story, lead.added)).toBe('no-ticket');
    const story = beginStory();
    tellPlant(story);
    giveTicket(story, 'ana', 'lead');
    const own = story.tell('passkey.added', registered(newPasskey(), 'ana'));
    const raised = story.tell('passkey.added', registered(newPasskey(), 'ana', { role: 'engineer' }));
    const others = story.tell('passkey.added', registered(newPasskey(), 'bo', { by: 'ana' }));
    expect([own, raised, others].map((entry) => whyOf(story, entry))).toEqual([null, 'role', 'role']);
  });

  test('keeps its name: nobody takes it over or away without a right', () => {
    const { story, passkey } = begin();
    const thief = { ...newPasskey(), credential: passkey.credential };
    story.tell('passkey.added', registered(thief, 'mal', { by: 'mal' }), { tablet: 'T2', at: 1 });
    const { credential } = passkey;
    const removal = { credential, person: 'ana', role: 'lead', by: 'mal', checked: 'tablet' } as const;
    story.tell('passkey.removed', removal, { tablet: 'T2', at: 90 });
    expect(whyOf(story, clear(story, passkey, 'ana', {}, 100))).toBe(null);
  });

  test('whose count falls is told, and trusted no less for the signature', () => {
    const { story, passkey } = begin();
    clear(story, passkey, 'ana', { count: 7 }, 100);
    expect(foldAll(story).passkeys.get(passkey.credential)).toMatchObject({ count: 7, fell: null });
    const copied = clear(story, passkey, 'ana', { count: 7 }, 101);
    expect(foldAll(story).passkeys.get(passkey.credential)).toMatchObject({ fell: entryId(copied) });
    expect(whyOf(story, copied)).toBe(null);
    broken.add(clear(story, passkey, 'ana', { count: 2 ** 31 }, 102).hash);
    expect(foldAll(story).passkeys.get(passkey.credential)?.count).toBe(7);
  });

  test('proves the same in whatever order entries arrive', () => {
    const { story, passkey } = begin();
    clear(story, passkey, 'ana', { count: 1 }, 100);
    clear(story, passkey, 'bo', { count: 2 }, 110);
    const { credential } = passkey;
    const removal = { credential, person: 'ana', role: 'lead', by: 'eve', checked: 'server' } as const;
    story.tell('passkey.removed', removal, { at: 120 });
    clear(story, passkey, 'ana', { count: 3 }, 130);
    const wanted = foldAll(story);
    fc.assert(
      fc.property(fc.shuffledSubarray([...story.entries], { minLength: story.entries.length }), (order) => {
        const replica = createReplica(undefined, trust);
        for (const entry of order) foldIn(replica, [entry]);
        expect([...replica.state.passkeys]).toEqual([...wanted.passkeys]);
        expect([...replica.state.unproven].sort()).toEqual([...wanted.unproven].sort());
      }),
      { numRuns: 50 },
    );
  });
});

test('kinds that a passkey may sign are those with the field, and an entry without it reads as ever', () => {
  for (const kind of passkeyKinds) expect(Object.keys(payloadSchemas[kind]().def.shape)).toContain('passkey');
  const others = (Object.keys(payloadSchemas) as (keyof typeof payloadSchemas)[])
    .filter((kind) => 'passkey' in ((payloadSchemas[kind]() as { def: { shape?: object } }).def.shape ?? {}))
    .sort();
  expect(others).toEqual([...passkeyKinds].sort());
});

test('what is no signature is read as none, and never throws', () => {
  const story = beginStory();
  const entry = story.tell('hold.cleared', { ...cleared, by: 'ana' });
  fc.assert(
    fc.property(fc.anything(), fc.anything(), (whole, part) => {
      const use = { ...signWith(newPasskeyOnce, { chain, asked: 0, acts: [] }), client: part };
      for (const passkey of [whole, use])
        expect(readUse({ ...entry, payload: { ...entry.payload, passkey: passkey as never } })).toBe(null);
    }),
    { numRuns: 60 },
  );
});
const newPasskeyOnce = newPasskey();
