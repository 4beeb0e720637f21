// What does not add up in a bill of materials: remarks that take designators out, designators in two rows, one part with two values, quantities
// that are not the number of designators.

import type { BillField } from './bill-fields.ts';
import { type BillLine, type BillRowReader, carriedMark } from './bill-row.ts';
import { designatorKey, listDesignators } from './designators.ts';
import type { ProblemSink } from './problems.ts';

/** Where problems are: the header of each field's column, null where there is none. */
export interface BillHeads {
  readonly header: (field: BillField) => string | null;
}

/**
 * The line, or two where a remark takes some of its designators out ("R3: do not fit"). A mark beside a value is about the whole row; one in a remark of a row of
 * several designators that names none of them is taken so too, and told.
 */
export function splitByMark(
  line: BillLine,
  reader: BillRowReader,
  heads: BillHeads,
  sink: ProblemSink,
): readonly BillLine[] {
  const mark = line.isFitted ? carriedMark(reader) : null;
  if (mark === null) return [line];
  const named = new Set(listDesignators(mark.text.replace(/:/g, ' ')).map(designatorKey));
  const out = line.designators.filter((designator) => named.has(designatorKey(designator)));
  if (out.length > 0 && out.length < line.designators.length) {
    const rest = line.designators.filter((designator) => !out.includes(designator));
    return [
      { ...line, designators: rest },
      { ...line, designators: out, isFitted: false },
    ];
  }
  const isRemark = mark.field === 'note' || mark.field === 'description';
  if (isRemark && out.length === 0 && line.designators.length > 1)
    sink.add('markInRemark', { row: line.row, column: heads.header(mark.field) }, { found: mark.text });
  return [{ ...line, isFitted: false }];
}

/** Checks of lines by themselves and against one another; a designator named twice stays with its first line. */
export function checkLines(
  lines: readonly BillLine[],
  heads: BillHeads,
  sink: ProblemSink,
): readonly BillLine[] {
  const column = heads.header('designators');
  const lineByKey = new Map<string, BillLine>();
  const valueByPart = new Map<string, BillLine>();
  return lines.map((line) => {
    const place = { row: line.row, column };
    if (line.part === '' && line.isFitted)
      sink.add(
        'billPartMissing',
        { row: line.row, column: heads.header('part') },
        { designator: line.designators.join(', ') },
      );
    else if (line.namedBy !== 'part' && heads.header('part') !== null && line.isFitted)
      sink.add('billPartByOther', { row: line.row, column: heads.header('part') }, { part: line.part });
    const own: string[] = [];
    for (const designator of line.designators) {
      const key = designatorKey(designator);
      const first = lineByKey.get(key);
      if (first === undefined) {
        lineByKey.set(key, line);
        own.push(designator);
      } else if (first.part.toUpperCase() === line.part.toUpperCase())
        sink.add('billDesignatorTwice', place, { designator, first: first.row });
      else if (first.isFitted && line.isFitted)
        sink.add('billDesignatorDiffers', place, {
          designator,
          first: first.row,
          found: line.part,
          wanted: first.part,
        });
      else if (line.isFitted) {
        // One row of the two is not fitted: the other says what stands there.
        lineByKey.set(key, line);
        own.push(designator);
      }
    }
    tellValue(line, valueByPart, heads, sink);
    return own.length === line.designators.length ? line : { ...line, designators: own };
  });
}

function tellValue(
  line: BillLine,
  valueByPart: Map<string, BillLine>,
  heads: BillHeads,
  sink: ProblemSink,
): void {
  if (line.namedBy !== 'part' || line.value === '') return;
  const key = line.part.toUpperCase();
  const first = valueByPart.get(key);
  if (first === undefined) valueByPart.set(key, line);
  else if (first.value.toUpperCase() !== line.value.toUpperCase()) {
    const facts = { part: line.part, found: line.value, wanted: first.value, first: first.row };
    sink.add('partDescribedTwice', { row: line.row, column: heads.header('value') }, facts);
  }
}

/** Compares quantities with designators; one whole ratio over all rows is told once. */
export function checkQuantities(lines: readonly BillLine[], heads: BillHeads, sink: ProblemSink): void {
  const column = heads.header('quantity');
  const stated = lines.filter((line) => line.quantity !== null && (line.isFitted || line.quantity === 0));
  const countByPart = new Map<string, number>();
  for (const { part, designators } of lines) {
    const key = part.toUpperCase();
    countByPart.set(key, (countByPart.get(key) ?? 0) + designators.length);
  }
  const ratios = new Set(stated.map(({ quantity, designators }) => (quantity ?? 0) / designators.length));
  const [ratio = 1] = ratios;
  if (ratios.size === 1 && ratio >= 2 && Number.isInteger(ratio) && stated.length >= 3) {
    sink.add('quantityRatio', { row: null, column }, { ratio });
    return;
  }
  for (const { row, part, quantity, designators } of stated) {
    // Where one part stands in several rows, each may state the whole quantity.
    if (quantity !== designators.length && quantity !== countByPart.get(part.toUpperCase()))
      sink.add('quantityDiffers', { row, column }, { found: designators.length, wanted: quantity ?? 0 });
  }
}
