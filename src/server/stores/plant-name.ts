// Whose store is this? The first name that settings give a store stays with it, also in its backups: settings of one plant on the store of
// another, or a backup put into the wrong one, would make one log of two plants, and no tablet could be told apart again.

import { unnamedPlant } from '../../../shared/wire/messages.ts';
import { StoreRefused } from './migrate.ts';
import type { Store } from './store.ts';
import { plantRowName } from './tables.ts';

type Named = Pick<Store, 'readMeta'>;

/** What the store's plant is called; null where nobody named it yet. */
export function storedPlant(store: Named): Promise<string | null> {
  return store.readMeta(plantRowName);
}

/** True where both are known and differ. */
export function isOtherPlant(stored: string | null, given: string | null): boolean {
  return stored !== null && given !== null && stored !== given;
}

/** Why a store is refused under another plant's name. */
export function otherPlantWords(stored: string, given: string): string {
  return `--plant: this is the store of “${stored}”, not of “${given}”: name that plant’s own with --data or --database; a plant that is called otherwise from now on is renamed with serve rename`;
}

/** What the plant is called, by its store or as given. Throws `StoreRefused` where the two differ. */
export async function plantOf(store: Named, given: string | null): Promise<string> {
  const stored = await storedPlant(store);
  if (stored !== null && given !== null && stored !== given)
    throw new StoreRefused(otherPlantWords(stored, given));
  return stored ?? given ?? unnamedPlant;
}

/** The same, and a name that is given for the first time stays. A store that cannot be written now is named at a later start: `onFault` is told. */
export async function settlePlant(
  store: Named & Pick<Store, 'keepMeta'>,
  given: string | null,
  onFault: (error: Error) => void,
): Promise<string> {
  const plant = await plantOf(store, given);
  if (given === null || (await storedPlant(store)) !== null) return plant;
  const kept = await store.keepMeta(plantRowName, given).catch((error: Error) => {
    onFault(error);
    return given;
  });
  // Another server on the same database may have named it at this very moment.
  if (kept !== given) throw new StoreRefused(otherPlantWords(kept, given));
  return kept;
}
