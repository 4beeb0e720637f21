// A plant whose log began in March 2026: a shift of the demo, a third of it come in during each of three months, on either store.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { simulateShift } from '../../demo/simulate.ts';
import { FOLD_VERSION } from '../../shared/floor/fold-version.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { openStore } from '../../src/server/stores/open.ts';
import type { Store } from '../../src/server/stores/store.ts';
import { newFolder, type TestPostgres } from '../contract/databases.ts';
import { startMs, toChecked } from '../contract/entries.ts';
import { type CallResult, call } from './call.ts';

/** What happened, in folding order. */
export const shift = [...simulateShift({ seed: 3, hours: 6, startMs }).entries].sort(compareEntries);

/** One such plant. */
export interface OldPlant {
  readonly data: string;
  readonly database: string | null;
  /** The folder of months' files, which is there. */
  readonly files: string;
  readonly file: (month: string) => string;
  /** Opens its store; `files`: where it looks for months. */
  readonly open: (files?: string | null) => Promise<Store>;
  /** Looks into its store, which is closed again. */
  readonly inside: <T>(look: (store: Store) => Promise<T>, files?: string | null) => Promise<T>;
  /** Runs an act on it. */
  readonly act: (...args: readonly string[]) => Promise<CallResult>;
  readonly remove: () => void;
}

/** Makes it. `entries`: what its tablets wrote, a third of them each month. */
export async function newOldPlant(
  kind: 'sqlite' | 'postgres',
  postgres: TestPostgres | undefined,
  entries: readonly Entry[] = shift,
): Promise<OldPlant> {
  const folder = newFolder();
  const database = kind === 'sqlite' ? null : ((await postgres?.newDatabase()) ?? null);
  const [data, files] = [join(folder.path, 'data'), join(folder.path, 'months')];
  mkdirSync(files);
  const place = ['--data', data, '--months', files, ...(database === null ? [] : ['--database', database])];
  const plant: OldPlant = {
    data,
    database,
    files,
    file: (month) => join(files, `reelward-${month}.ndjson.gz`),
    open: (months = files) => openStore({ folder: data, database, months, nowMs: Date.now }),
    inside: async (look, months) => {
      const store = await plant.open(months);
      try {
        return await look(store);
      } finally {
        await store.close();
      }
    },
    act: (...args) => call(['serve', ...args, ...place]),
    remove: folder.remove,
  };
  const store = await plant.open();
  const third = Math.ceil(entries.length / 3);
  for (const [at, month] of ['03', '04', '05'].entries()) {
    const some = entries.slice(at * third, (at + 1) * third).map((entry) => toChecked(entry));
    await store.append([{ sender: 'x', entries: some }], Date.parse(`2026-${month}-10T00:00:00Z`));
  }
  await keepState(store, `floor-${FOLD_VERSION}`);
  await store.close();
  return plant;
}

/** A tablet's state of this fold that covers the whole log. */
export async function keepState(store: Store, fold: string): Promise<void> {
  const cursor = await store.head();
  await store.putSnapshot({ fold, cursor, tablet: 'T1', atMs: Date.now(), bytes: Buffer.from('state') });
}

/** Every entry as the store gives it, by place. */
export async function textsOf(store: Pick<Store, 'page'>): Promise<readonly string[]> {
  return (await store.page(0, 1_000_000)).map(({ text }) => text);
}
