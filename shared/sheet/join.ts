// Which part stands at which place, when a placement file and a bill of materials are laid over each other?
// Method: by reference designator, the bill naming the part and the placement file the side and the count. What only one of them names is a problem,
// except what is never placed (fiducials, test points, holes) or is marked as not fitted. Method refused: by value or part text, which takes
// two parts of one value for one.

import type { Side } from '../floor/vocabulary.ts';
import type { BillReading } from './bill.ts';
import type { BillLine } from './bill-row.ts';
import { designatorKey, oddThing } from './designators.ts';
import { checkPackages } from './placement-checks.ts';
import type { LeftOutReason } from './placement-row.ts';
import { type Placement, type PlacementReading, totalsOf } from './placements.ts';
import { type ProblemSink, problemSink, type SheetProblem } from './problems.ts';

/** One part with all its places. */
export interface JoinedPart {
  readonly part: string;
  /** Makers' numbers that the bill approves. */
  readonly supplierParts: readonly string[];
  /** Placements per panel. */
  readonly top: number;
  readonly bottom: number;
  /** In the order of the bill. */
  readonly designators: readonly string[];
}

/** Both files joined. */
export interface JoinedBill {
  /** In the order of the bill. */
  readonly parts: readonly JoinedPart[];
  /** Placements of one pass of the placement file, with the bill's parts. */
  readonly placements: readonly Placement[];
  /** Designators of either file that are not placed, in the order of the placement file, then of the bill. */
  readonly notPlaced: readonly string[];
  /** Problems of the join alone; those of reading each file stand with its reading. `file` says which of the two the row is in. */
  readonly problems: readonly (SheetProblem & { readonly file: 'placements' | 'bom' })[];
}

/** How the two are joined. */
export interface JoinOptions {
  /** Boards in one panel, where the placement file holds one board; default 1. */
  readonly boardsPerPanel?: number;
  readonly mostProblems?: number;
}

interface Join {
  readonly lineByKey: ReadonlyMap<string, BillLine>;
  /** Headers of the designators' columns. */
  readonly fileColumn: string | null;
  readonly billColumn: string | null;
  readonly inFile: ProblemSink;
  readonly inBill: ProblemSink;
  readonly notPlaced: Map<string, string>;
  readonly seen: Set<string>;
}

function linesByKey(bill: BillReading): ReadonlyMap<string, BillLine> {
  const lineByKey = new Map<string, BillLine>();
  for (const line of bill.lines) {
    for (const designator of line.designators) {
      const key = designatorKey(designator);
      if (lineByKey.get(key)?.isFitted !== true) lineByKey.set(key, line);
    }
  }
  return lineByKey;
}

/** What the line names is bought under a number of its own, so that even a test point is a part. */
const isNumbered = (line: BillLine) => line.namedBy !== 'value';

/** The thing that a designator stands for by letters and by the line's words, where the line gives it no number. */
function oddLine(designator: string, line: BillLine | undefined) {
  const texts = line === undefined ? [] : [line.part, line.value, line.package];
  const thing = oddThing(designator, texts);
  return thing !== null && (line === undefined || thing === 'fiducial' || !isNumbered(line)) ? thing : null;
}

/** The bill's line for one row of the placement file, where the row is placed; else it is listed, with a problem where that is a doubt. */
function lineFor(placement: Placement, reason: LeftOutReason | null, join: Join): BillLine | null {
  const { designator, row } = placement;
  const key = designatorKey(designator);
  const line = join.lineByKey.get(key);
  join.seen.add(key);
  const leave = () => {
    if (!join.notPlaced.has(key) && designator !== '') join.notPlaced.set(key, designator);
    return null;
  };
  if (reason === 'notFitted' || reason === 'throughHole' || reason === 'fiducial' || reason === 'noPart')
    return leave();
  if (line !== undefined && !line.isFitted) return leave();
  if (reason !== null && (line === undefined || !isNumbered(line))) return leave();
  if (oddLine(designator, line) !== null) return leave();
  if (line === undefined) {
    // A bill that could not be read says so itself.
    if (join.lineByKey.size > 0)
      join.inFile.add(
        'designatorNotInBill',
        { row, column: join.fileColumn },
        { designator: designator || '(none)' },
      );
    return leave();
  }
  if (line.part === '') return leave();
  if (oddThing(designator) !== null)
    join.inBill.add('oddPlaced', { row: line.row, column: join.billColumn }, { designator, part: line.part });
  compare(placement, line, join);
  return line;
}

