// What somebody does is signed by that person's passkey before it is written: each act, however many they are.

import { afterEach, expect, test, vi } from 'vitest';
import type { DraftEntry } from '../../../../shared/floor/kinds.ts';
import { passkeyUse, readUse } from '../../../../shared/floor/passkey-sign.ts';
import { toBase64Url } from '../../../../shared/kit/base64.ts';
import type { App } from '../../../../src/app/app.ts';
import { signOwn } from '../../../../src/app/person/sign-acts.ts';
import { newPasskey, registered, signWith } from '../../../shared/floor/authenticator.ts';
import { beginStory, startMs } from '../../../shared/floor/story.ts';

class FakeCredential {
  constructor(
    readonly rawId: ArrayBuffer,
    readonly response: object,
  ) {}
}

const chain = { tablet: 'T1', epoch: 'e1' };
const passkey = newPasskey();
const buffer = (text: string) => new Uint8Array(Buffer.from(text, 'base64url')).buffer;

/** A browser whose authenticator signs so often, and then no more. */
function browser(times: number): void {
  let left = times;
  const get = async ({ publicKey }: { publicKey: { challenge: Uint8Array } }) => {
    left -= 1;
    if (left < 0) return null;
    const challenge = toBase64Url(publicKey.challenge);
    const { data, client, sig } = signWith(passkey, { chain, asked: startMs, acts: [], challenge });
    return new FakeCredential(buffer(passkey.credential), {
      authenticatorData: buffer(data),
      clientDataJSON: buffer(client),
      signature: buffer(sig),
    });
  };
  vi.stubGlobal('PublicKeyCredential', FakeCredential);
  vi.stubGlobal('location', { hostname: 'plant.test' });
  vi.stubGlobal('navigator', { credentials: { get } });
}

afterEach(() => vi.unstubAllGlobals());

function appOf(): App {
  const story = beginStory();
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'lead', badge: 'B-1' });
  story.tell('passkey.added', registered(passkey, 'ana'));
  const floor = story.floor();
  const app = { store: { floor: () => floor, identity: chain }, clock: { nowMs: () => startMs } };
  return app as unknown as App; // what signing asks of it
}

const people: readonly DraftEntry[] = Array.from({ length: 20 }, (_, at) => ({
  kind: 'person.added',
  payload: { person: `p${at}`, name: `Person ${at}`, role: 'operator', badge: `B-2-${at}` },
}));
const names = ['p1'];
const printed: DraftEntry = {
  kind: 'labels.printed',
  payload: { what: 'badge', line: null, reel: null, names, again: [], size: '62 mm' },
};

test('every act is signed, also where one signature does not cover them all; what nobody signs stays as it is', async () => {
  browser(3);
  const drafts = await signOwn(appOf(), 'ana', [...people, printed]);
  expect(drafts).toHaveLength(21);
  expect(drafts?.at(-1)).toBe(printed);
  for (const draft of drafts?.slice(0, 20) ?? []) {
    if (typeof draft === 'function') throw new Error('told before it was written');
    expect(passkeyUse(draft)).not.toBeNull();
    expect(readUse({ ...chain, hlc: { ms: startMs, n: 0 }, ...draft })).not.toBeNull();
  }
});

test('nothing is signed where one signature is not given', async () => {
  browser(2);
  expect(await signOwn(appOf(), 'ana', people)).toBeNull();
});
