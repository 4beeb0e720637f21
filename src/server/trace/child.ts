// The trace process: opens the store beside the server, keeps the index, answers. Ends with the server.

import { openStore, type StoreChoice } from '../stores/open.ts';
import type { Signal, Store } from '../stores/store.ts';
import { createLocalDesk, type TraceDesk } from './desk.ts';
import { tellFault } from './faults.ts';
import type { FromChild, ToChild } from './protocol.ts';

/** Serves the process that started this one; resolves never, since the process ends when that one does. */
export async function keepTraceAsChild(): Promise<never> {
  const tell = (message: FromChild) => {
    // The server may be gone already: then so is this process in a moment.
    if (process.connected) process.send?.(message, () => undefined);
  };
  const onFault = (error: Error) => tell({ id: null, fault: tellFault(error) });
  const listeners = new Set<(signal: Signal) => void>();
  let desk: Promise<TraceDesk> | null = null;
  const open = async (place: Pick<StoreChoice, 'folder' | 'database' | 'months'>): Promise<TraceDesk> => {
    const store = await openStore({ ...place, nowMs: Date.now, onFault, role: 'trace' });
    return createLocalDesk({ store: hearing(store, listeners), nowMs: Date.now, onFault });
  };
  const answer = async (message: Exclude<ToChild, { say: 'open' } | { say: 'appended' }>) => {
    const asked = await desk;
    if (!asked) throw new Error('asked before the store was named');
    if (message.say === 'places') return asked.places(message.question);
    if (message.say === 'panel') return asked.panel(message.panel, message.run ?? undefined);
    await asked.caughtUp();
    return null;
  };
  process.on('message', (message: ToChild) => {
    if (message.say === 'open') {
      const { folder, database, months } = message;
      desk = open({ folder, database, months });
      // Without a store this process is of no use: the server starts another.
      desk.catch((error: Error) => {
        onFault(error);
        setTimeout(() => process.exit(1), 100);
      });
    } else if (message.say === 'appended') for (const listener of listeners) listener({ kind: 'appended' });
    else
      answer(message).then(
        (value) => tell({ id: message.id, answer: value }),
        (error: Error) => tell({ id: message.id, fault: tellFault(error) }),
      );
  });
  // Stopped by the server's end alone: a signal to the whole group must not take it away before that.
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => undefined);
  process.on('disconnect', () => process.exit(0));
  return new Promise<never>(() => undefined);
}

/** The store, also told of what the server appends: an embedded store tells its own process only. */
function hearing(store: Store, listeners: Set<(signal: Signal) => void>): Store {
  return {
    ...store,
    watch: (listener) => {
      listeners.add(listener);
      const unwatch = store.watch(listener);
      return () => {
        listeners.delete(listener);
        unwatch();
      };
    },
  };
}
