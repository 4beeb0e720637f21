// What does one row of a setup sheet want on its slot?
// Method: one small reader per field; each reports what it does not understand under the field's own header, and gives null then.

import {
  isBlankMark,
  isNotTape,
  packageKindOf,
  parseCount,
  parseFlag,
  parseLengthMm,
  parseList,
  parseSharing,
  parseSheetMsl,
  parseSide,
  parseTapePair,
} from './cells.ts';
import { parseDesignators } from './designators.ts';
import { type SheetField, sheetFieldNames } from './fields.ts';
import { cellText, type SheetCell } from './headers.ts';
import { isNotFittedMark } from './not-placed.ts';
import { parseBodySize } from './package-text.ts';
import type { ProblemSink, SheetProblemCode } from './problems.ts';
import type { joinSlotAddress, SheetSlot } from './slot.ts';
import { isTapeWidth, listedPitchesMm, tapeWidthsMm } from './tapes.ts';

const mostIdCharacters = 64;
const mostTextCharacters = 200;

/** Everything one row needs: where the columns are, and where problems go. */
export interface RowReader {
  readonly row: number;
  readonly cell: (field: SheetField) => SheetCell;
  readonly text: (field: SheetField) => string;
  readonly list: (field: SheetField) => readonly string[];
  readonly has: (field: SheetField) => boolean;
  readonly report: (
    code: SheetProblemCode,
    field: SheetField | null,
    facts?: Readonly<Record<string, string | number>>,
  ) => void;
}

function readUsage(reader: RowReader, designators: readonly string[], supplied: boolean): number | null {
  const found = reader.text('perPanel');
  if (found === '' || isBlankMark(found)) {
    if (supplied) return null;
    if (designators.length > 0) {
      reader.report('usageFromDesignators', 'designators', { count: designators.length });
      return designators.length;
    }
    if (reader.has('perPanel')) reader.report('usageMissing', 'perPanel');
    return null;
  }
  const count = parseCount(reader.cell('perPanel'));
  if (count === null || count < 0) {
    reader.report('usageUnreadable', 'perPanel', { found });
    return null;
  }
  if (count === 0) reader.report('usageZero', 'perPanel');
  else if (designators.length > 0 && designators.length !== count) {
    reader.report('designatorsDisagree', 'designators', { found: designators.length, wanted: count });
  }
  return count;
}

function readWidth(reader: RowReader): number | null {
  const found = reader.text('tapeWidth');
  if (found === '' || isBlankMark(found)) {
    if (reader.has('tapeWidth')) reader.report('widthMissing', 'tapeWidth');
    return null;
  }
  if (isNotTape(found)) {
    reader.report('notTape', 'tapeWidth', { found });
    return null;
  }
  const pair = reader.has('pitch') ? null : parseTapePair(reader.cell('tapeWidth'));
  const width = pair?.widthMm ?? parseLengthMm(reader.cell('tapeWidth'));
  if (width === null) reader.report('widthUnreadable', 'tapeWidth', { found });
  else if (isTapeWidth(width)) return width;
  else reader.report('widthUnknown', 'tapeWidth', { found: width, wanted: tapeWidthsMm.join(', ') });
  return null;
}

function readPitch(reader: RowReader, widthMm: number | null): number | null {
  const found = reader.text('pitch');
  const field = reader.has('pitch') ? 'pitch' : 'tapeWidth';
  const pitch = reader.has('pitch')
    ? parseLengthMm(reader.cell('pitch'))
    : (parseTapePair(reader.cell('tapeWidth'))?.pitchMm ?? null);
  if (reader.has('pitch') && (found === '' || isBlankMark(found))) {
    if (!isNotTape(reader.text('tapeWidth'))) reader.report('pitchMissing', 'pitch');
    return null;
  }
  if (pitch === null || pitch <= 0) {
    if (reader.has('pitch')) reader.report('pitchUnreadable', 'pitch', { found });
    return null;
  }
  if (widthMm !== null) {
    const wanted = listedPitchesMm(widthMm);
    if (!wanted.includes(pitch)) {
      reader.report('pitchUnusual', field, { found: pitch, width: widthMm, wanted: wanted.join(', ') });
    }
  }
  return pitch;
}

/** Reads an optional cell: null where it is empty, and where it is not understood, which is reported under `code`. */
function readOptional<T>(
  reader: RowReader,
  field: SheetField,
  options: { readonly parse: (text: string, cell: SheetCell) => T | null; readonly code: SheetProblemCode },
): T | null {
  const found = reader.text(field);
  if (found === '' || isBlankMark(found)) return null;
  const value = options.parse(found, reader.cell(field));
  if (value === null) reader.report(options.code, field, { found, taken: 'no' });
  return value;
}

function positiveLength(_: string, cell: SheetCell): number | null {
  const length = parseLengthMm(cell);
  return length !== null && length > 0 ? length : null;
}

function positionCount(_: string, cell: SheetCell): number | null {
  const count = parseCount(cell);
  return count !== null && count >= 1 && count <= 60 ? count : null;
}

function pinCount(_: string, cell: SheetCell): number | null {
  const count = parseCount(cell);
  return count !== null && count >= 1 && count <= 10_000 ? count : null;
}

function readAlternates(reader: RowReader, part: string): readonly string[] {
  const listed = reader.list('alternates');
  if (listed.includes(part)) reader.report('alternateIsPart', 'alternates', { part });
  return listed.filter((entry) => entry !== part);
}

