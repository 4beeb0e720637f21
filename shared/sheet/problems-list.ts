// What can be wrong with a list: of the plant's parts, or of reels that a counter has counted.

import { error, type Kind, warning } from './problem-kind.ts';

/** Every kind of it, with its sentence. */
export const listKinds = {
  listPartEmpty: error(() => 'The row has no part number, but other cells are filled. Fill it in.'),
  listPackingUnknown: warning(
    (f) => `"${f['found']}" is no tape, cut tape, tray, tube or bulk, so it is left out. Correct it.`,
  ),
  listAgeUnreadable: warning(
    (f) => `The age limit "${f['found']}" is not a number of months, so it is left out. Write 24 or 2 years.`,
  ),
  listPriceUnreadable: warning(
    (f) => `The price "${f['found']}" is not a number above 0, so it is left out. Write 0.012 or 0.012 EUR.`,
  ),
  listPriceUnclear: warning(
    (f) => `"${f['found']}" does not say how many parts a price is for. Write Price each or Price per 1000.`,
  ),
  listToleranceUnclear: warning(
    (f) =>
      `"${f['found']}" has bare figures below 1 that may be shares or per cent, so they are left out. Call the column "Tolerance %" or write 1 % in the cells.`,
  ),
  listReelEmpty: warning(() => 'The row has no reel id, so it is left out. Fill it in.'),
  listReelTwice: warning(
    (f) => `Reel ${f['found']} is in row ${f['first']} already. The last count of it is taken.`,
  ),
  listCountUnreadable: warning(
    (f) => `The count "${f['found']}" is not a whole number of parts, so the row is left out. Correct it.`,
  ),
} as const satisfies Readonly<Record<string, Kind>>;
