// Whose is the passkey that signed an entry? As the log registered it. What a passkey signs, and how that is read, stands in passkey-sign.ts;
// whether a signature holds is looked at before entries are folded, by whoever folds.

import type { Role } from '../kit/roles.ts';
import type { Entry } from '../log/entry.ts';
import { compareEntries } from '../log/order.ts';
import type { PayloadOf } from './kinds.ts';
import type { PasskeyKey } from './kinds-passkeys.ts';

/** Where an entry stands in the log's order. */
type Position = Pick<Entry, 'hlc' | 'tablet' | 'epoch' | 'seq'>;

/** A passkey as the log registered it: `role` follows the person's. */
export interface HeldPasskey extends Readonly<PayloadOf<'passkey.added'>> {
  /** The entry that registered it. */
  readonly at: Position;
  /** False while nothing proves who registered it: it proves nothing then. */
  readonly isProven: boolean;
  /** The entry that removed it, or its person; one that had no right to does not. */
  readonly removed: Position | null;
  /** The highest count that its authenticator told; 0 where it counts nothing. */
  readonly count: number;
  /** The entry whose count was not higher than the one before: the passkey may have been copied. Null while all rose. */
  readonly fell: string | null;
}

/** Where an entry stands, alone. */
export function positionOf({ hlc, tablet, epoch, seq }: Position): Position {
  return { hlc, tablet, epoch, seq };
}

/** What the signature in an entry says, where it was made for that entry and holds. */
export interface SignedBy {
  readonly credential: string;
  readonly key: PasskeyKey;
  /** The host of the page that asked for it. */
  readonly host: string;
  /** How often the authenticator says it has signed; 0 where it does not count. */
  readonly count: number;
}

/**
 * The passkey by which an entry is signed, where it was this person's then, and of this key and host; else null. `signed`: what its signature
 * says, null where that does not hold.
 */
export function registeredPasskey(
  passkeys: ReadonlyMap<string, HeldPasskey>,
  entry: Position,
  by: { readonly person: string | null; readonly signed: SignedBy | null },
): HeldPasskey | null {
  const { person, signed } = by;
  const held = signed && passkeys.get(signed.credential);
  if (!held || held.person !== person || held.host !== signed.host) return null;
  if (!isSameKey(held.key, signed.key) || compareEntries(entry, held.at) < 0) return null;
  return held.removed && compareEntries(entry, held.removed) > 0 ? null : held;
}

function isSameKey(one: PasskeyKey, other: PasskeyKey): boolean {
  if (one.kty === 'EC') return other.kty === 'EC' && one.x === other.x && one.y === other.y;
  return other.kty === 'RSA' && one.n === other.n;
}

/** A person got another role, or was taken out (null): the passkeys follow, and end where the person can decide nothing any more. */
export function followPerson(
  passkeys: Map<string, HeldPasskey>,
  { person, role }: { readonly person: string; readonly role: Role | null },
  entry: Position,
): void {
  for (const [credential, held] of passkeys) {
    if (held.person !== person || held.removed) continue;
    if (role !== null && role !== 'operator') passkeys.set(credential, { ...held, role });
    else passkeys.set(credential, { ...held, removed: positionOf(entry) });
  }
}

/** What an entry says without the signature under it: what the floor keeps of it, since a signature is of one entry alone. */
export function unsigned<P extends { readonly passkey?: unknown }>({
  passkey: _,
  ...payload
}: P): Omit<P, 'passkey'> {
  return payload;
}
