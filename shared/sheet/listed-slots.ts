// What a sheet leaves open of a slot's part, the plant's list may say: tape width, pitch, and how the part lies in it.
// Method: only what the sheet does not say is filled in, before the setup is written, so that the setup itself holds what feeders are checked by.

import type { ListedFacts } from '../floor/store-state.ts';
import type { SheetSlot } from './slot.ts';

/** The slots with what the plant's list says of their parts in the place of what the sheet leaves open. */
export function withListed(
  slots: readonly SheetSlot[],
  listed: ReadonlyMap<string, ListedFacts>,
): readonly SheetSlot[] {
  return slots.map((slot) => {
    const known = listed.get(slot.part);
    if (known === undefined) return slot;
    const tapeWidth = slot.tapeWidth ?? known.tapeWidthMm;
    // A pitch belongs to its tape.
    const isSameTape = known.tapeWidthMm === null || known.tapeWidthMm === tapeWidth;
    return {
      ...slot,
      tapeWidth,
      pitch: slot.pitch ?? (isSameTape ? known.pitchMm : null),
      polarity: slot.polarity ?? known.orientation,
    };
  });
}
