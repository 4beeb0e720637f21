// Chains of a test tablet as its app writes them: sealed, signed by its own key, dated by the test's clock.

import type { EntryKind, PayloadOf } from '../../../shared/floor/kinds.ts';
import { type Entry, firstPrev, type JsonObject } from '../../../shared/log/entry.ts';
import { sealEntry } from '../../../shared/log/seal.ts';
import { pushedSchema } from '../../../shared/wire/messages.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import { readPublicKey } from '../../../src/server/keys.ts';
import type { RunningServer } from '../../../src/server/main.ts';
import { enrolAt, newTablet, type TestClock, type TestTablet } from './tablets.ts';

/** A chain in the making. */
export interface TestChain {
  readonly tablet: TestTablet;
  readonly entries: readonly Entry[];
  /** Writes an entry; `ms`: its clock, where it is not the test's. */
  readonly tell: <K extends EntryKind>(
    kind: K,
    payload: PayloadOf<K>,
    options?: { readonly who?: string | null; readonly ms?: number },
  ) => Promise<Entry>;
  /** Sends all of it; fails where the server does not take every entry. */
  readonly push: () => Promise<void>;
}

/** A new tablet lets itself in and begins its chain. */
export async function joinChain(server: RunningServer, name: string, clock: TestClock): Promise<TestChain> {
  const tablet = await newTablet(name, server.url, clock);
  await enrolAt(server, tablet);
  return beginChain(tablet, clock);
}

/** Begins a chain; its first entry names the tablet's key. */
export async function beginChain(
  tablet: TestTablet,
  {
    nowMs,
    epoch = 'e1',
    ms,
  }: { readonly nowMs: () => number; readonly epoch?: string; readonly ms?: number },
): Promise<TestChain> {
  const entries: Entry[] = [];
  let sent = 0;
  const chain: TestChain = {
    tablet,
    entries,
    tell: async (kind, payload, { who = null, ms: at = nowMs() } = {}) => {
      const last = entries.at(-1);
      const sealed = sealEntry({
        v: 1,
        tablet: tablet.name,
        epoch,
        seq: entries.length + 1,
        at: new Date(at).toISOString(),
        hlc: { ms: at, n: entries.length },
        who,
        kind,
        payload: payload as unknown as JsonObject, // as its kind wants it
        prev: last?.hash ?? firstPrev,
      });
      const entry = { ...sealed, sig: await tablet.key.sign(entryText(sealed.hash)) };
      entries.push(entry);
      return entry;
    },
    push: async () => {
      const json = { sentMs: nowMs(), entries: entries.slice(sent) };
      const pushed = await tablet.caller.call('/api/push', pushedSchema, { json });
      if (!pushed.ok) throw new Error(`not taken: ${pushed.error.code}`);
      if (pushed.value.faults.length > 0)
        throw new Error(`not taken: ${JSON.stringify(pushed.value.faults)}`);
      sent = entries.length;
    },
  };
  const key = readPublicKey(tablet.key.publicKey)?.export({ format: 'jwk' });
  const named = { kty: 'EC', crv: 'P-256', x: String(key?.x), y: String(key?.y) };
  await chain.tell(
    'tablet.opened',
    { name: tablet.name, app: '1', key: named, previous: null },
    ms === undefined ? {} : { ms },
  );
  return chain;
}
