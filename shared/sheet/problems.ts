// What can be wrong with a setup sheet or a placement file, how bad is it, and how is it said?
// Method: a closed table of codes; each code has one severity and one sentence made from facts, so that the page can word it in
// another language from the same code and facts. Errors keep a sheet out, warnings do not.

import { error, type Facts, type Kind, type SheetSeverity, warning } from './problem-kind.ts';
import { billKinds } from './problems-bill.ts';
import { listKinds } from './problems-list.ts';

const kinds = {
  // The text itself.
  encodingGuessed: warning(
    () =>
      'The file is not UTF-8, so it was read as Windows-1252. Check letters with accents, or save it as UTF-8.',
  ),
  quoteBroken: error(
    (f) =>
      `A quotation mark opened in row ${f['row']} is not closed. What follows may be in the wrong cell. Correct that row.`,
  ),
  rowTooLong: error(
    (f) =>
      `The row has ${f['found']} cells, the header ${f['wanted']}. A cell seems to hold the separator: put it in quotation marks.`,
  ),
  rowUnreadable: error(
    (f) =>
      `The row has ${f['found']} cells, the header ${f['wanted']}, and they do not line up. Correct the row.`,
  ),
  noRows: error(() => 'No row under the header. Export the sheet again with its rows.'),
  moreProblems: warning(
    (f) => `${f['count']} more problems are not listed. Correct these, then read the sheet again.`,
  ),
  moreErrors: error(
    (f) =>
      `${f['count']} more problems are not listed, some of them errors. Correct these, then read the sheet again.`,
  ),
  // Columns.
  columnMissing: error(
    (f) => `No column for ${f['wanted']} found among: ${f['headers']}. Choose the column by hand.`,
  ),
  columnAbsent: warning(
    (f) =>
      `No column for ${f['wanted']} found among: ${f['headers']}. Choose the column by hand, or go on without it.`,
  ),
  columnNotFound: error(
    (f) =>
      `This sheet has no column "${f['wanted']}" for ${f['field']}. It has: ${f['headers']}. Choose the column again.`,
  ),
  columnUnknown: warning(
    (f) => `Column "${f['found']}" is not used. If the setup needs it, choose what it holds by hand.`,
  ),
  columnTwice: warning(
    (f) =>
      `Column "${f['found']}" looks like ${f['field']} too; "${f['used']}" is used. If it should be the other, choose it by hand.`,
  ),
  usagePerBoard: warning(
    (f) =>
      `Column "${f['found']}" seems to count per board and is taken as per panel. If a panel holds several boards, multiply it.`,
  ),
  // Cells.
  slotMissing: error((f) => `The slot is empty, but the row names part ${f['part']}. Fill in the slot.`),
  textTooLong: error(
    (f) => `The ${f['field']} "${f['found']}..." is longer than ${f['most']} characters. Shorten it.`,
  ),
  textCut: warning(
    (f) => `The text is longer than ${f['most']} characters. The rest is left out: shorten it.`,
  ),
  slotUnclear: warning(
    (f) =>
      `Slot "${f['found']}" is not written like M1-F-014, so its neighbours cannot be checked. It is taken as written.`,
  ),
  slotNumberUnreadable: error(
    (f) => `Slot number "${f['found']}" is not a whole number from 1 up. Correct it.`,
  ),
  partMissing: error((f) => `Slot ${f['slot']} has no part number, but other cells are filled. Fill it in.`),
  usageUnreadable: error(
    (f) => `Placements per panel "${f['found']}" is not a whole number from 0 up. Correct it.`,
  ),
  usageMissing: warning(
    () =>
      'Placements per panel is empty, so nobody can tell when this slot runs out. Fill it in, or add the placement file.',
  ),
  usageZero: warning(
    () => 'Placements per panel is 0: the slot is loaded but not used. If so, mark the row not fitted.',
  ),
  usageFromDesignators: warning(
    (f) =>
      `Placements per panel is empty, so the ${f['count']} reference designators count as ${f['count']}. Check that they cover the whole panel.`,
  ),
  designatorsDisagree: warning(
    (f) =>
      `${f['found']} reference designators, but ${f['wanted']} placements per panel. Check which is right.`,
  ),
  widthUnreadable: error((f) => `Tape width "${f['found']}" is not a number of mm. Write 8 or 8 mm.`),
  widthUnknown: error(
    (f) => `${f['found']} mm is not a tape width of EIA-481 (${f['wanted']} mm). Correct it.`,
  ),
  widthMissing: warning(() => 'No tape width, so nobody can check that the feeder fits. Fill it in.'),
  notTape: warning(
    (f) => `"${f['found']}" is no tape, so this slot gets no tape lengths and no splice times.`,
  ),
  pitchUnreadable: error((f) => `Pitch "${f['found']}" is not a number of mm above 0. Write 4 or 4 mm.`),
  pitchUnusual: warning(
    (f) =>
      `EIA-481 lists no pitch of ${f['found']} mm for ${f['width']} mm tape, only ${f['wanted']} mm. Check it; a few tapes differ.`,
  ),
  pitchMissing: warning(() => 'No pitch, so a length of tape cannot be turned into parts. Fill it in.'),
  positionsUnreadable: error(
    (f) => `Positions taken "${f['found']}" is not a whole number from 1 to 60. Correct it.`,
  ),
  pinsUnreadable: warning(
    (f) =>
      `The number of pins "${f['found']}" is not a whole number of 1 or more; it is left out. Correct it.`,
  ),
  bodySizeUnreadable: warning(
    (f) =>
      `The body size "${f['found']}" is not a length and a width in mm; it is left out. Write it as 17 x 17.`,
  ),
  thicknessUnreadable: warning(
    (f) => `Body thickness "${f['found']}" is not a number of mm above 0, so it is left out. Correct it.`,
  ),
  pocketUnreadable: warning(
    (f) => `The pocket depth "${f['found']}" is not a number of mm above 0; it is left out. Correct it.`,
  ),
  mslUnknown: warning(
    (f) => `"${f['found']}" is no moisture level (1, 2, 2a, 3, 4, 5, 5a, 6), so it is left out. Correct it.`,
  ),
  sharingUnknown: error(
    (f) =>
      `"${f['found']}" does not say how the slots share this part. Write "split" if each places its own share, "in turn" if one feeds until it is empty.`,
  ),
  turnUsageDiffers: error(
    (f) =>
      `Part ${f['part']} is used in turn: the slot that feeds places all ${f['wanted']}. This row says ${f['found']}. Write the same figure in each row.`,
  ),
  sideUnknown: warning(
    (f) => `"${f['found']}" is neither top nor bottom, so the side is left out. Correct it.`,
  ),
  flagUnreadable: warning(
    (f) => `"${f['found']}" is neither yes nor no and counts as ${f['taken']}. Correct it.`,
  ),
  alternateIsPart: warning((f) => `Part ${f['part']} is its own alternate here. That is left out.`),
  // What does not add up.
  slotTwice: error(
    (f) =>
      `Slot ${f['slot']} is in row ${f['first']} already, with part ${f['part']}. A slot takes one part: correct one of the rows.`,
  ),
  noRoom: error(
    (f) =>
      `The feeder on slot ${f['slot']} takes ${f['wanted']} positions. Slot ${f['next']} (row ${f['nextRow']}) is only ${f['found']} further. Move one of them.`,
  ),
  littleRoom: warning(
    (f) =>
      `A ${f['width']} mm feeder on slot ${f['slot']} usually takes ${f['wanted']} positions. Slot ${f['next']} (row ${f['nextRow']}) is only ${f['found']} further. Check that it fits, or fill in the positions taken.`,
  ),
  noApprovedReels: warning(
    (f) =>
      `Part ${f['part']} has no approved supplier part, so only labels with your own part number pass. Fill it in.`,
  ),
  partDiffers: warning(
    (f) =>
      `Part ${f['part']}: ${f['field']} is ${f['found']} here, ${f['wanted']} in row ${f['first']}. Check which is right.`,
  ),
  // Against the placement file.
  usageDisagrees: warning(
    (f) =>
      `Part ${f['part']}: ${f['found']} placements per panel in the sheet, ${f['wanted']} in the placement file. Check which is right.`,
  ),
  usageRatio: warning(
    (f) =>
      `The sheet has ${f['ratio']} times the placements of the placement file for every part. The file seems to hold one board of ${f['ratio']}: enter how many boards a panel has.`,
  ),
  usageSplitUnknown: warning(
    (f) =>
      `Part ${f['part']}: ${f['wanted']} placements for ${f['found']} slots, and the placement file does not say how many each. Fill in placements per panel.`,
  ),
  partNotPlaced: warning(
    (f) => `Part ${f['part']} has a slot but is not in the placement file. Check the part number in both.`,
  ),
  partWithoutSlot: error(
    (f) =>
      `Part ${f['part']} is placed ${f['found']} times (placement file, from row ${f['first']}) but has no slot. Give it a slot, or mark it not fitted.`,
  ),
  ...billKinds,
  ...listKinds,
  // In the placement file.
  placementPartMissing: warning(
    (f) => `Designator ${f['designator']} has no part number, so it is left out. Fill it in.`,
  ),
  placementTwice: warning(
    (f) => `Designator ${f['designator']} is at the same place as in row ${f['first']}. It counts once.`,
  ),
  placementSideMissing: warning(
    () => 'The placement file has no column for the side. All placements count as top.',
  ),
  placementSideUnknown: warning(
    (f) => `"${f['found']}" is neither top nor bottom, so the placement counts as top. Correct it.`,
  ),
} as const satisfies Readonly<Record<string, Kind>>;

