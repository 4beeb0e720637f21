// The rows of the company's tables: one file for all plants, the same columns and numbers whatever language a plant speaks.

import { feedersOf, linesEver } from '../../shared/floor/lanes.ts';
import { materialNow } from '../../shared/floor/made-of.ts';
import { ownIdOf } from '../../shared/floor/reel-id.ts';
import type { Reel } from '../../shared/floor/state.ts';
import { type ShiftReport, shiftReport, type TimeSpan } from '../../shared/shift/report.ts';
import { type TracedPlace, tracePlaces } from '../../shared/trace/ask.ts';
import { reelsCarrying } from '../../shared/trace/material.ts';
import { madeOfCell, placeCells } from '../../shared/trace/place-cells.ts';
import type { TraceQuestion } from '../../shared/trace/question.ts';
import type { PlantLog } from './company.ts';

/** A row, in the order of its table's columns. */
export type Row = readonly (string | number | null)[];

/** How each plant's log stands. */
export const plantColumns = [
  'plant',
  'fingerprint',
  'listSigned',
  'known',
  'entries',
  'proven',
  'claimed',
  'claimedWhy',
  'leftOut',
  'from',
  'to',
  'holds',
  'faults',
] as const;

/** The row of a plant. */
export function plantRow(log: PlantLog): Row {
  const why = new Map<string, number>();
  for (const { why: reason, entries } of log.claims) why.set(reason, (why.get(reason) ?? 0) + entries);
  return [
    log.name,
    log.fingerprint,
    log.listAt,
    log.isKnown === null ? 'not asked' : log.isKnown ? 'yes' : 'no',
    log.entries,
    log.proven,
    log.entries - log.proven,
    [...why].map(([reason, count]) => `${reason} ${count}`).join(', '),
    log.leftOut ?? 'not told',
    log.from,
    log.to,
    log.faults.length === 0 ? 'yes' : 'no',
    log.faults.join('; '),
  ];
}

/** Where material went: `panels` for those that carry it, `reel` for each reel that the plant knows and where it was last. */
export const whereColumns = [
  'plant',
  'fingerprint',
  'what',
  'standing',
  'asOf',
  'line',
  'run',
  'product',
  'slot',
  'place',
  'reel',
  'part',
  'supplierPart',
  'lot',
  'dateCode',
  'sureFirst',
  'sureLast',
  'possibleFirst',
  'possibleLast',
  'serials',
  'guessed',
  'madeOf',
  'goesOn',
  'left',
  'at',
  'who',
  'entry',
] as const;

type WhereColumn = (typeof whereColumns)[number];

/** The rows of one plant: its panels, then its reels. */
export function whereRows(log: PlantLog, question: TraceQuestion): readonly Row[] {
  const panels = tracePlaces(log.index, question).map((place) =>
    whereColumns.map((column) => cellOfPanels(log, place, column)),
  );
  const reels = reelsCarrying(log.index.state, question).map((reel) => {
    const cells = cellsOfReel(log, reel);
    return whereColumns.map((column) => cells[column] ?? null);
  });
  return [...panels, ...reels];
}

function cellOfPanels(log: PlantLog, place: TracedPlace, column: WhereColumn): Row[number] {
  switch (column) {
    case 'plant':
      return log.name;
    case 'fingerprint':
      return log.fingerprint;
    case 'what':
      return 'panels';
    case 'standing':
      return log.standingOf(place.entry);
    case 'asOf':
      return log.endsAt;
    case 'place':
    case 'left':
      return null;
    default:
      return placeCells[column](place);
  }
}

/** Where a reel was last; of panels it tells nothing. */
function cellsOfReel(log: PlantLog, reel: Reel): Partial<Record<WhereColumn, Row[number]>> {
  const { at, place, part, supplierPart, lot, dateCode, count } = reel;
  return {
    plant: log.name,
    fingerprint: log.fingerprint,
    what: 'reel',
    standing: log.standingOf(null),
    asOf: log.endsAt,
    line: at?.line ?? null,
    slot: at?.slot ?? null,
    place: at === null ? (place ?? null) : null,
    reel: ownIdOf(reel.reel),
    part,
    supplierPart,
    lot,
    dateCode,
    madeOf: madeOfCell(materialNow(log.index.state, reel.reel)?.of),
    left: count,
  };
}

/** The shift figures of each line between two moments. */
export const shiftColumns = [
  'plant',
  'fingerprint',
  'line',
  'lineName',
  'standing',
  'from',
  'to',
  'accepted',
  'refused',
  'held',
  'splices',
  'walks',
  'stops',
  'stopSeconds',
  'dryStops',
  'changeovers',
  'picks',
  'lostParts',
  'lostPartsSd',
] as const;

/** The rows of one plant, a line each, also of a lane that was taken away since, where it built or anything else was told of it; the span is cut where the export ends, and none are given of one that begins later. */
export function shiftRows(log: PlantLog, asked: TimeSpan): readonly Row[] {
  const { state } = log.index;
  const span = { ...asked, toMs: Math.min(asked.toMs, endOf(log)) };
  if (span.toMs <= span.fromMs) return [];
  return linesEver(state).flatMap(({ line, name, hasBuilt }): readonly Row[] => {
    const report = shiftReport(state, log.floorEntries, { ...span, line });
    if (hasBuilt === false && saysNothing(report)) return [];
    const { verdicts, stops, parts } = report;
    // What the shared feeders lost is the same of every lane: told of each, a sum over the rows would have it twice.
    const hasFeeders = feedersOf(line) === line;
    const sum = (of: (part: (typeof parts)[number]) => number) =>
      hasFeeders ? parts.reduce((all, part) => all + of(part), 0) : null;
    const [lost, variance] = [sum((part) => part.lost), sum(({ sd }) => sd ** 2)];
    const stopMs = stops.reduce((all, { fromMs, toMs }) => all + toMs - fromMs, 0);
    const row: Row = [
      log.name,
      log.fingerprint,
      line,
      name,
      log.standing,
      new Date(span.fromMs).toISOString(),
      new Date(span.toMs).toISOString(),
      verdicts.accepted,
      verdicts.refused,
      verdicts.held,
      report.splices,
      report.walks,
      stops.length,
      Math.round(stopMs / 1000),
      report.dry.length,
      report.changes.length,
      sum(({ picks }) => picks),
      lost === null ? null : Math.round(lost),
      variance === null ? null : Math.round(Math.sqrt(variance)),
    ];
    return [row];
  });
}

/** True where nothing happened on a line. What its shared feeders lost is told of the line that has them. */
function saysNothing({ verdicts, stops, splices, changes }: ShiftReport): boolean {
  const { accepted, refused, held } = verdicts;
  return accepted + refused + held + stops.length + splices + changes.length === 0;
}

function endOf({ endsAt }: PlantLog): number {
  return endsAt === null ? Number.POSITIVE_INFINITY : Date.parse(endsAt);
}
