// Tickets: the server's signed word for who stood at which tablet, that entries are proven by (`shared/floor/rights.ts`). Given to whoever
// was checked with a PIN. The plant's first one, to somebody who may add people, draws the line: what the log held then was written when
// nothing could prove who acted, and counts as before.

import type { KeyObject } from 'node:crypto';
import { exportJWK, jwtVerify } from 'jose';
import { type EntryOf, readFloorEntry } from '../../../shared/floor/kinds.ts';
import { addsPeople } from '../../../shared/floor/may.ts';
import type { SignedBy } from '../../../shared/floor/passkey.ts';
import {
  readClaims,
  splitToken,
  type TicketClaims,
  ticketMs,
  ticketType,
} from '../../../shared/floor/ticket.ts';
import { chainId } from '../../../shared/log/entry.ts';
import { parseNote } from '../../../shared/log/note.ts';
import { serverChain } from '../../../shared/log/server-chain.ts';
import { parseTicketStart, type TicketStart, ticketStartText } from '../../../shared/log/ticket-start.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import { readPublicKey, type ServerKey, signatureHolds } from '../keys.ts';
import type { Store } from '../stores/store.ts';
import { ticketStartName } from '../stores/tables.ts';
import type { CheckedTrust, KnownPerson } from './known.ts';
import { signedBy } from './passkeys.ts';
import { signToken } from './token.ts';

/** For whoever comes to another's tablet to decide one thing. As a session of the server. */
const DECIDING_MS = 15 * 60_000;

/** Gives tickets and checks them. */
export interface TicketDesk {
  /** A ticket for a person on a tablet: for a shift where the person stays, else for as long as a decision takes; null while the plant gives none, and this one may not add people. */
  readonly give: (
    person: Pick<KnownPerson, 'person' | 'role'>,
    tablet: { readonly tablet: string; readonly publicKey: string },
    how: { readonly nowMs: number; readonly stays: boolean },
  ) => Promise<string | null>;
  /** From where on the plant gives tickets, a signed note; null while it gave none. */
  readonly started: () => Promise<string | null>;
  /** Whose tickets count; null while the plant gave none. */
  readonly trust: () => Promise<CheckedTrust | null>;
}

interface Desk {
  readonly store: Pick<Store, 'readMeta' | 'swapMeta' | 'keepMeta' | 'heads' | 'listTablets'>;
  readonly key: Pick<ServerKey, 'publicKey' | 'secret' | 'plant'>;
  readonly plant: string;
}

/** Opens the desk. */
export function createTicketDesk(desk: Desk): TicketDesk {
  let known: { readonly note: string; readonly trust: CheckedTrust } | null = null;
  const started = async () => (await readStart(desk))?.note ?? null;
  return {
    started: async () => known?.note ?? (await started()),
    give: async (person, tablet, { nowMs, stays }) => {
      if ((await started()) === null) {
        if (!addsPeople(person)) return null;
        await begin(desk, nowMs);
      }
      return signTicket(desk, { person, tablet, nowMs, lifeMs: stays ? ticketMs : DECIDING_MS });
    },
    trust: async () => {
      if (known) return known.trust;
      const start = await readStart(desk);
      if (start) known = { note: start.note, trust: trustFrom(desk, start) };
      return known?.trust ?? null;
    },
  };
}

interface ReadStart extends TicketStart {
  readonly note: string;
}

/** One that another key signed is of before the plant lost its key: with a new key it begins anew. */
async function readStart({ store, key }: Desk): Promise<ReadStart | null> {
  const note = await store.readMeta(ticketStartName);
  const start = note === null ? null : parseTicketStart(parseNote(note)?.text ?? '');
  return note !== null && start?.origin === key.plant.ed25519.name ? { ...start, note } : null;
}

async function begin({ store, key }: Desk, nowMs: number): Promise<void> {
  const heads = await store.heads();
  const text = ticketStartText({
    origin: key.plant.ed25519.name,
    at: new Date(nowMs).toISOString(),
    before: new Map(heads.map((head) => [chainId(head), head.seq])),
  });
  const note = key.plant.signNote(text);
  // Two processes on one store may both begin: the first counts. A line that another key drew is drawn anew.
  const kept = await store.keepMeta(ticketStartName, note);
  const start = parseTicketStart(parseNote(kept)?.text ?? '');
  if (start?.origin !== key.plant.ed25519.name) await store.swapMeta(ticketStartName, kept, note);
}

