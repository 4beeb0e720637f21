// Whose tickets count here: the plant's, by the key that this tablet knows since it joined, from where on the plant gives them. Until that
// is known no entry is asked for a ticket. Kept beside the log; a state folded with it bears its name.

import type { SignedBy } from '../../../shared/floor/passkey.ts';
import type { Trust } from '../../../shared/floor/rights.ts';
import type { TicketClaims } from '../../../shared/floor/ticket.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { type LogDatabase, trustKey } from './database.ts';

/** What is kept. */
export interface KeptTrust {
  /** Names this trust: made out of all the rest. */
  readonly id: string;
  /** The name of the plant's key, and its P-256 point, base64url. */
  readonly issuer: string;
  readonly serverKey: string;
  /** Chain -> the number of its last entry when the first ticket was given. */
  readonly before: ReadonlyMap<string, number>;
}

/** Whose tickets count, and how they are checked before entries are folded. */
export interface TabletTrust extends Trust {
  readonly id: string;
  /** Checks the tickets, the signatures of passkeys and the server's shut-outs among entries, once each; without any it costs nothing. */
  readonly look: (entries: readonly Entry[]) => Promise<void>;
}

/** Keeps it for good. */
export async function keepTrust({ meta }: Pick<LogDatabase, 'meta'>, kept: KeptTrust): Promise<void> {
  await meta.put({ key: trustKey, value: kept });
}

/** Makes it ready to be asked. */
export function trustOf(kept: KeptTrust): TabletTrust {
  const claims = new Map<string, TicketClaims | null>();
  const signed = new Map<string, SignedBy | null>();
  const ofServer = new Map<string, boolean>();
  return {
    id: kept.id,
    before: kept.before,
    claimsOf: ({ hash }) => claims.get(hash) ?? null,
    signedBy: ({ hash }) => signed.get(hash) ?? null,
    isOfServer: ({ hash }) => ofServer.get(hash) ?? false,
    look: async (entries) => {
      const uses = entries.filter(({ hash, payload }) => 'passkey' in payload && !signed.has(hash));
      if (uses.length > 0) {
        const { signedBy } = await import('./passkeys.ts');
        for (const entry of uses) signed.set(entry.hash, await signedBy(entry));
      }
      const fresh = entries.filter(({ kind, hash }) => kind === 'ticket.taken' && !claims.has(hash));
      const shut = entries.filter(({ kind, hash }) => kind === 'tablet.shut-out' && !ofServer.has(hash));
      if (fresh.length + shut.length === 0) return;
      const { checkTicket, isOfServer } = await import('./tickets.ts');
      for (const entry of fresh) claims.set(entry.hash, await checkTicket(entry, kept));
      for (const entry of shut) ofServer.set(entry.hash, await isOfServer(entry, kept));
    },
  };
}
