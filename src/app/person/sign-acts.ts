// What a person does is signed by that person's passkey before it is written down. Fetched when one is asked for.

import type { Draft } from '../../../shared/floor/draft.ts';
import type { DraftEntry } from '../../../shared/floor/kinds.ts';
import { actHash, passkeyChallenge, readUse } from '../../../shared/floor/passkey-sign.ts';
import { passkeysOf } from '../../../shared/floor/passkeys-of.ts';
import { signedInKinds } from '../../../shared/floor/signed-kinds.ts';
import type { App } from '../app.ts';
import { askPasskey, pageHost } from '../device/passkey.ts';

/** Things to write down that a passkey may sign. */
export type SignableDraft = DraftEntry & { readonly payload: { readonly passkey?: unknown } };

/** The same with the signature of one of the person's passkeys; null where none signed. */
export async function signActs(
  app: App,
  person: string,
  drafts: readonly SignableDraft[],
): Promise<readonly DraftEntry[] | null> {
  const held = passkeysOf(app.store.floor().passkeys, person, pageHost());
  const acts = drafts.map(({ kind, payload }) => actHash(kind, payload));
  const asked = app.clock.nowMs();
  const challenge = passkeyChallenge(app.store.identity, { asked, acts });
  const ids = held.map(({ credential }) => credential);
  const given = ids.length === 0 ? null : await askPasskey(challenge, ids);
  const key = held.find(({ credential }) => credential === given?.credential)?.key;
  if (!given || !key) return null;
  const passkey = { ...given, key, asked, acts };
  const signed = drafts.map(
    (draft) => ({ kind: draft.kind, payload: { ...draft.payload, passkey } }) as DraftEntry, // its own kind, whose payload has this field
  );
  // What would prove nothing (a passkey that did not make sure of its user) is not written.
  const { tablet, epoch } = app.store.identity;
  const where = { tablet, epoch, hlc: { ms: asked, n: 0 } };
  return signed.every((draft) => readUse({ ...where, ...draft }) !== null) ? signed : null;
}

/** Acts that one signature covers at most. */
const ACTS_MOST = 8;

/**
 * What the person signed in does, with a signature on each of those acts that a passkey may sign, asked for as often as they take; null where
 * one is not given.
 */
export async function signOwn(
  app: App,
  person: string,
  drafts: readonly Draft[],
): Promise<readonly Draft[] | null> {
  const isOne = (draft: Draft) =>
    typeof draft !== 'function' && (signedInKinds as readonly string[]).includes(draft.kind);
  const own = drafts.filter(isOne) as readonly SignableDraft[]; // kinds whose payloads have the field
  const bySigned = new Map<Draft, Draft>();
  for (let from = 0; from < own.length; from += ACTS_MOST) {
    const some = own.slice(from, from + ACTS_MOST);
    const signed = await signActs(app, person, some);
    if (signed === null) return null;
    for (const [at, draft] of some.entries()) bySigned.set(draft, signed[at] ?? draft);
  }
  return drafts.map((draft) => bySigned.get(draft) ?? draft);
}
