// What does the plant's list of parts say of each part: package, body, level, tape, value, approved makers, age limit?
// Method: one row a part, or one row a maker of it: rows of one part are laid together, and where they say different things a person is told.
// What a row does not say is null and changes nothing. Refused: to fill in what is usual for a package; the list would then claim what nobody wrote.

import type * as z from 'zod/mini';
import { type listedPartSchema, mostMakers, type PartPrice } from '../floor/kinds-parts.ts';
import { mostShort } from '../floor/payload-fields.ts';
import type { PackageFamily, PackageKind } from '../floor/vocabulary.ts';
import { twelveFigures } from '../kit/figures.ts';
import {
  packageKindOf,
  parseComesIn,
  parseCount,
  parseLengthMm,
  parseList,
  parseNumber,
  parseSheetMsl,
  parseTapePair,
} from './cells.ts';
import type { SheetColumn, SheetRows } from './headers.ts';
import { parseBodySize, parsePackageText } from './package-text.ts';
import { type PartField, partFieldNames, partHeaderWords } from './part-fields.ts';
import { type PriceHeader, parsePrice, parsePriceHeader } from './price.ts';
import type { ProblemSink, SheetProblem, SheetProblemCode } from './problems.ts';
import { layOut, type TableKindOf, type TableLine, type TableOptions } from './table.ts';
import { isTapeWidth, tapeWidthsMm } from './tapes.ts';

/** What the list says of one part; null = it does not say. */
export type ListedPart = Readonly<z.output<typeof listedPartSchema>> & {
  /** Absent where it does not say. */
  readonly price?: PartPrice;
};

/** A part with the row that named it first. */
export interface PartRow {
  readonly row: number;
  readonly part: ListedPart;
}

/** A list of parts as it was read. */
export interface PartListReading {
  readonly headerRow: number;
  readonly columns: readonly SheetColumn<PartField>[];
  /** In the order of the list, each part once. */
  readonly parts: readonly PartRow[];
  readonly problems: readonly SheetProblem[];
}

const partTable: TableKindOf<PartField> = { words: partHeaderWords, names: partFieldNames, needed: ['part'] };

const longestPart = 64;

/** Reads an age in months ("24", "24 months", "2 years", "2 Jahre"); null otherwise. */
export function parseMonths(text: string): number | null {
  const match = /^([\d.,]+)\s*(\p{L}*)\.?$/u.exec(text.trim());
  const value = match?.[1] === undefined ? null : parseNumber(match[1], 'length');
  if (value === null || value <= 0) return null;
  const unit = (match?.[2] ?? '').toLowerCase();
  if (unit === '' || /^(?:m|mo|mon|months?|mes|meses|monate?n?|mois)$/.test(unit)) return value;
  return /^(?:y|yr|yrs|years?|años?|anos?|jahre?n?|ans?|années?)$/.test(unit) ? value * 12 : null;
}

/** Reads a list of parts from its rows. Each part once, problems by row and column. Never throws. Linear in the rows. */
export function readPartList(rows: SheetRows, options: TableOptions<PartField> = {}): PartListReading {
  const { headerRow, columns, lines, sink } = layOut(rows, partTable, options);
  const parts = new Map<string, PartRow>();
  const isBareUnclear = isUnclear(lines);
  const toleranceHeader = lines[0]?.header('tolerance') ?? '';
  if (isBareUnclear)
    sink.add('listToleranceUnclear', { row: headerRow, column: toleranceHeader }, { found: toleranceHeader });
  const header = lines[0]?.header('price') ?? null;
  const priced = header === null ? null : parsePriceHeader(header);
  if (header !== null && priced?.per === null && !lines.some((line) => line.text('partsPerPrice') !== ''))
    sink.add('listPriceUnclear', { row: headerRow, column: header }, { found: header });
  for (const line of lines) {
    const name = line.text('part');
    if (name === '') {
      sink.add('listPartEmpty', { row: line.row, column: line.header('part') });
      continue;
    }
    if (name.length > longestPart) {
      const facts = { field: partFieldNames.part, found: name, most: longestPart };
      sink.add('textTooLong', { row: line.row, column: line.header('part') }, facts);
      continue;
    }
    const there = parts.get(name);
    const part = readLine(line, name, { isBareUnclear, priced, sink });
    parts.set(
      name,
      there ? { row: there.row, part: laidTogether(there, part, { line, sink }) } : { row: line.row, part },
    );
  }
  return { headerRow, columns, parts: [...parts.values()], problems: sink.list() };
}

