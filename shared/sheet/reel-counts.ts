// What has a reel counter counted? Any table that names reels and a number of parts.
// Method: columns as in setup sheets, corrected once and remembered for the counter's file. A reel counted several times has its last count.
// Refused: one counter's own form; each writes another.

import { parseCount } from './cells.ts';
import { type HeaderWords, sheetHeaderWords } from './fields.ts';
import type { SheetColumn, SheetRows } from './headers.ts';
import type { SheetProblem } from './problems.ts';
import { layOut, type TableKindOf, type TableOptions } from './table.ts';

/** The fields of a file of counted reels, in the order in which they are shown. */
export const countFields = ['reel', 'count', 'part', 'lot'] as const;

/** One field of a file of counted reels. */
export type CountField = (typeof countFields)[number];

/** Header words of counters' files: English, Spanish, German, French; common practice. */
export const countHeaderWords: HeaderWords<CountField> = {
  reel:
    'reel, reel id, reel no, reel number, unique id, uid, id, barcode, bar code, code, serial, serial number, package, package id, carrete, ' +
    'id de carrete, codigo de barras, rolle, rollen id, rollennummer, strichcode, gebinde, bobine, id bobine, numero de bobine, code barres',
  count:
    'count, counted, quantity, qty, parts, pieces, pcs, counted quantity, counted parts, result, total, remaining, left, cantidad, piezas, contado, ' +
    'resultado, restante, anzahl, menge, stuck, stueck, stuckzahl, stueckzahl, gezahlt, gezaehlt, ergebnis, rest, quantite, nombre, compte, resultat, restant',
  part: sheetHeaderWords.part,
  lot: 'lot, lot number, lot no, batch, batch number, lote, numero de lote, los, losnummer, charge, chargennummer, numero de lot',
};

const countFieldNames: Readonly<Record<CountField, string>> = {
  reel: 'reel id',
  count: 'count',
  part: 'part number',
  lot: 'lot',
};

/** One counted reel. */
export interface ReelRow {
  readonly row: number;
  readonly reel: string;
  /** Parts, whole. */
  readonly count: number;
  /** As the file says; empty where it does not. */
  readonly part: string;
  readonly lot: string;
}

/** A counter's file as it was read. */
export interface ReelCountReading {
  readonly headerRow: number;
  readonly columns: readonly SheetColumn<CountField>[];
  /** In the order of the file; each reel once, with its last count. */
  readonly counts: readonly ReelRow[];
  readonly problems: readonly SheetProblem[];
}

const countTable: TableKindOf<CountField> = {
  words: countHeaderWords,
  names: countFieldNames,
  needed: ['reel', 'count'],
};

const longestId = 64;

/** Reads a counter's file from its rows. Never throws. Linear in the rows. */
export function readReelCounts(rows: SheetRows, options: TableOptions<CountField> = {}): ReelCountReading {
  const { headerRow, columns, lines, sink } = layOut(rows, countTable, options);
  const counts = new Map<string, ReelRow>();
  for (const line of lines) {
    const { row } = line;
    const reel = line.text('reel');
    const column = line.header('reel');
    if (reel === '') {
      sink.add('listReelEmpty', { row, column });
      continue;
    }
    if (reel.length > longestId) {
      sink.add('textTooLong', { row, column }, { field: countFieldNames.reel, found: reel, most: longestId });
      continue;
    }
    const count = parseCount(line.cell('count'));
    if (count === null || count < 0) {
      sink.add('listCountUnreadable', { row, column: line.header('count') }, { found: line.text('count') });
      continue;
    }
    const before = counts.get(reel);
    if (before !== undefined) {
      sink.add('listReelTwice', { row, column }, { found: reel, first: before.row });
      counts.delete(reel);
    }
    counts.set(reel, { row, reel, count, part: line.text('part'), lot: line.text('lot') });
  }
  return { headerRow, columns, counts: [...counts.values()], problems: sink.list() };
}
