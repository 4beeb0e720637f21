// The plant's signed list of its tablets' keys as the server told it last: exports of this tablet bring it along.

import type { LogDatabase } from './database.ts';

const KEY = 'plant-keys';

/** Keeps the newest list, a signed note. */
export async function keepPlantKeys({ meta }: Pick<LogDatabase, 'meta'>, keys: string): Promise<void> {
  await meta.put({ key: KEY, value: keys });
}

/** The list as it was kept; null where none was. */
export async function readPlantKeys({ meta }: Pick<LogDatabase, 'meta'>): Promise<string | null> {
  const value = (await meta.get(KEY))?.value;
  return typeof value === 'string' ? value : null;
}
