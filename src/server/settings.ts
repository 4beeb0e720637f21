// What a server is started with. Everything that a test has to own (clock, folders, people's fold) comes in here.

import type { FastifyInstance } from 'fastify';
import type { Role } from '../../shared/kit/roles.ts';
import type { Entry } from '../../shared/log/entry.ts';
import type { CheckedTrust } from './people/tickets.ts';

/** A person as the log says; the server knows no more of the floor. */
export interface KnownPerson {
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  readonly badge: string;
  readonly pinSet?: { readonly pin: string; readonly tablet: string };
  readonly pin: { readonly salt: string; readonly hash: string; readonly rounds: number } | null;
}

/** How the server learns people from the log. */
export interface PeopleFold {
  /** Kinds that it wants to see. */
  readonly kinds: readonly string[];
  /** Applies one entry. */
  readonly fold: (people: Map<string, KnownPerson>, entry: Entry) => void;
  /** Of entries of these kinds, in the log's order: the ids of those that nothing may follow from, as nothing proves who made them. */
  readonly withoutRight: (entries: readonly Entry[], trust: CheckedTrust) => ReadonlySet<string>;
}

/** Times in ms since 1970. */
export interface ServerClock {
  readonly nowMs: () => number;
}

export interface ServerSettings {
  readonly folder: string;
  readonly database: string | null;
  readonly host: string;
  readonly port: number;
  readonly plant: string;
  /** Where the built app lies. */
  readonly appRoot: string;
  readonly clock: ServerClock;
  readonly people: PeopleFold;
  readonly logLevel: 'debug' | 'info' | 'warn' | 'error' | 'silent';
  /** Where the log goes, one JSON object a line; absent, to standard error. */
  readonly logTo?: { readonly write: (line: string) => void };
  readonly https: HttpsSettings | null;
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
