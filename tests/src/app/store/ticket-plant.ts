// A plant that gives tickets, for tests of a tablet's store.

import type { Entry } from '../../../../shared/log/entry.ts';
import { sealEntry } from '../../../../shared/log/seal.ts';
import { serverChain } from '../../../../shared/log/server-chain.ts';
import { entryText } from '../../../../shared/wire/signing.ts';
import { publicKey } from '../../../../src/app/store/identity.ts';
import type { Store } from '../../../../src/app/store/store.ts';
import { openServerKey } from '../../../../src/server/keys.ts';
import { createTicketDesk } from '../../../../src/server/people/tickets.ts';

/** A plant's desk without a server around it, that begins to give tickets now. */
export async function beginPlant(store: Store, nowMs: () => number) {
  const meta = new Map<string, string>();
  const keepMeta = async (name: string, value: string) => {
    if (!meta.has(name)) meta.set(name, value);
    return meta.get(name) ?? '';
  };
  const serverKey = await openServerKey({ keepMeta });
  const { tablet, epoch } = store.identity;
  const desk = createTicketDesk({
    store: {
      keepMeta,
      readMeta: async (name) => meta.get(name) ?? null,
      swapMeta: async (name, _, value) => {
        meta.set(name, value);
        return true;
      },
      heads: async () => [{ tablet, epoch, seq: store.count(), hash: '0'.repeat(64) }],
      listTablets: async () => [],
    },
    key: serverKey,
    plant: 'Brae Works',
  });
  const { x = '', y = '' } = ((await publicKey(store.identity)) ?? {}) as {
    readonly x?: string;
    readonly y?: string;
  };
  const own = Buffer.concat([Buffer.from([4]), Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')]);
  const give = (person: string) =>
    desk.give(
      { person, role: 'lead' },
      { tablet, publicKey: own.toString('base64url') },
      { nowMs: nowMs(), stays: true },
    );
  const ticket = (await give('boss')) ?? '';
  const note = (await desk.started()) ?? '';
  /** The server's word that this tablet was shut out, the first after its chain's opening; `sign`: by another key than the plant's. */
  const shutOut = (sign: (text: string) => string = serverKey.sign): Entry => {
    const ms = nowMs();
    const entry = sealEntry({
      v: 1,
      tablet: serverChain,
      epoch: 'log',
      seq: 2,
      at: new Date(ms).toISOString(),
      hlc: { ms, n: 0 },
      who: null,
      kind: 'tablet.shut-out',
      payload: { tablet, person: null, account: 'keeper' },
      prev: '0'.repeat(64),
    });
    return { ...entry, sig: sign(entryText(entry.hash)) };
  };
  return { ticket, give, shutOut, serverKey, start: { note, serverKey: serverKey.publicKey } };
}