/** The code of a problem. */
export type SheetProblemCode = keyof typeof kinds;

/** Every code, for tables of words and for tests. */
export const sheetProblemCodes = Object.keys(kinds) as readonly SheetProblemCode[]; // keys of a literal table

/** One problem of a sheet or a placement file. */
export interface SheetProblem {
  /** The row as a spreadsheet numbers it (1 = first), preamble and header included; null where it concerns no row. */
  readonly row: number | null;
  /** The header of the column as the sheet writes it; null where it concerns no column. */
  readonly column: string | null;
  readonly code: SheetProblemCode;
  readonly severity: SheetSeverity;
  /** What, where and what to do, in one or two sentences. */
  readonly message: string;
  /** The values that the message was made from. */
  readonly facts: Facts;
}

/** Where a problem is. */
export interface ProblemPlace {
  readonly row: number | null;
  readonly column?: string | null;
}

const mostFactCharacters = 80;

/** A cell may hold a whole file where quotation marks are broken; a message does not. */
function shorten(text: string): string {
  return text.length <= mostFactCharacters ? text : `${text.slice(0, mostFactCharacters - 3)}...`;
}

/** Makes a problem from its place, code and facts; long texts among the facts are shortened. */
export function sheetProblem(code: SheetProblemCode, place: ProblemPlace, facts: Facts = {}): SheetProblem {
  const kind: Kind = kinds[code];
  const short: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(facts)) {
    short[name] = typeof value === 'string' && !longFacts.includes(name) ? shorten(value) : value;
  }
  return {
    row: place.row,
    column: place.column ?? null,
    code,
    severity: kind.severity,
    message: kind.say(short),
    facts: short,
  };
}