function readLine(
  line: TableLine<PartField>,
  part: string,
  {
    isBareUnclear,
    priced,
    sink,
  }: { readonly isBareUnclear: boolean; readonly priced: PriceHeader | null; readonly sink: ProblemSink },
): ListedPart {
  const report = (code: SheetProblemCode, field: PartField, facts = {}) =>
    sink.add(code, { row: line.row, column: line.header(field) }, { found: line.text(field), ...facts });
  const cut = (field: PartField, found: string) => {
    if (found.length > mostShort) report('textCut', field, { most: mostShort });
    return found.slice(0, mostShort);
  };
  const shortText = (field: PartField) => {
    const found = line.text(field);
    return found === '' || found === '-' ? null : cut(field, found);
  };
  /** What a parser makes of a cell; null and a problem where the cell says something else. */
  const parsed = <T>(
    field: PartField,
    code: SheetProblemCode,
    parse: (text: string) => T | null,
  ): T | null => {
    const found = line.text(field);
    if (found === '' || found === '-') return null;
    const value = parse(found);
    if (value === null) report(code, field);
    return value;
  };
  const packageText = shortText('package');
  const named = parsePackageText(packageText ?? '');
  const size = parsed('bodySize', 'bodySizeUnreadable', parseBodySize) ?? named.bodyMm;
  const tape = tapeOf(line, report);
  const price = priced === null ? null : priceOf(line, priced, { report, cut });
  return {
    part,
    description: shortText('description') ?? shortText('note'),
    value: shortText('value'),
    tolerance: toleranceText(line, isBareUnclear, cut),
    package: packageText,
    family: named.family satisfies PackageFamily | null,
    pins: parsed('pins', 'pinsUnreadable', readPins) ?? named.pins,
    bodyMm: parsed('bodyThickness', 'thicknessUnreadable', readLength),
    bodyXMm: size?.[0] ?? null,
    bodyYMm: size?.[1] ?? null,
    msl: parsed('msl', 'mslUnknown', parseSheetMsl),
    comesIn: parsed('comesIn', 'listPackingUnknown', parseComesIn) ?? tape.comesIn,
    tapeWidthMm: tape.widthMm,
    pitchMm: tape.pitchMm,
    ageMonths: parsed('ageMonths', 'listAgeUnreadable', parseMonths),
    orientation: shortText('orientation'),
    ...(price === null ? {} : { price }),
    makers: makersOf(line, cut),
  };
}

function readPins(text: string): number | null {
  const pins = parseCount(text);
  return pins !== null && pins >= 1 && pins <= 10_000 ? pins : null;
}

function readLength(text: string): number | null {
  const value = parseLengthMm(text);
  return value !== null && value > 0 ? value : null;
}

const saysPercent = /%|per ?cent|prozent|por ?cien|pour ?cent/i;

const BARE = /^\d+(?:[.,]\d+)?$/;

/** A tolerance without its per cent; null where the cell says more, or nothing. */
function bareTolerance(line: TableLine<PartField>): number | null {
  const text = line.text('tolerance');
  const value = BARE.test(text) ? Number(text.replace(',', '.')) : 0;
  return value > 0 ? value : null;
}

/**
 * Whether nobody can tell what a list's bare tolerances are: 0.1 is 10 % where a spreadsheet keeps shares and 0.1 % in a column of per cents. Clear
 * where the column is called per cent, or one of them is 1 or more. Refused: to take all below 0.5 for shares; one 0.8 among them turned all.
 */
function isUnclear(lines: readonly TableLine<PartField>[]): boolean {
  if (saysPercent.test(lines[0]?.header('tolerance') ?? '')) return false;
  const bare = lines.map(bareTolerance).filter((value) => value !== null);
  return bare.length > 0 && bare.every((value) => value < 1);
}

function toleranceText(
  line: TableLine<PartField>,
  isBareUnclear: boolean,
  cut: (field: PartField, found: string) => string,
): string | null {
  const text = line.text('tolerance');
  if (text === '' || text === '-') return null;
  if (isBareUnclear && bareTolerance(line) !== null) return null;
  return BARE.test(text) ? `${text} %` : cut('tolerance', text);
}

