// What does one row of a placement file say: which part, on which side, where, and is it placed at all?

import type { Side } from '../floor/vocabulary.ts';
import { isBlankMark, parseFlag, parseSide } from './cells.ts';
import { isThroughHole, parseMeasure } from './column-look.ts';
import { placePair } from './columns-by-look.ts';
import { type OddThing, oddThing } from './designators.ts';
import type { PlacementField } from './fields.ts';
import { carriesNotFittedMark, isNotFittedMark, parseFitted, parseNotFitted } from './not-placed.ts';
import type { Placement } from './placements.ts';
import type { ProblemSink } from './problems.ts';

/** Why a row of a placement file is not placed. */
export const leftOutReasons = [
  'notFitted',
  'fiducial',
  'testPoint',
  'hole',
  'mark',
  'throughHole',
  'noPart',
  'doubled',
] as const;

/** One reason. */
export type LeftOutReason = (typeof leftOutReasons)[number];

/** One row with its columns by field. */
export interface PlacementRowReader {
  readonly row: number;
  readonly text: (field: PlacementField) => string;
  readonly header: (field: PlacementField) => string | null;
  /** Whether empty cells of the column "fitted" mean no. */
  readonly blankIsNo: boolean;
  /** The side of rows that name none. */
  readonly side: Side;
  /** mm in one unit of the file's coordinates; null = not known, coordinates stay as they are. */
  readonly unitMm: number | null;
}

/** mm in the unit that a text names ("mm", "mils", "Unit = inch"); null where it names none. */
export function unitOf(text: string): number | null {
  const unit =
    /(?:^|[^a-z])(mm|millimet(?:er|re)s?|mils?|thou|inch(?:es)?|in|um|µm|microns?)(?:[^a-z]|$)/i.exec(
      text,
    )?.[1];
  if (unit === undefined) return null;
  if (/^(?:mm|millim)/i.test(unit)) return 1;
  if (/^(?:mil|thou)/i.test(unit)) return 0.0254;
  return /^in/i.test(unit) ? 25.4 : 0.001;
}

function lengthOf(text: string, unitMm: number | null): number | null {
  const value = parseMeasure(text);
  if (value === null) return null;
  const own = /[a-zµ"]\s*$/i.test(text)
    ? unitOf(text.replace(/"$/, 'in').replace(/[\d.,+\s-]+/g, ' '))
    : null;
  const factor = own ?? unitMm;
  return factor === null || factor === 1 ? value : Math.round(value * factor * 1e6) / 1e6;
}

function sideOf(reader: PlacementRowReader, sink: ProblemSink | null): Side {
  const found = reader.text('side');
  const side = found === '' ? null : parseSide(found);
  if (side !== null) return side;
  const mirrored = reader.text('mirrored');
  if (found === '' && reader.header('mirrored') !== null)
    return parseFlag(mirrored) === true || /^m(?:irror(?:ed)?)?$/i.test(mirrored) ? 'bottom' : 'top';
  // Some programs write the angle of a mirrored part as M90 or MR90.
  if (found === '' && /^m[r]?-?\d/i.test(reader.text('rotation'))) return 'bottom';
  if (reader.header('side') !== null) {
    sink?.add('placementSideUnknown', { row: reader.row, column: reader.header('side') }, { found });
  }
  return reader.side;
}

function isNotFittedRow(reader: PlacementRowReader): boolean {
  const fitted = reader.text('fitted');
  if (parseFitted(fitted) === false || (fitted === '' && reader.blankIsNo)) return true;
  if (parseNotFitted(reader.text('notFitted')) === true) return true;
  if (isNotFittedMark(reader.text('part')) || isNotFittedMark(reader.text('mount'))) return true;
  return (['value', 'note', 'part'] as const).some((field) => carriesNotFittedMark(reader.text(field)));
}

function oddThingOf(reader: PlacementRowReader, part: string): OddThing | null {
  const texts = ['part', 'value', 'package', 'mount', 'device'] as const;
  const thing = oddThing(
    reader.text('designator'),
    texts.map((field) => reader.text(field)),
  );
  if (thing === null || thing === 'fiducial') return thing;
  // A test point or a nut with a part number of its own is bought and placed.
  return part !== '' && part === reader.text('part') ? null : thing;
}

const flags = [
  ['fitted', parseFitted, 'yes'],
  ['notFitted', parseNotFitted, 'no'],
] as const;

/** What a row says, and why it is not placed (null = it is). `needsPart`: whether a row without any name of a part can be placed. */
export function readPlacementRow(
  reader: PlacementRowReader,
  sink: ProblemSink,
  needsPart: boolean,
): { readonly placement: Placement; readonly reason: LeftOutReason | null } {
  const stated = reader.text('part');
  const hasPart = stated !== '' && !isBlankMark(stated);
  const value = reader.text('value');
  const device = reader.text('device');
  // A file without part numbers names its parts by value; a library's name serves only where there is nothing else.
  const named = hasPart ? stated : [value, device].find((text) => text !== '' && !isBlankMark(text));
  const pair = placePair(reader.text('place'));
  const placement: Placement = {
    row: reader.row,
    designator: reader.text('designator'),
    part: named ?? '',
    isNamedByValue: !hasPart,
    value: isBlankMark(value) ? '' : value,
    package: isBlankMark(reader.text('package')) ? '' : reader.text('package'),
    side: sideOf(reader, null),
    x: lengthOf(reader.text('x') || (pair?.[0] ?? ''), reader.unitMm),
    y: lengthOf(reader.text('y') || (pair?.[1] ?? ''), reader.unitMm),
    rotation: parseMeasure(reader.text('rotation').replace(/^m?r?/i, '')),
  };
  for (const [field, parse, taken] of flags) {
    const found = reader.text(field);
    if (found !== '' && !isBlankMark(found) && parse(found) === null)
      sink.add('flagUnreadable', { row: reader.row, column: reader.header(field) }, { found, taken });
  }
  if (isNotFittedRow(reader)) return { placement, reason: 'notFitted' };
  const thing = oddThingOf(reader, hasPart ? stated : '');
  if (thing !== null) return { placement, reason: thing };
  if (isThroughHole(reader.text('mount'))) {
    const facts = { designator: placement.designator, part: placement.part };
    sink.add('throughHole', { row: reader.row, column: reader.header('mount') }, facts);
    return { placement, reason: 'throughHole' };
  }
  if (placement.part === '' && needsPart) {
    const column = reader.header('part') ?? reader.header('value');
    const designator = placement.designator || '(none)';
    sink.add('placementPartMissing', { row: reader.row, column }, { designator });
    return { placement, reason: 'noPart' };
  }
  if (reader.header('side') !== null && parseSide(reader.text('side')) === null) sideOf(reader, sink);
  const odd = needsPart ? oddThing(placement.designator) : null;
  if (odd !== null && odd !== 'fiducial')
    sink.add(
      'oddPlaced',
      { row: reader.row, column: reader.header('part') },
      { designator: placement.designator, part: placement.part },
    );
  return { placement, reason: null };
}
