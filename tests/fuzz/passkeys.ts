// What of a passkey stands in an entry: the entry bent, what the browser and the authenticator said within it, and the signature's own form.

import { actHash, joinedSignature, readUse } from '../../shared/floor/passkey-sign.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { entrySchema } from '../../shared/log/entry-schema.ts';
import { signedBy } from '../../src/server/people/passkeys.ts';
import { newPasskey, signWith } from '../shared/floor/authenticator.ts';
import { beginStory, startMs } from '../shared/floor/story.ts';
import { mutateBytes, mutateDer } from './bytes.ts';
import { mutateJson } from './jsons.ts';
import { type Plan, pick } from './plan.ts';
import { bytesTarget, type FuzzTarget, textTarget } from './target.ts';
import { parsed } from './wire.ts';

const chain = { tablet: 'T1', epoch: 'T1-life-1' };
const story = beginStory();
const signed = (['EC', 'EC', 'RSA'] as const).map((kind, at) => {
  const payload = {
    of: `x${at}`,
    line: 'L1',
    slot: 'M1-F-001',
    reason: 'é 😀',
    by: 'ana',
    checked: 'tablet',
  };
  const acts = [{ kind: 'hold.cleared', payload }];
  const passkey = signWith(newPasskey(kind), { chain, asked: startMs + at * 1000, acts, count: at });
  return story.tell('hold.cleared', { ...payload, checked: 'tablet', passkey }, { at });
});
for (const entry of signed) if (!readUse(entry)) throw new Error('the signature is not read');
const uses = signed.map(
  ({ payload }) => payload['passkey'] as Readonly<Record<'data' | 'client' | 'sig', string>>,
);
const bytesOf = (text: string) => Uint8Array.from(Buffer.from(text, 'base64url'));
const clients = uses.map(({ client }): unknown => JSON.parse(Buffer.from(client, 'base64url').toString()));
const datas = uses.map(({ data }) => bytesOf(data));
/** Of keys of the curve: in the form of RFC 3279, section 2.2.3. */
const ders = uses.slice(0, 2).map(({ sig }) => bytesOf(sig));

/** An entry whose signature says something else within its text of letters, and at times is bent beside that. */
function bent(plan: Plan): string {
  const entry = pick(signed, plan.sample);
  const [[act] = [0]] = plan.steps;
  if (act % 2 === 0) return mutateJson(signed, plan);
  const [part, bytes] =
    act % 3 === 0
      ? (['client', mutateJson(clients, plan)] as const)
      : act % 3 === 1
        ? (['data', mutateBytes(datas, plan)] as const)
        : (['sig', mutateDer(ders, plan)] as const);
  const use = { ...(entry.payload['passkey'] as object), [part]: Buffer.from(bytes).toString('base64url') };
  return JSON.stringify({ ...entry, payload: { ...entry.payload, passkey: use } });
}

const isSigned = (entry: Entry) =>
  signed.some(
    (one) =>
      one.tablet === entry.tablet &&
      one.epoch === entry.epoch &&
      actHash(one.kind, one.payload) === actHash(entry.kind, entry.payload),
  );

const onUses: FuzzTarget = textTarget({
  name: 'signatures of passkeys',
  share: 40_000,
  input: bent,
  read: async (text) => {
    const value = parsed(text);
    // As it lies in every log: an entry of another shape, or nested too deep, comes into none.
    const checked = entrySchema.safeParse(value);
    if (!checked.success) return;
    const entry = checked.data;
    const read = readUse(entry);
    // The challenge names the act: what is read was asked for in this chain.
    if (read && !isSigned(entry)) throw new Error('read for an act that nobody signed');
    if (read?.key.kty === 'EC' && read.signature.length !== 64) throw new Error('no two numbers');
    const holds = await signedBy(entry);
    if (holds && !read) throw new Error('holds, though nothing is read');
  },
});

/** The one form of two numbers of 32 bytes (ITU-T X.690, 8.3). */
function derOf(joined: Uint8Array): Buffer {
  const numbers = [joined.subarray(0, 32), joined.subarray(32)].map((bytes) => {
    const first = bytes.findIndex((byte) => byte !== 0);
    const plain = first < 0 ? Uint8Array.of(0) : bytes.subarray(first);
    const number = (plain[0] ?? 0) > 127 ? Uint8Array.of(0, ...plain) : plain;
    return Uint8Array.of(2, number.length, ...number);
  });
  const body = Buffer.concat(numbers);
  return Buffer.concat([Uint8Array.of(0x30, body.length), body]);
}

const onNumbers: FuzzTarget = bytesTarget({
  name: 'numbers of a signature',
  share: 40_000,
  input: (plan) => (plan.sample % 3 === 0 ? mutateBytes(ders, plan) : mutateDer(ders, plan)),
  read: (bytes) => {
    const joined = joinedSignature(bytes);
    if (joined && Buffer.compare(derOf(joined), bytes) !== 0) throw new Error('two ways to write one number');
  },
});

/** All of it. */
export const passkeyTargets: readonly FuzzTarget[] = [onUses, onNumbers];
