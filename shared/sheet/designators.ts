// Which reference designators does a text name, and what kind of thing does one stand for?
// Method: lists at any separator, ranges opened, bare numbers after a designator taken with its letters ("R1, 3-5"). What stands on a board
// without being placed (fiducials, test points, mounting holes, marks) is told by the usual letters, and by the words of value and package.
// The letters are those of IEEE 315 and IEC 81346-2 as parts lists use them; the names of marks are common practice.

import { isBlankMark } from './cells.ts';

const mostInRange = 10_000;
/** Longer than any range of designators; a pattern with two open ends must not meet a cell of thousands of digits. */
const longestRange = 80;
// Nearly every designator is written like this: a look costs less than a replacement.
const plainDesignator = /^[A-Z\d]+$/;

/** One form for the same designator: capitals, no blanks. */
export function designatorKey(designator: string): string {
  if (plainDesignator.test(designator)) return designator;
  return designator.replace(/\s+/g, '').toUpperCase();
}

/** A range's members, with leading zeros as the first writes them; null where the text is no range. */
function openRange(entry: string): readonly string[] | null {
  if (entry.length > longestRange) return null;
  const range = /^([A-Za-z_][A-Za-z_\d]*?)(\d+)-([A-Za-z_][A-Za-z_\d]*?)?(\d+)$/.exec(entry);
  const [, prefix = '', from = '', other = '', to = ''] = range ?? [];
  if (!range || (other !== '' && other.toUpperCase() !== prefix.toUpperCase())) return null;
  const [first, last] = [Number(from), Number(to)];
  // "R5-1" and "R5-5" name a unit of R5; "R5-R1" is a range written backwards.
  if (other === '' && last <= first) return null;
  const [low, high] = first <= last ? [first, last] : [last, first];
  if (high - low >= mostInRange) return null;
  const digits = from.startsWith('0') ? from.length : 0;
  return Array.from(
    { length: high - low + 1 },
    (_, at) => `${prefix}${String(low + at).padStart(digits, '0')}`,
  );
}

/** The separator words and signs of ranges as one hyphen, and of lists as one comma. */
function tidyList(text: string): string {
  return text
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(
      /(?<=\d)\s*(?:-|\.{2,}|…|~|\bto\b|\bbis\b|\bthru\b|\bthrough\b|(?<=\s)(?:a|à|al)(?=\s))\s*(?=[A-Za-z_]*\d)/gi,
      '-',
    )
    .replace(/\s(?:and|und|y|et)\s/gi, ',')
    .replace(/\(\s*\d+\s*(?:(?:x|pcs|stk)\s*)?\)/gi, ' ');
}

/** An entry without brackets and quotation marks around it, and full stops behind it. Sign by sign: a pattern would look from each one to the end. */
function bare(raw: string): string {
  let [from, to] = [0, raw.length];
  while (from < to && '("\'[{'.includes(raw.charAt(from))) from += 1;
  while (to > from && ')"\']}.:'.includes(raw.charAt(to - 1))) to -= 1;
  return raw.slice(from, to);
}

/** Splits reference designators and opens ranges: "R1, R3-R5 R9" -> R1 R3 R4 R5 R9. Each once, in order. */
export function parseDesignators(text: string): readonly string[] {
  return [...new Set(listDesignators(text))];
}

/** As `parseDesignators()`, with what the text names twice. */
export function listDesignators(text: string): readonly string[] {
  const found: string[] = [];
  if (isBlankMark(text.trim())) return found;
  let letters = '';
  for (const raw of tidyList(text).split(/[\s;,/|+&、，；]+/)) {
    const entry = bare(raw);
    if (entry === '' || isBlankMark(entry)) continue;
    const whole = /^\d+(?:-\d+)?$/.test(entry) && letters !== '' ? `${letters}${entry}` : entry;
    letters = /^([A-Za-z_]+)\d/.exec(whole)?.[1] ?? letters;
    found.push(...(openRange(whole) ?? [whole]));
  }
  return found;
}

