// What every route may use. Built once by the composition root.

import type { Appender } from './appender.ts';
import type { StoreHealth } from './health.ts';
import type { ServerKey } from './keys.ts';
import type { LiveHub } from './live.ts';
import type { Metrics } from './metrics.ts';
import type { OwnChain } from './own-chain.ts';
import type { PeopleBook } from './people/book.ts';
import type { PinSeal } from './people/pin-seal.ts';
import type { TicketDesk } from './people/tickets.ts';
import type { PushDesk } from './push/desk.ts';
import type { Quotas } from './quotas.ts';
import type { SeenBook } from './seen.ts';
import type { ServerSettings } from './settings.ts';
import type { SignatureWalk } from './signatures.ts';
import type { Store } from './stores/store.ts';
import type { TraceDesk } from './trace/desk.ts';
import type { HeadSigner } from './tree-heads.ts';
import type { Witnesses } from './witnesses.ts';

export interface ServerContext {
  readonly settings: ServerSettings;
  /** What the plant is called. */
  readonly plant: string;
  readonly store: Store;
  readonly appender: Appender;
  readonly signatures: SignatureWalk;
  readonly seen: SeenBook;
  readonly live: LiveHub;
  readonly key: ServerKey;
  /** What the server writes itself. */
  readonly own: OwnChain;
  readonly heads: HeadSigner;
  readonly witnesses: Witnesses;
  readonly people: PeopleBook;
  readonly tickets: TicketDesk;
  readonly pinSeal: PinSeal;
  readonly trace: TraceDesk;
  readonly metrics: Metrics;
  readonly push: PushDesk;
  readonly quotas: Quotas;
  readonly health: StoreHealth;
  readonly serverEpoch: string;
  readonly nowMs: () => number;
  readonly startedMs: number;
  /** Proofs of requests of before are refused: with the process its memory of used ones begins, with a database that fell away that of the database. */
  readonly proofsFromMs: () => number;
  /** When the certificate in use ends; null without HTTPS of its own. */
  readonly certificateEndsMs: () => number | null;
}
