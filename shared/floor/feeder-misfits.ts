// Does a feeder's type serve a slot? What the setup wants of the feeder against what the plant said of its type.

import { typeOf } from './feeder-types.ts';
import type { SetupSlot } from './kinds.ts';
import type { FloorState } from './state.ts';

/** Why a feeder's type does not serve a slot; null where it does, or where nobody said. */
export interface TypeMisfit {
  readonly code: 'feeder-type' | 'feeder-drive' | 'feeder-height';
  readonly wanted: string | number;
  readonly found: string | number;
}

/**
 * What a setup wants of a slot's feeder against what its type is, each thing that does not fit. A type that the plant has not described is a
 * word of the sheet and decides nothing.
 */
export function typeMisfits(state: FloorState, feeder: string, wanted: SetupSlot): readonly TypeMisfit[] {
  const type = typeOf(state, feeder);
  if (type === null) return [];
  const found: TypeMisfit[] = [];
  const { feederType, drive, pocketMm } = wanted;
  if (feederType !== undefined && state.feederTypes.has(feederType) && feederType !== type.type)
    found.push({ code: 'feeder-type', wanted: feederType, found: type.type });
  if (drive !== undefined && type.drive !== null && plain(drive) !== plain(type.drive))
    found.push({ code: 'feeder-drive', wanted: drive, found: type.drive });
  if (pocketMm !== undefined && type.pocketMm !== null && pocketMm > type.pocketMm)
    found.push({ code: 'feeder-height', wanted: pocketMm, found: type.pocketMm });
  return found;
}

function plain(text: string): string {
  return text.trim().toLowerCase();
}
