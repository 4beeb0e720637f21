// Does a wedge scanner's text arrive as it was printed, and if not, what is set wrong?
// Method: one known code; what arrived is compared with what each keyboard layout and Caps Lock would have made of it.
// Refused: guessing from ordinary labels, where a swapped Y and Z still looks like a part number.

import { DEAD, LAYOUTS, type Layout, throughLayouts } from './layouts.ts';

const LETTERS_DIGITS_SIGNS =
  'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-/_:;@#"+.,()*$%&=?![]\\';

/** The separators of ISO/IEC 15434, each between two letters, so that a lost one shows. */
const SEPARATORS = [
  { name: 'RS', char: '\u001e', before: 'R', after: 'G' },
  { name: 'GS', char: '\u001d', before: 'G', after: 'E' },
  { name: 'EOT', char: '\u0004', before: 'E', after: 'Z' },
] as const;
export type SeparatorName = (typeof SEPARATORS)[number]['name'];

const SEPARATOR_TAIL = 'R\u001eG\u001dE\u0004Z';

/** What the calibration code holds: letters, digits, signs, then the separators. Print it as Data Matrix or QR. */
export const calibrationText: string = LETTERS_DIGITS_SIGNS + SEPARATOR_TAIL;

export type CalibrationCharacters =
  | { readonly kind: 'equal' }
  /** The tablet types `tablet` while the scanner sends `scanner`. */
  | { readonly kind: 'layout'; readonly tablet: Layout; readonly scanner: Layout }
  | { readonly kind: 'unknown'; readonly wanted: string; readonly found: string };

export interface CalibrationSeparator {
  readonly name: SeparatorName;
  readonly fate: 'kept' | 'lost' | 'replaced';
  /** What stands in its place when replaced. */
  readonly by: string | null;
}

export interface Calibration {
  /** Every character and separator arrived as printed. */
  readonly isEqual: boolean;
  readonly characters: CalibrationCharacters;
  /** Caps Lock or the scanner's case setting swapped upper and lower case. */
  readonly isCaseInverted: boolean;
  readonly separators: readonly CalibrationSeparator[];
}

/** Compares what arrived for the calibration code. `received`: the scan's text with its control characters. */
export function checkCalibration(received: string): Calibration {
  const chars = [...received];
  const body = chars.slice(0, LETTERS_DIGITS_SIGNS.length).join('');
  const tail = chars.slice(LETTERS_DIGITS_SIGNS.length).join('');
  const { characters, isCaseInverted } = compareCharacters(body);
  const separators = compareSeparators(tail);
  const isEqual = characters.kind === 'equal' && !isCaseInverted && received === calibrationText;
  return { isEqual, characters, isCaseInverted, separators };
}

/** Swaps upper and lower case of the plain letters, as Caps Lock does. */
export function invertCase(text: string): string {
  return text.replace(/[A-Za-z]/g, (letter) =>
    letter === letter.toUpperCase() ? letter.toLowerCase() : letter.toUpperCase(),
  );
}

function compareCharacters(body: string): {
  readonly characters: CalibrationCharacters;
  readonly isCaseInverted: boolean;
} {
  for (const isCaseInverted of [false, true]) {
    const seen = isCaseInverted ? invertCase(body) : body;
    if (seen === LETTERS_DIGITS_SIGNS) return { characters: { kind: 'equal' }, isCaseInverted };
  }
  const pairs = LAYOUTS.flatMap((layout) =>
    layout === 'us'
      ? []
      : [
          { tablet: layout, scanner: 'us' as Layout },
          { tablet: 'us' as Layout, scanner: layout },
        ],
  );
  const scored = pairs.flatMap((pair) => {
    const wanted = throughLayouts(LETTERS_DIGITS_SIGNS, pair.scanner, pair.tablet);
    return [false, true].map((isCaseInverted) => ({
      pair,
      isCaseInverted,
      misses: missesOf(wanted, isCaseInverted ? invertCase(body) : body),
    }));
  });
  const best = scored.reduce((least, each) => (each.misses < least.misses ? each : least));
  if (best.misses <= MOST_MISSES) {
    return { characters: { kind: 'layout', ...best.pair }, isCaseInverted: best.isCaseInverted };
  }
  return {
    characters: { kind: 'unknown', wanted: LETTERS_DIGITS_SIGNS, found: body },
    isCaseInverted: false,
  };
}

/** A named layout explains all but this many characters; systems differ in what a dead key does to the next one. */
const MOST_MISSES = 3;

function missesOf(wanted: string, found: string): number {
  const foundChars = [...found];
  const wantedChars = [...wanted];
  const length = Math.max(foundChars.length, wantedChars.length);
  let misses = 0;
  for (let at = 0; at < length; at++) {
    const isDead = wantedChars[at] === DEAD;
    if (!isDead && wantedChars[at] !== foundChars[at]) misses += 1;
  }
  return misses;
}

function compareSeparators(tail: string): readonly CalibrationSeparator[] {
  return SEPARATORS.map(({ name, char, before, after }) => {
    const pattern = new RegExp(`${before}([^A-Za-z]*)${after}`, 'i');
    const between = pattern.exec(tail)?.[1];
    if (between === char) return { name, fate: 'kept', by: null };
    return between === undefined || between === ''
      ? { name, fate: 'lost', by: null }
      : { name, fate: 'replaced', by: between };
  });
}
