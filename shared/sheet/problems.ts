// What can be wrong with a setup sheet or a placement file, how bad is it, and how is it said?
// Method: a closed table of codes; each code has one severity and one sentence made from facts, so that the page can word it in
// another language from the same code and facts. Errors keep a sheet out, warnings do not.

/** How bad a problem is: an error keeps the sheet out, a warning does not. */
export const sheetSeverities = ['error', 'warning'] as const;

/** One of the two severities. */
export type SheetSeverity = (typeof sheetSeverities)[number];

type Facts = Readonly<Record<string, string | number>>;

interface Kind {
  readonly severity: SheetSeverity;
  readonly say: (facts: Facts) => string;
}

function error(say: (facts: Facts) => string): Kind {
  return { severity: 'error', say };
}

function warning(say: (facts: Facts) => string): Kind {
  return { severity: 'warning', say };
}

const kinds = {
  // The text itself.
  encodingGuessed: warning(
    () =>
      'The file is not UTF-8; it was read as Windows-1252. Check letters with accents, or save it as UTF-8.',
  ),
  quoteBroken: error(
    (f) =>
      `A quotation mark that opens in row ${f['row']} is not closed as it should be; everything after it may be in the wrong cell. Correct the quotation marks in that row.`,
  ),
  rowTooLong: error(
    (f) =>
      `The row has ${f['found']} cells, the header has ${f['wanted']}; a cell probably holds the separator without quotation marks. Quote that cell.`,
  ),
  rowUnreadable: error(
    (f) =>
      `The row has ${f['found']} cells where the header has ${f['wanted']}, and its columns do not line up with the header. Correct the row.`,
  ),
  noRows: error(() => 'There is no row under the header. Export the sheet again with its rows.'),
  moreProblems: warning(
    (f) => `${f['count']} more problems are not listed. Correct those listed and read the sheet again.`,
  ),
  moreErrors: error(
    (f) =>
      `${f['count']} more problems, errors among them, are not listed. Correct those listed and read the sheet again.`,
  ),
  // Columns.
  columnMissing: error(
    (f) =>
      `No column for ${f['wanted']} was found among: ${f['headers']}. Say by hand which column holds it.`,
  ),
  columnAbsent: warning(
    (f) =>
      `No column for ${f['wanted']} was found among: ${f['headers']}. Say by hand which column holds it, or go on without.`,
  ),
  columnNotFound: error(
    (f) =>
      `The column map names "${f['wanted']}" for ${f['field']}, which is not a header of this sheet. Its headers are: ${f['headers']}. Correct the map.`,
  ),
  columnUnknown: warning(
    (f) =>
      `The column "${f['found']}" is not used. Say by hand what it holds if the setup needs it; otherwise nothing is to be done.`,
  ),
  columnTwice: warning(
    (f) =>
      `The column "${f['found']}" also looks like ${f['field']}; the column "${f['used']}" is used. Say by hand if the other is meant.`,
  ),
  usagePerBoard: warning(
    (f) =>
      `The column "${f['found']}" seems to count per board; it is taken as per panel. Where a panel holds several boards, multiply it.`,
  ),
  // Cells.
  slotMissing: error((f) => `The slot is empty although the row names part ${f['part']}. Fill it in.`),
  textTooLong: error(
    (f) => `The ${f['field']} "${f['found']}..." is longer than ${f['most']} characters. Shorten it.`,
  ),
  textCut: warning(
    (f) => `The text is longer than ${f['most']} characters; the rest is left out. Shorten it.`,
  ),
  slotUnclear: warning(
    (f) =>
      `The slot "${f['found']}" is not of the form machine-bank-number, such as M1-F-014; its neighbours cannot be checked. It is taken as written.`,
  ),
  slotNumberUnreadable: error(
    (f) => `The slot number "${f['found']}" is not a whole number of 1 or more. Correct it.`,
  ),
  partMissing: error(
    (f) => `The part is empty although slot ${f['slot']} has other entries. Fill in the part number.`,
  ),
  usageUnreadable: error(
    (f) => `Placements per panel "${f['found']}" is not a whole number of 0 or more. Correct it.`,
  ),
  usageMissing: warning(
    () =>
      'Placements per panel is empty, so no run-out can be forecast for this slot. Fill it in, or add the placement file.',
  ),
  usageZero: warning(
    () =>
      'Placements per panel is 0: the slot is loaded but not used. Mark the row not fitted if that is meant.',
  ),
  usageFromDesignators: warning(
    (f) =>
      `Placements per panel is empty; the ${f['count']} reference designators are taken as ${f['count']} placements. Check that they stand for the whole panel.`,
  ),
  designatorsDisagree: warning(
    (f) =>
      `The row lists ${f['found']} reference designators but ${f['wanted']} placements per panel. Check which is right.`,
  ),
  widthUnreadable: error(
    (f) => `The tape width "${f['found']}" is not a number of mm. Write it as 8 or 8 mm.`,
  ),
  widthUnknown: error(
    (f) => `${f['found']} mm is not a tape width of EIA-481 (${f['wanted']} mm). Correct it.`,
  ),
  widthMissing: warning(
    () => 'The tape width is empty, so the room at the feeder bank cannot be checked. Fill it in.',
  ),
  notTape: warning(
    (f) => `"${f['found']}" is not a tape; tape lengths and splices are not forecast for this slot.`,
  ),
  pitchUnreadable: error(
    (f) => `The pitch "${f['found']}" is not a number of mm above 0. Write it as 4 or 4 mm.`,
  ),
  pitchUnusual: warning(
    (f) =>
      `A pitch of ${f['found']} mm is not listed by EIA-481 for ${f['width']} mm tape (${f['wanted']} mm). Check it; unusual pairs exist.`,
  ),
  pitchMissing: warning(() => 'The pitch is empty, so tape lengths cannot be turned into parts. Fill it in.'),
  positionsUnreadable: error(
    (f) => `The positions taken "${f['found']}" is not a whole number from 1 to 60. Correct it.`,
  ),
  thicknessUnreadable: warning(
    (f) => `The body thickness "${f['found']}" is not a number of mm above 0; it is left out. Correct it.`,
  ),
  pocketUnreadable: warning(
    (f) => `The pocket depth "${f['found']}" is not a number of mm above 0; it is left out. Correct it.`,
  ),
  mslUnknown: warning(
    (f) =>
      `"${f['found']}" is not a moisture sensitivity level (1, 2, 2a, 3, 4, 5, 5a, 6); it is left out. Correct it.`,
  ),
  sharingUnknown: error(
    (f) =>
      `"${f['found']}" does not say how the slots of this part share it. Write "split" where each takes its own placements, "in turn" where one feeds until it is empty.`,
  ),
  turnUsageDiffers: error(
    (f) =>
      `Part ${f['part']} is used in turn, so each of its slots takes all ${f['wanted']} placements while it feeds; this row says ${f['found']}. Write the same figure in each row.`,
  ),
  sideUnknown: warning((f) => `"${f['found']}" is neither top nor bottom; the side is left out. Correct it.`),
  flagUnreadable: warning(
    (f) => `"${f['found']}" is neither yes nor no; it is taken as ${f['taken']}. Correct it.`,
  ),
  alternateIsPart: warning((f) => `Part ${f['part']} is listed as its own alternate. The entry is left out.`),
  // What does not add up.
  slotTwice: error(
    (f) =>
      `Slot ${f['slot']} was already given in row ${f['first']} (part ${f['part']}). A slot takes one part: correct one of the rows.`,
  ),
  noRoom: error(
    (f) =>
      `The feeder of slot ${f['slot']} takes ${f['wanted']} positions, but slot ${f['next']} (row ${f['nextRow']}) is ${f['found']} on. Move one of them.`,
  ),
  littleRoom: warning(
    (f) =>
      `A feeder for ${f['width']} mm tape on slot ${f['slot']} usually takes ${f['wanted']} positions, but slot ${f['next']} (row ${f['nextRow']}) is ${f['found']} on. Check that it fits, or give the positions taken.`,
  ),
  noApprovedReels: warning(
    (f) =>
      `Part ${f['part']} has no approved supplier part; only labels with the site's own part number can be verified. Fill it in.`,
  ),
  partDiffers: warning(
    (f) =>
      `Part ${f['part']} has ${f['field']} ${f['found']} here but ${f['wanted']} in row ${f['first']}. Check which is right.`,
  ),
  // Against the placement file.
  usageDisagrees: warning(
    (f) =>
      `The sheet gives ${f['found']} placements per panel for part ${f['part']}, the placement file ${f['wanted']}. Check which is right.`,
  ),
  usageRatio: warning(
    (f) =>
      `Every part has ${f['ratio']} times as many placements in the sheet as in the placement file, as if the file held one board of a panel of ${f['ratio']}. Say how many boards a panel has.`,
  ),
  usageSplitUnknown: warning(
    (f) =>
      `Part ${f['part']} has ${f['wanted']} placements to share among ${f['found']} slots without an entry; the placement file does not say how. Fill in placements per panel.`,
  ),
  partNotPlaced: warning(
    (f) => `Part ${f['part']} is on a slot but is not in the placement file. Check the part number in both.`,
  ),
  partWithoutSlot: error(
    (f) =>
      `Part ${f['part']} has ${f['found']} placements in the placement file (first in its row ${f['first']}) but no slot in the sheet. Give it a slot or mark it not fitted.`,
  ),
  // In the placement file.
  placementPartMissing: warning(
    (f) => `Designator ${f['designator']} names no part; it is left out. Fill in the part number.`,
  ),
  placementTwice: warning(
    (f) =>
      `Designator ${f['designator']} stands at the same place as in row ${f['first']}; it is counted once.`,
  ),
  placementSideMissing: warning(
    () => 'The placement file has no column for the side; all placements are counted as top.',
  ),
  placementSideUnknown: warning(
    (f) => `"${f['found']}" is neither top nor bottom; the placement is counted as top. Correct it.`,
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
      const sorted = kept.sort((a, b) => rowOf(a) - rowOf(b) || 0);
      const code = hidesErrors ? 'moreErrors' : 'moreProblems';
      return hidden === 0 ? sorted : [...sorted, sheetProblem(code, { row: null }, { count: hidden })];
    },
  };
}

function rowOf(problem: SheetProblem): number {
  return problem.row ?? Number.MAX_SAFE_INTEGER;
}
