// What does one cell say? Numbers with decimal commas and units, lists, yes and no, levels, sides, slot addresses.
// Method: one small parser per kind of cell; null means "does not say it", and the caller words the problem.

import { bankOf } from '../floor/address.ts';
import type { PackageKind, Side } from '../floor/vocabulary.ts';
import { type LabelMsl, labelMsls } from '../labels/reading.ts';
import { cellText, type SheetCell } from './headers.ts';

const spaces = /[\s\u00a0\u2009\u202f']/g;

/**
 * Reads a number with decimal point or comma and thousands marks. `kind` settles the doubtful case "1.234" or "1,234": for `count` the
 * mark groups thousands (1234), for `length` it is the decimal mark (1.234). Null where the text is not a number.
 */
export function parseNumber(text: string, kind: 'count' | 'length'): number | null {
  if (/^\d{1,15}$/.test(text)) return Number(text);
  let plain = text.replace(spaces, '');
  if (!/^[+-]?[\d.,]*\d[\d.,]*$/.test(plain)) return null;
  const points = plain.split('.').length - 1;
  const commas = plain.split(',').length - 1;
  if (points > 0 && commas > 0) {
    const decimal = plain.lastIndexOf('.') > plain.lastIndexOf(',') ? '.' : ',';
    const grouping = decimal === '.' ? ',' : '.';
    const [whole = '', ...rest] = plain.split(decimal);
    if (rest.length !== 1 || rest[0]?.includes(grouping)) return null;
    if (!/^[+-]?\d{1,3}(?:[.,]\d{3})+$/.test(whole)) return null;
    plain = `${whole.replaceAll(grouping, '')}.${rest[0]}`;
  } else if (points + commas > 1 || (points + commas === 1 && kind === 'count')) {
    const grouped = /^[+-]?[1-9]\d{0,2}(?:([.,])\d{3})(?:\1\d{3})*$/.test(plain);
    if (grouped) plain = plain.replace(/[.,]/g, '');
  }
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** Reads a whole count, with or without a unit of pieces ("12", "1 200", "12 pcs", "12,0", "4x"); null otherwise. */
export function parseCount(cell: SheetCell): number | null {
  if (typeof cell === 'number') return Number.isInteger(cell) ? cell : null;
  const text = cellText(cell).replace(
    /\s*(?:pcs?|pieces?|pzs?|piezas?|stk|st(?:ü|ue)ck|x|×|ea|parts?|u)\.?$/i,
    '',
  );
  const value = parseNumber(text, 'count');
  return value !== null && Number.isInteger(value) ? value : null;
}

/** Reads a length in mm, with or without the unit and a word after it ("8", "8mm", "8 mm paper", "0,55 mm"); null otherwise. */
export function parseLengthMm(cell: SheetCell): number | null {
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : null;
  const match = /^([WPwp]\s*)?([+-]?[\d.,]+)\s*(?:mm\b\.?)?(?:\s+\p{L}[\p{L} ]*)?$/iu.exec(cellText(cell));
  const unit = /\b(?:cm|in|inch|inches|mil|mils|m|um|µm)\b/i.test(cellText(cell));
  return match?.[2] === undefined || unit ? null : parseNumber(match[2], 'length');
}

/** Reads width and pitch written together ("8x4", "8/4 mm", "W8P4", "8 mm x 4 mm"); null where the cell is not such a pair. */
export function parseTapePair(
  cell: SheetCell,
): { readonly widthMm: number; readonly pitchMm: number } | null {
  const match = /^W?\s*(\d+)\s*(?:mm)?\s*(?:[x×*/-]|\s|(?=P))\s*P?\s*(\d+(?:[.,]\d)?)\s*(?:mm)?$/i.exec(
    cellText(cell),
  );
  if (match?.[1] === undefined || match[2] === undefined) return null;
  const pitchMm = parseNumber(match[2], 'length');
  return pitchMm === null ? null : { widthMm: Number(match[1]), pitchMm };
}

/** How a text begins that says what parts come in; the first that fits counts: "Gurtabschnitt" and "bandeja" begin as words for tape do. */
const comesInWords: readonly (readonly [PackageKind, RegExp])[] = [
  ['cut-tape', /^(?:cut|tape cut|strip|cinta cortada|gurtabschnitt|abschnitt|bande coup[eé]e)/i],
  ['tray', /^(?:tray|matrix|waffle|bandeja|tablett|schale|plateau|barquette|palette)/i],
  ['tube', /^(?:tube|stick|rail|tubo|barra|stange|r[eé]glette)/i],
  [
    'bulk',
    /^(?:bulk|loose|bag|(?:a )?granel|suelto|bolsa|schüttgut|schuettgut|lose|beutel|(?:en )?vrac|sachet)/i,
  ],
  ['tape', /^(?:tape|reel|t&r|cinta|carrete|bobina|gurt|rolle|bande|bobine)/i],
];

/** Reads how parts are supplied ("T&R", "Tray", "Stange", "a granel"); null where the text says none of the kinds. */
export function parseComesIn(text: string): PackageKind | null {
  const plain = text.trim();
  return comesInWords.find(([, words]) => words.test(plain))?.[0] ?? null;
}

/** What the parts come in, as a tape-width cell says it in place of a width: "tray", "stick", "bulk"; null where it names none but tape. */
export function packageKindOf(text: string): Exclude<PackageKind, 'tape'> | null {
  const kind = parseComesIn(text);
  return kind === 'tape' ? null : kind;
}

/** Whether a tape-width cell says that the parts do not come on tape from a reel (tray, stick, tube, bulk, cut tape). */
export function isNotTape(text: string): boolean {
  return packageKindOf(text) !== null;
}

/**
 * Splits a list at the strongest separator that it holds: line break ; | before comma before slash, since part numbers themselves hold
 * slashes and commas. With `careful` (makers' numbers) a slash needs spaces around it and a comma must not cut off fewer than
 * four characters. Without empty and repeated entries, in order.
 */
export function parseList(text: string, options: { readonly careful?: boolean } = {}): readonly string[] {
  const slash = options.careful ? / \/ / : /\//;
  if (isBlankMark(text.trim())) return [];
  let pieces = [text];
  if (/[;|\n\r]/.test(text)) pieces = text.split(/[;|\n\r]+/);
  else if (text.includes(',')) {
    const cut = text.split(',');
    if (!options.careful || cut.every((piece) => piece.trim().length >= 4)) pieces = cut;
  } else if (slash.test(text)) pieces = text.split(slash);
  const entries = pieces
    .map((piece) => cellText(piece))
    .filter((entry) => entry !== '' && !isBlankMark(entry));
  return [...new Set(entries)];
}

/** Whether a cell holds a mark for "nothing": a dash, n/a, none, empty and the like. */
export function isBlankMark(text: string): boolean {
  return /^(?:-+|–|—|\.|n\/?a|none|null|nil|empty|leer|frei|vac[ií]o|vide|libre|ninguno|keine?|aucune?|#n\/a)$/i.test(
    text,
  );
}

const yes = /^(?:1|y|yes|true|x|✓|✔|j|ja|wahr|s|si|sí|verdadero|o|oui|vrai|fitted|placed|fit|place)$/i;
const no = /^(?:0|n|no|false|nein|falsch|falso|non|faux|-|not fitted|not placed|skip)$/i;

/** Reads yes or no in four languages, a cross or a tick; null where it says neither. */
export function parseFlag(cell: SheetCell): boolean | null {
  if (typeof cell === 'boolean') return cell;
  const text = cellText(cell);
  return yes.test(text) ? true : no.test(text) ? false : null;
}

/** Reads a moisture sensitivity level ("3", "MSL 3", "MSL-2A", "Level 5a"); null otherwise. */
export function parseSheetMsl(text: string): LabelMsl | null {
  const bare = text
    .toLowerCase()
    .replace(/^(?:msl|level|stufe|klasse|nivel|niveau)?[\s:=-]*/, '')
    .replace(/\s+/g, '');
  return labelMsls.find((level) => level === bare) ?? null;
}

const topWords =
  /^(?:t|top|top[ _-]?(?:layer|side|copper|face|cu)|layer[ _-]?top|f|f\.?cu|front(?: ?side)?|upper(?: ?side)?|component(?: ?side)?|comp|cs|primary(?: ?side)?|ts|oben|oberseite|bestückseite|bs|vorderseite|superior|arriba|cara superior|dessus|face supérieure|supérieure?|1)$/i;
const bottomWords =
  /^(?:b|bot|bottom|bot(?:tom)?[ _-]?(?:layer|side|copper|face|cu)|layer[ _-]?bot(?:tom)?|b\.?cu|back(?: ?side)?|lower(?: ?side)?|solder(?: ?side)?|ss|secondary(?: ?side)?|16|unten|unterseite|lötseite|ls|rückseite|inferior|abajo|cara inferior|dessous|face inférieure|inférieure?|2)$/i;

/** Reads a side in four languages ("T", "Top", "TopLayer", "oben", "dessus"); null otherwise. */
export function parseSide(text: string): Side | null {
  return topWords.test(text) ? 'top' : bottomWords.test(text) ? 'bottom' : null;
}

const splitWords =
  /^(?:split|shared?|side by side|parallel|both|geteilt|aufgeteilt|nebeneinander|parallele?|repartid[oa]|a la vez|paralelo|reparti|réparti|ensemble)$/i;
const turnWords =
  /^(?:in turn|turn|one after (?:the )?(?:other|another)|alternate|alternating|nacheinander|der reihe nach|abwechselnd|por turnos?|uno tras otro|alterno|tour à tour|à tour de rôle|a tour de role|l'un après l'autre)$/i;

/** Reads how slots of one part share it ("split", "in turn", "nacheinander", "por turno"); null otherwise. */
export function parseSharing(text: string): 'split' | 'inTurn' | null {
  const plain = text.trim();
  return splitWords.test(plain) ? 'split' : turnWords.test(plain) ? 'inTurn' : null;
}

/** Reads a machine cell ("M1", "Machine 1", "1"): digits alone become M and the digits, as in `M1`. */
export function parseMachine(text: string): string | null {
  if (text === '') return null;
  const digits = /^(?:machine|maschine|m[aá]quina|modul[eo]?)?\s*0*(\d+)(?:\.0+)?$/i.exec(text)?.[1];
  return digits === undefined ? text.toUpperCase().replace(/\s+/g, '') : `M${digits}`;
}

/** Reads a bank cell: front and rear in four languages become F and R, anything else stays in capitals. */
export function parseBank(text: string): string | null {
  return text === '' ? null : bankOf(text);
}