function compare(placement: Placement, line: BillLine, join: Join): void {
  const { designator, row, side } = placement;
  const facts = { designator, first: line.row };
  const isKnown = [line.part, line.value, ...line.supplierParts].some(
    (text) => text.toUpperCase() === placement.part.toUpperCase(),
  );
  if (!placement.isNamedByValue && !isKnown && line.namedBy === 'part')
    join.inFile.add(
      'partOfFileDiffers',
      { row, column: join.fileColumn },
      { ...facts, found: placement.part, wanted: line.part },
    );
  const [here, there] = [quantityOfValue(placement.value), quantityOfValue(line.value)];
  if (here !== null && there !== null && Math.abs(here - there) > there * 0.001)
    join.inFile.add(
      'valueOfFileDiffers',
      { row, column: join.fileColumn },
      { ...facts, found: placement.value, wanted: line.value },
    );
  if (line.side !== null && line.side !== side)
    join.inFile.add(
      'sideOfFileDiffers',
      { row, column: join.fileColumn },
      { ...facts, found: side, wanted: line.side },
    );
}

const factors: Readonly<Record<string, number>> = {
  p: 1e-12,
  n: 1e-9,
  u: 1e-6,
  µ: 1e-6,
  μ: 1e-6,
  m: 1e-3,
  k: 1e3,
  K: 1e3,
  M: 1e6,
  G: 1e9,
  R: 1,
  '': 1,
};

/** The number of a component value at a text's start ("4k7", "100 nF 16V", "0.1uF", "10R"); null where it is none. */
function quantityOfValue(text: string): number | null {
  const inner = /^(\d+)([RkKMpnuµμm])(\d+)(?![\w.])/.exec(text);
  if (inner?.[2] !== undefined) return Number(`${inner[1]}.${inner[3]}`) * (factors[inner[2]] ?? 1);
  const plain = /^(\d+(?:[.,]\d+)?)\s*([pnuµμmkKMGR]?)(?:F|H|Ω|Ohms?|ohms?)?(?![\w.])/.exec(text);
  if (plain?.[1] === undefined) return null;
  const value = Number(plain[1].replace(',', '.')) * (factors[plain[2] ?? ''] ?? 1);
  // "100" alone may be 100 pF or 100 ohms: it says no quantity.
  return plain[2] === '' && /^\d+(?:[.,]\d+)?$/.test(text.trim()) ? null : value;
}

/** Lays a placement file over a bill. Never throws. Linear in the rows of both. */
export function joinBill(
  placements: PlacementReading,
  bill: BillReading,
  options: JoinOptions = {},
): JoinedBill {
  const most = options.mostProblems ?? 1000;
  const join: Join = {
    lineByKey: linesByKey(bill),
    fileColumn: placements.designatorHeader,
    billColumn: bill.designatorHeader,
    inFile: problemSink(most),
    inBill: problemSink(most),
    notPlaced: new Map(),
    seen: new Set(),
  };
  const placed: Placement[] = [];
  const reasonOf = new Map(placements.leftOut.map(({ placement, reason }) => [placement, reason]));
  const rows = [...placements.placements, ...reasonOf.keys()].sort((a, b) => a.row - b.row);
  const lines: BillLine[] = [];
  for (const placement of rows) {
    const reason = reasonOf.get(placement) ?? null;
    if (reason === 'doubled') continue;
    const line = lineFor(placement, reason, join);
    if (line === null) continue;
    const named: Placement = {
      ...placement,
      part: line.part,
      isNamedByValue: line.namedBy === 'value',
      package: line.package || placement.package,
    };
    lines.push(line);
    placed.push(named);
  }
  tellUnplaced(bill, join);
  // Problems of a part's packages are told in the bill's row.
  const inBill = placed.map((placement, at) => ({ ...placement, row: lines[at]?.row ?? placement.row }));
  const checked = checkPackages(inBill, bill.packageHeader, join.inBill);
  const named = placed.map((placement, at) => ({ ...placement, part: checked[at]?.part ?? placement.part }));
  const boards = boardsOf(placements, options.boardsPerPanel ?? 1, join.inFile);
  return {
    parts: partsOf(named, lines, boards),
    placements: named,
    notPlaced: [...join.notPlaced.values()],
    problems: [
      ...join.inFile.list().map((problem) => ({ ...problem, file: 'placements' as const })),
      ...join.inBill.list().map((problem) => ({ ...problem, file: 'bom' as const })),
    ],
  };
}

