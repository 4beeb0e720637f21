// Which of several hosts is written to? An address may name all that a database may be on, as libpq's do (PostgreSQL documentation, "Connection
// URIs": hosts with commas between, `target_session_attrs`). The driver knows one host, so each is asked, and the first that can be written is
// taken until it falls away. Of one host without `target_session_attrs` nothing is asked.

import pg from 'pg';
import { StoreRefused } from '../migrate.ts';
import { splitAddress } from './address.ts';
import { CONNECT_MS } from './client.ts';

/** How long one small question may take, ms. */
const ASK_MS = 1_500;

/** What an address names. */
export interface Address {
  /** The same address with one host each, as the driver reads it. */
  readonly urls: readonly string[];
  /** True where a host has to be asked whether it can be written. */
  readonly isAsked: boolean;
}

/** What of libpq's words a server can use; the others name a copy that is only read. */
const usable = new Set(['any', 'primary', 'read-write']);

/** Reads an address. Throws `StoreRefused` where it asks for a host that can only be read. */
export function readAddress(url: string): Address {
  const { head, hosts, place, query } = splitAddress(url);
  const parameters = new URLSearchParams(query);
  const wanted = parameters.get('target_session_attrs');
  if (wanted !== null && !usable.has(wanted))
    throw new StoreRefused(
      `--database: target_session_attrs=${wanted}: a server writes; expected read-write, primary or any`,
    );
  parameters.delete('target_session_attrs');
  if (wanted === null && hosts.length === 1) return { urls: [url], isAsked: false };
  const rest = parameters.size === 0 ? place : `${place}?${parameters}`;
  return {
    urls: hosts.map((host) => head + host + rest),
    isAsked: hosts.length > 1 || wanted !== 'any',
  };
}

/** Resolves with the address of the host that is written to; rejects within five seconds where none is, with the driver's error. */
export async function findHost({ urls, isAsked }: Address): Promise<string> {
  const asked = urls.map(async (url) => {
    if ((await askHost(url)) || !isAsked) return url;
    // As the database itself says it where somebody writes (SQLSTATE 25006).
    throw Object.assign(new Error('this host can only be read'), { code: '25006' });
  });
  try {
    return await Promise.any(asked);
  } catch (error) {
    const { errors } = error as AggregateError; // none of them was fulfilled
    // A copy that answers says less than what keeps the other away, unless copies are all that is left.
    throw errors.find(({ code }: { readonly code?: unknown }) => code !== '25006') ?? errors[0];
  }
}

/** True where the host can be written. */
async function askHost(url: string): Promise<boolean> {
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: CONNECT_MS,
    query_timeout: ASK_MS,
  });
  // What breaks fails what is asked; unheard, it would end the process.
  client.on('error', () => undefined);
  try {
    await client.connect();
    const { rows } = await client.query<{ writable: boolean }>(
      "select not pg_is_in_recovery() and current_setting('transaction_read_only') = 'off' as writable",
    );
    return rows[0]?.writable ?? false;
  } finally {
    // Not awaited: whoever says nothing does not say goodbye either.
    client.end().catch(() => undefined);
  }
}
