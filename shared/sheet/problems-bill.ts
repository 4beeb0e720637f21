// What can be wrong with a bill of materials, with the join of a bill and a placement file, and with columns taken by what stands in them?

import { error, type Kind, warning } from './problem-kind.ts';

/** Kinds of problems by code, as in problems.ts. */
export const billKinds = {
  // Columns taken by what stands in them.
  headerGuessed: warning(
    (f) =>
      `The file has no header that is known. By what stands in them the columns are: ${f['wanted']}. Check them.`,
  ),
  columnByLook: warning(
    (f) => `Column "${f['found']}" is taken for ${f['field']} by what stands in it. Check it.`,
  ),
  genericParts: warning(
    (f) =>
      `Column "${f['found']}" has one name for several values, so it holds kinds and no part numbers. The values count. Choose the column of part numbers by hand if there is one.`,
  ),
  partsAreDesignators: error(
    (f) =>
      `Column "${f['found']}" holds reference designators, not part numbers. Choose the column of part numbers by hand.`,
  ),
  sheetAdded: warning(
    (f) =>
      `The rows of sheet "${f['found']}" have the same header and are read too; they count on from row ${f['first']}.`,
  ),
  // In the placement file.
  designatorTwice: error(
    (f) =>
      `Designator ${f['designator']} is in row ${f['first']} already, at another place. It counts once. Give each part on the board a name of its own.`,
  ),
  designatorSeldom: warning(
    (f) =>
      `Designator ${f['designator']} is in the file ${f['found']} times, most others ${f['wanted']} times. Check that each board of the panel has it.`,
  ),
  placementSideFromName: warning(
    (f) =>
      `Nothing in the file says the side. By its name "${f['found']}" all placements count as ${f['side']}.`,
  ),
  throughHole: warning(
    (f) =>
      `Designator ${f['designator']} (${f['part']}) is put through holes, so it is not counted as placed.`,
  ),
  oddPlaced: warning(
    (f) =>
      `Designator ${f['designator']} looks like a test point or a hole but has part ${f['part']}. It counts as placed. If it is not, mark it not fitted.`,
  ),
  valueInPackages: warning(
    (f) =>
      `Value ${f['part']} is in package ${f['found']} here, in ${f['wanted']} in row ${f['first']}. They count as two parts. Give them part numbers.`,
  ),
  partInPackages: warning(
    (f) =>
      `Part ${f['part']} is in package ${f['found']} here, in ${f['wanted']} in row ${f['first']}. Check the part number.`,
  ),
  valueWithoutPackage: warning(
    (f) =>
      `Designator ${f['designator']} has value ${f['part']} but no package and no part number. Nobody can tell which part it is: fill them in.`,
  ),
  // In a file of board data.
  xmlBroken: error(
    (f) => `The XML is broken here: ${f['found']}. What follows is not read. Export the file again.`,
  ),
  noComponents: error(() => 'The file holds no components. Export it with components and their places.'),
  panelOfFile: warning(
    (f) =>
      `The file's panel holds ${f['found']} boards; one board is counted. Say how many boards a panel has.`,
  ),
  // In the bill.
  billRowWithoutDesignators: warning(
    (f) =>
      `Part ${f['part']} names no reference designators, so nothing is placed from this row. Fill them in if it is placed.`,
  ),
  billPartMissing: error(
    (f) => `The row with ${f['designator']} has no part number and no value. Fill one in.`,
  ),
  billPartByOther: warning(
    (f) => `The row has no part number, so its part is called ${f['part']}. Fill the part number in.`,
  ),
  secondTable: warning((f) => `Another table begins here (${f['headers']}). It is not read.`),
  boardsInFile: warning(
    (f) =>
      `The placement file holds ${f['found']} boards already, so ${f['wanted']} boards are not multiplied again. Check how many boards a panel has.`,
  ),
  quantityDiffers: warning(
    (f) =>
      `The quantity is ${f['wanted']}, but the row names ${f['found']} reference designators. Check which is right.`,
  ),
  quantityUnreadable: warning(
    (f) => `Quantity "${f['found']}" is not a number. The designators count. Correct it.`,
  ),
  quantityRatio: warning(
    (f) =>
      `In every row the quantity is ${f['ratio']} times the designators. The bill seems to count ${f['ratio']} boards.`,
  ),
  billDesignatorTwice: warning(
    (f) =>
      `Designator ${f['designator']} is in row ${f['first']} already, with the same part. It counts once.`,
  ),
  billDesignatorDiffers: error(
    (f) =>
      `Designator ${f['designator']} is in row ${f['first']} already, with part ${f['wanted']}; here it is ${f['found']}. A place takes one part: correct one of the rows.`,
  ),
  variantOpen: error(
    (f) =>
      `The variants of the bill differ here: ${f['wanted']}. It counts as fitted. Say which variant is built, or bring the bill of that variant.`,
  ),
  variantNotFound: error((f) => `The bill has no variant "${f['found']}". It has: ${f['wanted']}.`),
  partDescribedTwice: warning(
    (f) =>
      `Part ${f['part']} has value ${f['found']} here, ${f['wanted']} in row ${f['first']}. Check the part number.`,
  ),
  markInRemark: warning(
    (f) =>
      `By its remark "${f['found']}" nothing of this row is fitted. If that is about some designators only, name them there.`,
  ),
  blankNotFitted: warning(
    (f) =>
      `Column "${f['found']}" has a mark in some rows and is empty in ${f['count']}. Empty counts as not fitted.`,
  ),
  // Between the two.
  designatorNotInBill: error(
    (f) =>
      `Designator ${f['designator']} is in the placement file but in no row of the bill, so it is not counted. Add it to the bill, or mark it not fitted.`,
  ),
  designatorNotPlaced: warning(
    (f) =>
      `Designator ${f['designator']} (part ${f['part']}) is in the bill but not in the placement file, so it is not counted.`,
  ),
  partOfFileDiffers: warning(
    (f) =>
      `Designator ${f['designator']}: part ${f['found']} in the placement file, ${f['wanted']} in the bill (row ${f['first']}). The bill counts. Check which is right.`,
  ),
  valueOfFileDiffers: warning(
    (f) =>
      `Designator ${f['designator']}: value ${f['found']} in the placement file, ${f['wanted']} in the bill (row ${f['first']}). The bill counts. Check which is right.`,
  ),
  sideOfFileDiffers: warning(
    (f) =>
      `Designator ${f['designator']} is on the ${f['found']} in the placement file, the bill says ${f['wanted']}. The placement file counts.`,
  ),
  // Between a sheet that names designators and the placement file.
  sheetDesignatorNotPlaced: warning(
    (f) => `Designator ${f['designator']} is in this row but not in the placement file. Check it in both.`,
  ),
  designatorWithoutSlot: error(
    (f) =>
      `Designator ${f['designator']} (placement file, row ${f['first']}, part ${f['part']}) is in no row of the sheet. Add it to the row of its slot, or mark it not fitted.`,
  ),
  sheetPartDiffers: warning(
    (f) =>
      `Designator ${f['designator']}: part ${f['found']} in this row, ${f['wanted']} in the placement file or the bill. Check which is right.`,
  ),
  sheetDesignatorTwice: warning(
    (f) => `Designator ${f['designator']} is in row ${f['first']} already. It counts there.`,
  ),
} as const satisfies Readonly<Record<string, Kind>>;
