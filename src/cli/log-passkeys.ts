// Who signed, of an exported log: which acts of a lead or an engineer a passkey of that person signed, and which rest on a PIN, of which the
// tablet alone tells. Checked offline, with the keys that the log itself registered: who registered them is told beside it.

import { foldPasskeys, notePasskeyUse } from '../../shared/floor/fold-passkeys.ts';
import { readFloorEntry } from '../../shared/floor/kinds.ts';
import {
  followPerson,
  type HeldPasskey,
  registeredPasskey,
  type SignedBy,
} from '../../shared/floor/passkey.ts';
import { actHash, passkeyUse, readUse } from '../../shared/floor/passkey-sign.ts';
import { takeName } from '../../shared/floor/people.ts';
import { actorOf } from '../../shared/floor/rights.ts';
import { passkeyKinds, signedInKinds } from '../../shared/floor/signed-kinds.ts';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { signedBy } from '../server/people/passkeys.ts';

/** What an act rests on that no passkey signed. */
const pinOnly = 'PIN only, told by the tablet';

/** Why a passkey proves nothing. */
const refusals = {
  'other-act': 'signed for another act, tablet, time or page, or without its user made sure of',
  'not-registered': 'no passkey of this person, in this file and at that time',
  signature: 'the signature does not hold',
  'told-again': 'the same signature stands in an entry before it',
} as const;

interface SignedAct {
  readonly entry: string;
  readonly kind: string;
  readonly at: string;
  /** The person's id. */
  readonly by: string;
  readonly says: string;
}

/** What `log verify` says of signatures of people. */
export interface PasskeyReport {
  readonly proven: readonly (SignedAct & {
    readonly passkey: string;
    /** The entry that registered it, and who did. */
    readonly registered: string;
    readonly registeredBy: string;
    /** Its authenticator counts, and this count was not above the one before: the passkey may have been copied. */
    readonly countFell: boolean;
  })[];
  readonly refused: readonly (SignedAct & { readonly why: keyof typeof refusals })[];
  readonly pinOnly: { readonly says: typeof pinOnly; readonly entries: readonly string[] };
}

/** Checks every passkey's signature in a log. Cost: a signature for each. */
export async function checkPasskeys(entries: readonly Entry[]): Promise<PasskeyReport> {
  const state = { passkeys: new Map<string, HeldPasskey>(), unproven: new Map() };
  const names = new Map<string, string>();
  const seen = new Set<string>();
  const proven: PasskeyReport['proven'][number][] = [];
  const refused: PasskeyReport['refused'][number][] = [];
  const plain: string[] = [];
  for (const entry of [...entries].sort(compareEntries)) {
    takeName(names, entry);
    const told = readFloorEntry(entry);
    if (!told) continue;
    if (told.kind === 'passkey.added' || told.kind === 'passkey.removed') foldPasskeys(state, told);
    else if (told.kind === 'person.removed')
      followPerson(state.passkeys, { person: told.payload.person, role: null }, entry);
    else if (told.kind === 'person.added') followPerson(state.passkeys, told.payload, entry);
    const by = actorOf(entry);
    if (!(passkeyKinds as readonly string[]).includes(entry.kind) || by === null) continue;
    const act = { entry: entryId(entry), kind: entry.kind, at: entry.at, by };
    if (!passkeyUse(entry)) {
      // Whoever signed in did these: no PIN was asked for the act.
      const asksNoPin = (signedInKinds as readonly string[]).includes(entry.kind);
      if (!asksNoPin && entry.payload['how'] !== 'badge') plain.push(act.entry);
      continue;
    }
    const read = readUse(entry);
    const held = registeredPasskey(state.passkeys, entry, { person: by, signed: read });
    const why = await whyRefused(entry, { read, held, seen });
    if (why !== null || !held) {
      const code = why ?? 'not-registered';
      refused.push({ ...act, why: code, says: `the passkey does not prove it: ${refusals[code]}` });
      continue;
    }
    notePasskeyUse(state, told, read);
    const countFell = state.passkeys.get(held.credential)?.fell === act.entry;
    const says = `proven by passkey of ${names.get(by) ?? by}`;
    const registered = { registered: entryId(held.at), registeredBy: held.by };
    proven.push({ ...act, says, passkey: held.name, ...registered, countFell });
  }
  return { proven, refused, pinOnly: { says: pinOnly, entries: plain } };
}

async function whyRefused(
  entry: Entry,
  of: {
    readonly read: SignedBy | null;
    readonly held: HeldPasskey | null;
    readonly seen: Set<string>;
  },
): Promise<keyof typeof refusals | null> {
  const use = passkeyUse(entry);
  if (!use || !of.read) return 'other-act';
  if (!of.held) return 'not-registered';
  if (!(await signedBy(entry))) return 'signature';
  // The signature itself can be written in two ways (ECDSA): what it is over counts.
  const once = `${use.client} ${use.data} ${actHash(entry.kind, entry.payload)}`;
  if (of.seen.has(once)) return 'told-again';
  of.seen.add(once);
  return null;
}