async function signTicket(
  { key, plant }: Desk,
  given: {
    readonly person: Pick<KnownPerson, 'person' | 'role'>;
    readonly tablet: { readonly tablet: string; readonly publicKey: string };
    readonly nowMs: number;
    readonly lifeMs: number;
  },
): Promise<string> {
  const { person, tablet, nowMs, lifeMs } = given;
  const own = readPublicKey(tablet.publicKey);
  if (!own) throw new RangeError(`Cannot tie a ticket to a key as it must be a point: ${tablet.publicKey}`);
  const { kty, crv, x, y } = await exportJWK(own);
  const fromSeconds = Math.floor(nowMs / 1000);
  const claims = {
    role: person.role,
    tablet: tablet.tablet,
    plant,
    cnf: { jwk: { kty, crv, x, y } },
    iss: key.plant.ed25519.name,
    sub: person.person,
    nbf: fromSeconds,
    exp: fromSeconds + Math.floor(lifeMs / 1000),
  };
  return signToken(ticketType, claims, key.secret);
}

/** Tickets checked and kept by the entry that brought them; a plant has some ten thousand a year. */
function trustFrom({ store, key }: Desk, { before }: TicketStart): CheckedTrust {
  const claims = new Map<string, TicketClaims | null>();
  const signed = new Map<string, SignedBy | null>();
  const ofServer = new Set<string>();
  let revoked: ReadonlyMap<string, number> = new Map();
  const own = readPublicKey(key.publicKey);
  return {
    before,
    claimsOf: ({ hash, tablet }) => {
      const found = claims.get(hash) ?? null;
      // A ticket ends with its tablet: the fold knows when, but for one that was shut out before servers told it in the log.
      const endMs = revoked.get(tablet);
      return found && endMs !== undefined ? { ...found, untilMs: Math.min(found.untilMs, endMs) } : found;
    },
    signedBy: ({ hash }) => signed.get(hash) ?? null,
    isOfServer: ({ hash }) => ofServer.has(hash),
    look: async (entries) => {
      for (const { kind, tablet, hash, sig } of entries)
        if (kind === 'tablet.shut-out' && tablet === serverChain && sig !== null)
          if (signatureHolds(key.publicKey, entryText(hash), sig)) ofServer.add(hash);
      for (const entry of entries)
        if ('passkey' in entry.payload && !signed.has(entry.hash))
          signed.set(entry.hash, await signedBy(entry));
      const shut = (await store.listTablets()).flatMap(({ tablet, revokedMs }) =>
        revokedMs === null ? [] : [[tablet, revokedMs] as const],
      );
      revoked = new Map(shut);
      for (const entry of entries) {
        if (entry.kind !== 'ticket.taken' || claims.has(entry.hash)) continue;
        const read = readFloorEntry(entry);
        const found =
          own && read?.kind === 'ticket.taken'
            ? await checkTicket(read, { key: own, issuer: key.plant.ed25519.name })
            : null;
        claims.set(entry.hash, found);
      }
    },
  };
}

/** What a ticket says, where the plant signed it and the tablet that wrote the entry is the one that it names, by its key; else null. */
export async function checkTicket(
  entry: EntryOf<'ticket.taken'>,
  plant: { readonly key: KeyObject; readonly issuer: string },
): Promise<TicketClaims | null> {
  const { ticket } = entry.payload;
  const split = splitToken(ticket);
  const claims = split && readClaims(split);
  if (!claims || claims.tablet !== entry.tablet || entry.sig === null) return null;
  const { x, y } = claims.key;
  const point = Buffer.concat([Buffer.from([4]), Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')]);
  if (!signatureHolds(point.toString('base64url'), entryText(entry.hash), entry.sig)) return null;
  try {
    // Whether it was good at the time is asked of each entry; here is only whether the plant gave it.
    const options = { issuer: plant.issuer, algorithms: ['ES256'], typ: ticketType };
    await jwtVerify(ticket, plant.key, { ...options, currentDate: new Date(claims.fromMs) });
    return claims;
  } catch {
    return null; // another key, or another text
  }
}
