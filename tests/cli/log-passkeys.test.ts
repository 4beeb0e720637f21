// What `reelward log verify` says of who signed: offline, from the file alone, and of each signature that proves nothing why.

import { describe, expect, test } from 'vitest';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import {
  newPasskey,
  registered,
  type Signing,
  signWith,
  type TestPasskey,
} from '../shared/floor/authenticator.ts';
import { beginStory, type Story, startMs } from '../shared/floor/story.ts';
import { call } from './call.ts';

const chain = { tablet: 'T1', epoch: 'T1-life-1' };
const cleared = {
  of: 'x',
  line: 'L1',
  slot: 'M1-F-001',
  reason: 'seen',
  by: 'ana',
  checked: 'tablet',
} as const;
const person = { person: 'ana', name: 'Ana', role: 'lead', badge: 'B-1' } as const;

function begin() {
  const story = beginStory();
  story.tell('tablet.opened', { name: 'Line front', app: '1', key: null, previous: null });
  story.tell('person.added', { ...person, pinSet: null });
  const passkey = newPasskey();
  const added = story.tell('passkey.added', registered(passkey, 'ana', { by: 'eve' }));
  return { story, passkey, added };
}

function clear(story: Story, passkey: TestPasskey, bent: Partial<Signing> = {}, at = 100): Entry {
  const acts = [{ kind: 'hold.cleared', payload: cleared }];
  const use = signWith(passkey, { chain, asked: startMs + at * 1000, acts, ...bent });
  return story.tell('hold.cleared', { ...cleared, passkey: use }, { at });
}

async function passkeysOf(entries: readonly Entry[]) {
  const text = entries.map((entry) => `${JSON.stringify(entry)}\n`).join('');
  const { code, out, err } = await call(['log', 'verify', '-'], text);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out).passkeys;
}

describe('reelward log verify', () => {
  test('says by whose passkey an act is proven, who registered it, and what rests on a PIN', async () => {
    const { story, passkey, added } = begin();
    const proven = clear(story, passkey);
    const plain = story.tell('hold.cleared', cleared, { at: 110 });
    const step = { checklist: 'k', line: 'L1', step: 's', by: 'bo', role: 'operator' } as const;
    story.tell('step.signed', { ...step, how: 'badge', checked: 'tablet' }, { at: 120 });
    expect(await passkeysOf(story.entries)).toEqual({
      proven: [
        {
          entry: entryId(proven),
          kind: 'hold.cleared',
          at: proven.at,
          by: 'ana',
          says: 'proven by passkey of Ana',
          passkey: 'key of ana',
          registered: entryId(added),
          registeredBy: 'eve',
          countFell: false,
        },
      ],
      refused: [],
      pinOnly: { says: 'PIN only, told by the tablet', entries: [entryId(plain)] },
    });
  });

  test('reads it from a table as from lines, and from an export that leaves badges out', async () => {
    const { story, passkey } = begin();
    clear(story, passkey);
    const lines = story.entries.map((entry) => `${JSON.stringify(entry)}\n`).join('');
    for (const format of ['csv', 'json']) {
      const { out } = await call(['log', 'export', '-', '--format', format], lines);
      const { passkeys } = JSON.parse((await call(['log', 'verify', '-'], out)).out);
      expect(passkeys.proven).toMatchObject([{ says: 'proven by passkey of Ana' }]);
    }
  });

  test.each<[string, string, Partial<Signing>]>([
    ['another act', 'other-act', { acts: [{ kind: 'hold.cleared', payload: { ...cleared, of: 'y' } }] }],
    ['another tablet', 'other-act', { chain: { tablet: 'T2', epoch: 'e' } }],
    ['another page', 'other-act', { origin: 'https://elsewhere.test' }],
    ['no user made sure of', 'other-act', { flags: 1 }],
    ['another host', 'not-registered', { host: 'other.test' }],
  ])('refuses a signature over %s', async (_, why, bent) => {
    const { story, passkey } = begin();
    const entry = clear(story, passkey, bent);
    const { proven, refused } = await passkeysOf(story.entries);
    expect(proven).toEqual([]);
    expect(refused).toMatchObject([{ entry: entryId(entry), by: 'ana', why }]);
  });

  test('refuses one by another key, one of nobody here, one after the removal, and one told again', async () => {
    const { story, passkey } = begin();
    const stranger = newPasskey();
    const use = signWith(stranger, {
      chain,
      asked: startMs + 90_000,
      acts: [{ kind: 'hold.cleared', payload: cleared }],
    });
    const { credential, key } = passkey;
    story.tell('hold.cleared', { ...cleared, passkey: { ...use, credential, key } }, { at: 90 });
    clear(story, stranger, {}, 95);
    const honest = clear(story, passkey, {}, 100);
    story.tell('hold.cleared', honest.payload as never, { at: 101 });
    const removal = { credential, person: 'ana', role: 'lead', by: 'eve', checked: 'server' } as const;
    story.tell('passkey.removed', removal, { at: 110 });
    clear(story, passkey, {}, 120);
    const { proven, refused } = await passkeysOf(story.entries);
    expect(proven.map(({ entry }: { entry: string }) => entry)).toEqual([entryId(honest)]);
    expect(refused.map(({ why }: { why: string }) => why)).toEqual([
      'signature',
      'not-registered',
      'told-again',
      'not-registered',
    ]);
  });

  test('tells a count that fell, and ends a passkey with its person', async () => {
    const { story, passkey } = begin();
    clear(story, passkey, { count: 5 }, 100);
    clear(story, passkey, { count: 5 }, 101);
    story.tell('person.removed', { person: 'ana' }, { at: 110 });
    clear(story, passkey, { count: 6 }, 120);
    const { proven, refused } = await passkeysOf(story.entries);
    expect(proven.map(({ countFell }: { countFell: boolean }) => countFell)).toEqual([false, true]);
    expect(refused).toMatchObject([{ why: 'not-registered' }]);
  });
});