/** Free text, as long as an entry of the log can keep; null where it is empty. */
function readText(reader: RowReader, field: SheetField): string | null {
  const text = reader.text(field);
  if (text === '' || isBlankMark(text)) return null;
  if (text.length <= mostTextCharacters) return text;
  reader.report('textCut', field, { most: mostTextCharacters });
  return text.slice(0, mostTextCharacters);
}

/** A part number or an address longer than an entry of the log can keep is cut off nowhere: it is an error. */
function checkLengths(reader: RowReader, slot: SheetSlot): void {
  const texts: readonly (readonly [SheetField, string])[] = [
    ['slot', slot.slot],
    ['part', slot.part],
    ['feederType', slot.feederType ?? ''],
    ...slot.alternates.map((entry) => ['alternates', entry] as const),
    ...slot.supplierParts.map((entry) => ['supplierParts', entry] as const),
  ];
  for (const [field, text] of texts) {
    if (text.length <= mostIdCharacters) continue;
    const facts = { field: sheetFieldNames[field], found: text.slice(0, 20), most: mostIdCharacters };
    reader.report('textTooLong', field, facts);
  }
}

/** Reads a row whose slot and part are filled in. `supplied`: a placement file gives usage. */
export function readSlot(
  reader: RowReader,
  where: ReturnType<typeof joinSlotAddress>,
  supplied: boolean,
): SheetSlot {
  const part = reader.text('part');
  const designators = parseDesignators(reader.text('designators'));
  const perPanel = readUsage(reader, designators, supplied);
  const tapeWidth = readWidth(reader);
  const slot: SheetSlot = {
    row: reader.row,
    slot: where.slot,
    address: where.address,
    part,
    perPanel,
    tapeWidth,
    pitch: readPitch(reader, tapeWidth),
    sharing: readOptional(reader, 'sharing', { parse: parseSharing, code: 'sharingUnknown' }),
    alternates: readAlternates(reader, part),
    supplierParts: reader.list('supplierParts'),
    description: readText(reader, 'description'),
    package: readText(reader, 'package'),
    pins: readOptional(reader, 'pins', { parse: pinCount, code: 'pinsUnreadable' }),
    bodySizeMm: readOptional(reader, 'bodySize', { parse: parseBodySize, code: 'bodySizeUnreadable' }),
    bodyThicknessMm: readOptional(reader, 'bodyThickness', {
      parse: positiveLength,
      code: 'thicknessUnreadable',
    }),
    msl: readOptional(reader, 'msl', { parse: parseSheetMsl, code: 'mslUnknown' }),
    polarity: readText(reader, 'polarity'),
    feederType: readText(reader, 'feederType'),
    drive: readText(reader, 'drive'),
    pocketMm: readOptional(reader, 'pocket', { parse: positiveLength, code: 'pocketUnreadable' }),
    ...comesInOf(reader),
    critical:
      readOptional(reader, 'critical', { parse: (_, cell) => parseFlag(cell), code: 'flagUnreadable' }) ??
      false,
    positions: readOptional(reader, 'positions', { parse: positionCount, code: 'positionsUnreadable' }),
    side: readOptional(reader, 'side', { parse: parseSide, code: 'sideUnknown' }),
    designators,
    note: readText(reader, 'note'),
  };
  checkLengths(reader, slot);
  return slot;
}

/** What the parts come in, where the cell of the tape's width names it. */
function comesInOf(reader: RowReader): Pick<SheetSlot, 'comesIn'> {
  const kind = packageKindOf(reader.text('tapeWidth'));
  return kind === null ? {} : { comesIn: kind };
}

/** Whether a row says of itself that it is not fitted: by a flag either way round, or by a mark in part, usage or note. */
export function isNotFitted(reader: RowReader): boolean {
  const fitted = reader.text('fitted');
  if (fitted !== '' && (parseFlag(reader.cell('fitted')) === false || isNotFittedMark(fitted))) return true;
  const notFitted = reader.text('notFitted');
  if (notFitted !== '' && (parseFlag(reader.cell('notFitted')) === true || isNotFittedMark(notFitted)))
    return true;
  return (['part', 'perPanel', 'description', 'note'] as const).some((field) =>
    isNotFittedMark(reader.text(field)),
  );
}

/** Makes the reader of one row. */
export function makeReader(
  row: readonly SheetCell[],
  rowNumber: number,
  context: {
    readonly indexesByField: ReadonlyMap<SheetField, readonly number[]>;
    readonly headerOf: (field: SheetField) => string | null;
    readonly sink: ProblemSink;
  },
): RowReader {
  const cell = (field: SheetField) => row[context.indexesByField.get(field)?.[0] ?? -1];
  return {
    row: rowNumber,
    cell,
    text: (field) => cellText(cell(field)),
    list: (field) => [
      ...new Set(
        (context.indexesByField.get(field) ?? []).flatMap((index) =>
          parseList(String(row[index] ?? ''), { careful: field === 'supplierParts' }),
        ),
      ),
    ],
    has: (field) => context.indexesByField.has(field),
    report: (code, field, facts) => {
      const column = field === null ? null : context.headerOf(field);
      context.sink.add(code, { row: rowNumber, column }, facts);
    },
  };
}