/** Lists of what there is are shortened where they are made. */
const longFacts = ['headers', 'wanted'];

/** Whether any problem keeps the sheet out. */
export function hasSheetErrors(problems: readonly SheetProblem[]): boolean {
  return problems.some((problem) => problem.severity === 'error');
}

/** Takes problems in as they are found. */
export interface ProblemSink {
  readonly add: (code: SheetProblemCode, place: ProblemPlace, facts?: Facts) => void;
  /** Takes over problems that were found elsewhere. */
  readonly addAll: (problems: readonly SheetProblem[]) => void;
  /** All problems kept, by row (those of no row last), and at the end how many were not kept. */
  readonly list: () => readonly SheetProblem[];
}

/**
 * Makes a sink that keeps the first `most` problems and counts the rest, so that a sheet of a million bad rows costs no more than one of a
 * thousand. Where errors are among those not kept, the last line of the list is an error too.
 */
export function problemSink(most: number): ProblemSink {
  const kept: SheetProblem[] = [];
  let hidden = 0;
  let hidesErrors = false;
  const isFull = (severity: SheetSeverity) => {
    if (kept.length < most) return false;
    hidden++;
    hidesErrors ||= severity === 'error';
    return true;
  };
  return {
    add: (code, place, facts) => {
      if (!isFull(kinds[code].severity)) kept.push(sheetProblem(code, place, facts));
    },
    addAll: (problems) => {
      for (const problem of problems) if (!isFull(problem.severity)) kept.push(problem);
    },
    list: () => {
      const sorted = kept.sort((a, b) => rowOf(a) - rowOf(b));
      const code = hidesErrors ? 'moreErrors' : 'moreProblems';
      return hidden === 0 ? sorted : [...sorted, sheetProblem(code, { row: null }, { count: hidden })];
    },
  };
}

function rowOf(problem: SheetProblem): number {
  return problem.row ?? Number.MAX_SAFE_INTEGER;
}