/** The price of one part; null where the row has none, or nobody can tell how many parts it is for. */
function priceOf(
  line: TableLine<PartField>,
  header: PriceHeader,
  { report, cut }: { readonly report: Report; readonly cut: (field: PartField, found: string) => string },
): PartPrice | null {
  const found = line.text('price');
  if (found === '' || found === '-') return null;
  const price = parsePrice(found);
  if (price === null) report('listPriceUnreadable', 'price');
  const perText = line.text('partsPerPrice');
  const own = perText === '' ? header.per : parseCount(perText);
  if (perText !== '' && (own === null || own < 1)) report('listPriceUnclear', 'partsPerPrice');
  if (price === null || own === null || own < 1) return null;
  const named = line.text('currency');
  const currency = named !== '' && named !== '-' ? cut('currency', named) : price.currency;
  return { each: twelveFigures(price.amount / own), currency: currency ?? header.currency };
}

type Report = (code: SheetProblemCode, field: PartField, facts?: Record<string, string>) => void;

interface TapeFacts {
  readonly widthMm: number | null;
  readonly pitchMm: number | null;
  readonly comesIn: PackageKind | null;
}

function tapeOf(line: TableLine<PartField>, report: Report): TapeFacts {
  const width = line.text('tapeWidth');
  const other = packageKindOf(width);
  if (other !== null) return { widthMm: null, pitchMm: null, comesIn: other };
  const pair = width === '' ? null : parseTapePair(width);
  const read = width === '' || width === '-' ? null : (pair?.widthMm ?? readLength(width));
  const isTape = read !== null && isTapeWidth(read);
  if (width !== '' && width !== '-' && read === null) report('widthUnreadable', 'tapeWidth');
  else if (read !== null && !isTape) report('widthUnknown', 'tapeWidth', { wanted: tapeWidthsMm.join(', ') });
  const pitch = line.text('pitch');
  const pitchMm = pitch === '' || pitch === '-' ? (pair?.pitchMm ?? null) : readLength(pitch);
  if (pitch !== '' && pitch !== '-' && pitchMm === null) report('pitchUnreadable', 'pitch');
  return { widthMm: isTape ? read : null, pitchMm, comesIn: isTape ? 'tape' : null };
}

function makersOf(
  line: TableLine<PartField>,
  cut: (field: PartField, found: string) => string,
): ListedPart['makers'] {
  const numbers = line.texts('supplierParts').flatMap((text) => parseList(text, { careful: true }));
  const supplierParts = [...new Set(numbers.map((number) => cut('supplierParts', number)))];
  const products = [...new Set(parseList(line.text('product')).map((product) => cut('product', product)))];
  // As many as one entry takes, so that a cell of thousands costs no more than the row.
  const forProducts = products.length === 0 ? [null] : products.slice(0, mostMakers);
  return supplierParts
    .slice(0, mostMakers)
    .flatMap((supplierPart) => forProducts.map((product) => ({ supplierPart, product })))
    .slice(0, mostMakers);
}

/** Two rows of one part: makers add up; of everything else the first that says it counts, and what differs is told. */
function laidTogether(
  there: PartRow,
  more: ListedPart,
  { line, sink }: { readonly line: TableLine<PartField>; readonly sink: ProblemSink },
): ListedPart {
  const { makers, ...facts } = there.part;
  const joined: Record<string, unknown> = { ...facts };
  for (const [key, value] of Object.entries(more)) {
    if (key === 'makers' || value === null) continue;
    const before = joined[key];
    if (before === null || before === undefined) joined[key] = value;
    else if (sayFact(before) !== sayFact(value))
      sink.add(
        'partDiffers',
        { row: line.row },
        {
          part: more.part,
          field: fieldOfFact(key),
          found: sayFact(value),
          wanted: sayFact(before),
          first: there.row,
        },
      );
  }
  const isThere = (each: ListedPart['makers'][number]) =>
    makers.some((one) => one.supplierPart === each.supplierPart && one.product === each.product);
  return {
    ...(joined as Omit<ListedPart, 'makers'>), // the keys of a listed part
    makers: [...makers, ...more.makers.filter((each) => !isThere(each))].slice(0, mostMakers),
  };
}

/** A fact as a message says it. */
function sayFact(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  const { each, currency } = value as PartPrice; // the one fact of several values
  return currency === null ? String(each) : `${each} ${currency}`;
}

const fieldOfFacts: Readonly<Record<string, PartField>> = {
  bodyMm: 'bodyThickness',
  bodyXMm: 'bodySize',
  bodyYMm: 'bodySize',
  family: 'package',
  tapeWidthMm: 'tapeWidth',
  pitchMm: 'pitch',
};

function fieldOfFact(key: string): string {
  const field = fieldOfFacts[key] ?? (key as PartField); // a key of a listed part is a field otherwise
  return partFieldNames[field];
}
