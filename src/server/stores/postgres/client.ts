// A connection whose results can be thrown away. Where the driver makes the promise of a result itself, what is garbage by then
// holds on to what comes after it: an export of a year went up to the heap's limit, over and over. Asked with a callback it does not.

import pg from 'pg';

type Ask = (
  text: string,
  values: unknown[],
  callback: (error: Error | null, result: unknown) => void,
) => void;

/** How long a connection may take to stand, ms: a person waits for what comes of it. */
export const CONNECT_MS = 3_000;

/**
 * How long a question may wait for one of the connections, ms. Longer than a connection may take to stand: where hundreds of tablets come back at
 * once the database is busy, not gone, and a refusal would only bring them again.
 */
export const WAIT_MS = 20_000;

/** The driver's client, with promises of its own for plain queries. */
export class LeanClient extends pg.Client {
  constructor(settings?: string | pg.ClientConfig) {
    super(typeof settings === 'object' ? { ...settings, connectionTimeoutMillis: CONNECT_MS } : settings);
    const ask = super.query.bind(this) as Ask & typeof this.query; // the overload with a callback
    const query = (text: unknown, values: unknown, callback: unknown) => {
      if (typeof text !== 'string' || !Array.isArray(values) || callback !== undefined) {
        return (ask as (...all: unknown[]) => unknown)(text, values, callback);
      }
      return new Promise((resolve, reject) => {
        ask(text, values, (error, result) => (error ? reject(error) : resolve(result)));
      });
    };
    this.query = query as typeof this.query; // answers each of the driver's overloads
  }
}

/** Cuts a connection off without a goodbye: its driver waits for what was asked and for the host's, and a host that fell silent gives neither. */
export function cutClient(client: pg.ClientBase): void {
  // The driver's own socket, which its types leave out.
  const { connection } = client as unknown as {
    readonly connection: { readonly stream: { destroy: () => void } };
  };
  connection.stream.destroy();
}
