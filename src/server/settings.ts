// What a server is started with. Everything that a test has to own (clock, folders, people's fold) comes in here.

import type { FastifyInstance } from 'fastify';
import type { PeopleFold } from './people/known.ts';
import type { PushSettings } from './push/desk.ts';
import type { Migrated } from './stores/migrate.ts';
import type { Step } from './stores/step.ts';

/** Times in ms since 1970. */
export interface ServerClock {
  readonly nowMs: () => number;
}

export interface ServerSettings {
  readonly folder: string;
  readonly database: string | null;
  /** The folder where the files of months lie whose texts left the store; absent or null where none is named. */
  readonly months?: string | null;
  /** Name or address under which tablets reach this computer. */
  readonly host: string;
  /** The address to listen on; absent, this computer alone where `host` is its own inner one, and every address otherwise. */
  readonly listen?: string;
  /** Addresses and networks of proxies that are believed about who asks. */
  readonly trustProxy?: readonly string[];
  /** Under which tablets reach the server where something stands between: no slash at the end. Absent, its own. */
  readonly publicUrl?: string;
  readonly port: number;
  /** What the plant is called; null where nobody says, and the store does. */
  readonly plant: string | null;
  /** Where the built app lies. */
  readonly appRoot: string;
  readonly clock: ServerClock;
  readonly people: PeopleFold;
  readonly logLevel: 'debug' | 'info' | 'warn' | 'error' | 'silent';
  /** Where the log goes, one JSON object a line; absent, to standard error. */
  readonly logTo?: { readonly write: (line: string) => void };
  readonly https: HttpsSettings | null;
  /** Port on which this computer alone may ask what the server counts; absent, only those who hold the key ask, at the server's own port. */
  readonly metricsPort?: number;
  /** How messages reach leads while no app is open; absent, none are sent and nothing leaves the server. */
  readonly push?: PushSettings;
  /** The program's version; given, the server writes into the plant's log what is done to its tablets and to the log. */
  readonly app?: string;
  /** Told where the store's schema was brought forward. */
  readonly onMigrated?: (migrated: Migrated) => void;
  /** The schema's steps; a test hands in its own, as a program of another version would know. */
  readonly steps?: readonly Step[];
  /** The program that keeps the trace in a process of its own; absent, the server's own process does. */
  readonly traceProgram?: string;
  /** Routes beside the server's own; where they name the page itself, they win over it. */
  readonly addRoutes?: (app: FastifyInstance) => void;
}

/** Either an own certificate, or the local authority's. */
export interface HttpsSettings {
  readonly names: readonly string[];
  readonly ownFiles: { readonly certFile: string; readonly keyFile: string } | null;
  /** Port of the plain page that explains how to trust the authority; unused with an own certificate. */
  readonly trustPort: number;
}