/** How often the file's placements count: not again where the file holds a panel already. */
function boardsOf(placements: PlacementReading, wanted: number, sink: ProblemSink): number {
  if (placements.boards === 1 || wanted === 1) return wanted;
  if (placements.boards !== wanted)
    sink.add('boardsInFile', { row: null }, { found: placements.boards, wanted });
  return 1;
}

/** Designators of the bill that the placement file does not name. */
function tellUnplaced(bill: BillReading, join: Join): void {
  for (const line of bill.lines) {
    for (const designator of line.designators) {
      const key = designatorKey(designator);
      if (join.seen.has(key)) continue;
      join.seen.add(key);
      join.notPlaced.set(key, designator);
      if (!line.isFitted || oddLine(designator, line) !== null) continue;
      join.inBill.add(
        'designatorNotPlaced',
        { row: line.row, column: join.billColumn },
        { designator, part: line.part },
      );
    }
  }
}

function partsOf(
  placements: readonly Placement[],
  lines: readonly BillLine[],
  boards: number,
): readonly JoinedPart[] {
  interface Growing {
    readonly part: string;
    readonly supplierParts: Set<string>;
    readonly designators: Map<string, string>;
    readonly row: number;
    readonly counts: Record<Side, number>;
  }
  const byKey = new Map<string, Growing>();
  for (const [at, placement] of placements.entries()) {
    const key = placement.part.toUpperCase();
    const line = lines[at];
    const part: Growing = byKey.get(key) ?? {
      part: placement.part,
      supplierParts: new Set(),
      designators: new Map(),
      row: line?.row ?? placement.row,
      counts: { top: 0, bottom: 0 },
    };
    byKey.set(key, part);
    part.counts[placement.side]++;
    part.designators.set(designatorKey(placement.designator), placement.designator);
    for (const entry of line?.supplierParts ?? []) part.supplierParts.add(entry);
  }
  const orderByKey = new Map<string, number>();
  for (const line of new Set(lines)) {
    for (const designator of line?.designators ?? [])
      orderByKey.set(designatorKey(designator), orderByKey.size);
  }
  const place = ([key]: readonly [string, string]) => orderByKey.get(key) ?? 0;
  return [...byKey.values()]
    .sort((a, b) => a.row - b.row)
    .map(({ part, supplierParts, designators, counts }) => ({
      part,
      supplierParts: [...supplierParts],
      top: counts.top * boards,
      bottom: counts.bottom * boards,
      designators: [...designators].sort((a, b) => place(a) - place(b)).map(([, name]) => name),
    }));
}

/** The placement file as the bill names its parts, for a sheet to be compared with. */
export function namedPlacements(placements: PlacementReading, joined: JoinedBill): PlacementReading {
  return { ...placements, placements: joined.placements, parts: totalsOf(joined.placements) };
}

/** Makers' numbers by part, in capitals, as the bill approves them; none without a bill. */
export function makersOf(joined: JoinedBill | null): ReadonlyMap<string, readonly string[]> {
  return new Map((joined?.parts ?? []).map(({ part, supplierParts }) => [part.toUpperCase(), supplierParts]));
}
