// Which feeders does a pasted list name? One a row: id, tape width, pitches that it can step, positions that it takes.
// Method: the rows of any separator; columns by their headers, or in this order where there is no header. Every row is either a
// feeder or a problem.

import type { Feeder } from '../floor/state.ts';
import { parseCount, parseLengthMm } from './cells.ts';
import type { HeaderWords } from './fields.ts';
import { cellText, guessColumns, type SheetCell } from './headers.ts';
import { isTapeWidth, positionsForWidth } from './tapes.ts';
import { textToRows } from './text.ts';

const fields = ['feeder', 'tapeWidth', 'pitches', 'positions'] as const;
type FeederField = (typeof fields)[number];

const headerWords: HeaderWords<FeederField> = {
  feeder:
    'feeder, feeder id, feeder number, feeder no, feeder name, id, serial, serial number, alimentador, id de alimentador, numero de serie, ' +
    'zufuhrung, feedernummer, seriennummer, chargeur, numero de serie',
  tapeWidth:
    'tape width, width, tape, tape size, ancho, ancho de cinta, gurtbreite, breite, largeur, largeur de bande',
  pitches: 'pitch, pitches, tape pitch, feed pitch, paso, pasos, teilung, teilungen, pas, vorschub',
  positions:
    'positions, positions taken, slots, slots taken, posiciones, posiciones ocupadas, platze, emplacements',
};

/** What can be wrong with a row. */
export const feederProblemCodes = [
  'id-missing',
  'id-long',
  'id-twice',
  'width-wrong',
  'pitch-wrong',
  'positions-wrong',
] as const;

/** One row that names no feeder, and why; `row` as a spreadsheet numbers it, `found` as written. */
export interface FeederProblem {
  readonly row: number;
  readonly code: (typeof feederProblemCodes)[number];
  readonly found: string;
}

/** A list of feeders as it was read. */
export interface FeederReading {
  readonly feeders: readonly Feeder[];
  readonly problems: readonly FeederProblem[];
}

const longestId = 64;

/** Reads pitches in mm: `4`, `2/4`, `2; 4`, `4, 8 mm`; null where one is no number above 0. Empty = any. */
export function parsePitches(text: string): readonly number[] | null {
  if (text.trim() === '') return [];
  const pieces = text.replace(/mm/gi, ' ').split(/[/;|+]|,\s+|\s+/);
  const pitches = pieces.filter((piece) => piece !== '').map((piece) => parseLengthMm(piece));
  if (pitches.some((pitch) => pitch === null || pitch <= 0)) return null;
  return [...new Set(pitches as number[])].sort((a, b) => a - b); // no null left
}

/** Reads one feeder from its texts; positions left empty follow from the tape width. */
export function parseFeeder(
  texts: Readonly<Record<FeederField, SheetCell>>,
): Feeder | Pick<FeederProblem, 'code' | 'found'> {
  const text = (field: FeederField) => cellText(texts[field]);
  const feeder = text('feeder');
  if (feeder === '') return { code: 'id-missing', found: '' };
  if (feeder.length > longestId) return { code: 'id-long', found: feeder };
  const tapeWidthMm = parseLengthMm(texts.tapeWidth);
  if (tapeWidthMm === null || !isTapeWidth(tapeWidthMm))
    return { code: 'width-wrong', found: text('tapeWidth') };
  const pitchesMm = parsePitches(text('pitches'));
  if (pitchesMm === null) return { code: 'pitch-wrong', found: text('pitches') };
  const positions = text('positions') === '' ? positionsForWidth(tapeWidthMm) : parseCount(texts.positions);
  if (positions === null || positions < 1 || positions > 60)
    return { code: 'positions-wrong', found: text('positions') };
  return { feeder, tapeWidthMm, pitchesMm: [...pitchesMm], positions };
}

/** True for a feeder, false for what is wrong with one. */
export function isFeeder(parsed: ReturnType<typeof parseFeeder>): parsed is Feeder {
  return 'feeder' in parsed;
}

/** Reads a pasted list of feeders. Blank rows do not count; of a feeder named twice the first counts and the other is a problem. */
export function readFeederRows(text: string): FeederReading {
  const { rows } = textToRows(text);
  const guess = guessColumns(rows, headerWords);
  const hasHeader = guess.columns.some(({ field }) => field === 'feeder');
  const indexOf = (field: FeederField) =>
    hasHeader ? guess.columns.findIndex((column) => column.field === field) : fields.indexOf(field);
  const feeders = new Map<string, Feeder>();
  const problems: FeederProblem[] = [];
  for (const [index, row] of rows.entries()) {
    if (hasHeader && index < guess.headerRow) continue;
    if (row.every((cell) => cellText(cell) === '')) continue;
    const at = (field: FeederField) => row[indexOf(field)] ?? null;
    const parsed = parseFeeder({
      feeder: at('feeder'),
      tapeWidth: at('tapeWidth'),
      pitches: at('pitches'),
      positions: at('positions'),
    });
    if (!isFeeder(parsed)) problems.push({ row: index + 1, ...parsed });
    else if (feeders.has(parsed.feeder))
      problems.push({ row: index + 1, code: 'id-twice', found: parsed.feeder });
    else feeders.set(parsed.feeder, parsed);
  }
  return { feeders: [...feeders.values()], problems };
}