/** Whether a text has the look of one designator: letters, a number, perhaps a unit behind it ("R1", "IC12A", "R5_2"). */
export function looksLikeDesignator(text: string): boolean {
  return /^[A-Za-z_]{1,6}\d{1,4}(?:[A-Za-z]|[_-]\w{1,6})?$/.test(text);
}

// Letters that parts lists use for parts; P, A and B are left out, since house part numbers begin with them.
const usualLetters =
  /^(?:AE|ANT|BAT|BT|BZ|C|CN|CON|CR|D|DS|E|F|FB|FER|FID|FL|FM|H|HS|IC|J|JP|K|KL|L|LD|LED|LS|M|MH|MIC|MK|MOV|MP|NT|OK|OSC|PS|Q|R|RA|RE|RL|RLY|RN|RT|RV|S|SB|ST|SW|T|TP|TR|TVS|U|V|VD|VR|VT|W|X|XT|XTAL|Y|Z|ZD)\d{1,4}$/i;

/**
 * Whether a list of entries are designators and no part numbers: five or more, all different, nearly all of the look and the letters that
 * designators have.
 */
export function areDesignators(entries: readonly string[]): boolean {
  if (entries.length < 5 || new Set(entries.map(designatorKey)).size < entries.length) return false;
  return entries.filter((entry) => usualLetters.test(entry)).length >= entries.length * 0.9;
}

/** What a designator may stand for that no machine places. */
export const oddThings = ['fiducial', 'testPoint', 'hole', 'mark'] as const;

/** One of them. */
export type OddThing = (typeof oddThings)[number];

const oddNames: readonly (readonly [OddThing, RegExp])[] = [
  [
    'fiducial',
    /^(?:fid|fd|fm|fidu|fiducial|passmarke|(?:global|local|top|bot)[ _-]?fid(?:ucial)?)[ _-]?[a-z]?\d*$/i,
  ],
  ['testPoint', /^(?:tp|tpt|test[ _-]?(?:point|pad)?)[ _-]?[a-z]?\d+[a-z]?$/i],
  ['hole', /^(?:h|mh|mtg|hole|mount(?:ing)?[ _-]?hole|mnt|npth)[ _-]?\d+$/i],
  ['mark', /^(?:logo|label|lbl|mark|oshw|pcb|board|doc|graphic|text|ref\*+|g\*+|\$\$\$\d+|\*+)[ _-]?\d*$/i],
];
const oddWords: readonly (readonly [OddThing, RegExp])[] = [
  [
    'fiducial',
    /fiducial|passermarke|passmarke|marca fiducial|mire de centrage|^fid(?:[ _-]?[\d.]*(?:mm)?)?$/i,
  ],
  [
    'testPoint',
    /test[ _-]?(?:point|pad)|testpunkt|messpunkt|punto de (?:prueba|test)|point de test|^tp[_-]/i,
  ],
  [
    'hole',
    /mounting[ _-]?hole|mount[ _-]hole|befestigungsloch|montageloch|taladro|trou de fixation|tooling[ _-]?hole/i,
  ],
  ['mark', /^logo\b|\blogo$|^oshw/i],
];

// What all those words have a piece of: most values and packages have none.
const mayBeOdd = /fid|pass|marca|mire|test|mess|punto|tp|mount|loch|taladro|trou|tooling|logo|oshw/i;

/**
 * What stands on the board without being placed: by the words of value, part or package first, then by the designator's letters; null for
 * a thing that is placed.
 */
export function oddThing(designator: string, texts: readonly string[] = []): OddThing | null {
  for (const text of texts) {
    if (!mayBeOdd.test(text)) continue;
    for (const [thing, words] of oddWords) if (words.test(text)) return thing;
  }
  return oddNames.find(([, name]) => name.test(designator.trim()))?.[0] ?? null;
}
