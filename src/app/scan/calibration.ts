// Does a wedge scanner's text arrive as it was printed, and if not, what is set wrong?
// Method: one known code; what arrived is compared with what each keyboard layout and Caps Lock would have made of it.
// Refused: guessing from ordinary labels, where a swapped Y and Z still looks like a part number.

import { DEAD, keyboardLayouts, type Layout, throughLayouts } from './layouts.ts';

/** A separator of ISO/IEC 15434 between two letters, so that a lost one shows. */
interface SeparatorPlace {
  readonly name: SeparatorName;
  readonly char: string;
  readonly before: string;
  readonly after: string;
}
export type SeparatorName = 'RS' | 'GS' | 'EOT';

/** A text that is printed to be scanned back. */
export interface CalibrationCode {
  /** Letters, digits and signs. */
  readonly body: string;
  readonly separators: readonly SeparatorPlace[];
  /** All of it, as printed. */
  readonly text: string;
  /** Shorter scans are never this code, not even half of it. */
  readonly leastCharacters: number;
}

/** The code of a body and its separators, which follow each other by the letters between them. */
function makeCode(
  body: string,
  separators: readonly SeparatorPlace[],
  leastCharacters: number,
): CalibrationCode {
  const tail =
    separators.map(({ before, char }) => before + char).join('') + (separators.at(-1)?.after ?? '');
  return { body, separators, text: body + tail, leastCharacters };
}

/** Everything, for readers of 2D codes: as QR or Data Matrix. */
export const fullCalibration = makeCode(
  'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-/_:;@#"+.,()*$%&=?![]\\',
  [
    { name: 'RS', char: '\u001e', before: 'R', after: 'G' },
    { name: 'GS', char: '\u001d', before: 'G', after: 'E' },
    { name: 'EOT', char: '\u0004', before: 'E', after: 'Z' },
  ],
  20,
);

/** What tells the layouts apart and the one separator that bar codes carry, short enough for Code 128. */
export const stripedCalibration = makeCode(
  'AaQqWwZzYyMm09-/_:;#+=*[]@"',
  [{ name: 'GS', char: '\u001d', before: 'G', after: 'E' }],
  10,
);

/** This share of the characters stands in its place once the right layout is thought of; dead keys and a lost end cost some. */
const LEAST_SHARE = 0.6;
/** So many characters in a row are found in no label; a lost or added one elsewhere then does not matter. */
const SURE_RUN = 12;

/** The calibration code that a scan is, however a layout or a lost separator has changed it; null where it is another code. */
export function calibrationOf(text: string): CalibrationCode | null {
  const found = [...text.replace(/^\][A-Za-z][0-9A-Za-z](?=[AaQq])/, '').toLowerCase()];
  let best: { readonly code: CalibrationCode; readonly share: number } | null = null;
  for (const code of [fullCalibration, stripedCalibration]) {
    if (found.length < code.leastCharacters || found.length > code.text.length * 1.3) continue;
    const printed = [...code.text.toLowerCase()];
    const share = hasRun(found.join(''), printed) ? 1 : Math.max(...arrivals(code).map(sameAs(found)));
    if (share >= LEAST_SHARE && share > (best?.share ?? 0)) best = { code, share };
  }
  return best?.code ?? null;
}

/** How a code may arrive: as printed, and through each pair of layouts. */
function arrivals(code: CalibrationCode): readonly (readonly string[])[] {
  const texts = keyboardLayouts.flatMap((layout) => [
    throughLayouts(code.text, 'us', layout),
    throughLayouts(code.text, layout, 'us'),
  ]);
  return [code.text, ...texts].map((text) => [...text.toLowerCase()]);
}

function sameAs(found: readonly string[]) {
  return (wanted: readonly string[]) => {
    const length = Math.min(found.length, wanted.length);
    return wanted.filter((char, at) => at < length && found[at] === char).length / length;
  };
}

function hasRun(found: string, wanted: readonly string[]): boolean {
  for (let at = 0; at + SURE_RUN <= wanted.length; at++)
    if (found.includes(wanted.slice(at, at + SURE_RUN).join(''))) return true;
  return false;
}

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

/** Compares what arrived for a calibration code. `received`: the scan's text with its control characters. */
export function checkCalibration(
  received: string,
  code: CalibrationCode = calibrationOf(received) ?? fullCalibration,
): Calibration {
  const chars = [...received];
  const body = chars.slice(0, code.body.length).join('');
  const tail = chars.slice(code.body.length).join('');
  const { characters, isCaseInverted } = compareCharacters(code.body, body);
  const separators = compareSeparators(code.separators, tail);
  const isEqual = characters.kind === 'equal' && !isCaseInverted && received === code.text;
  return { isEqual, characters, isCaseInverted, separators };
}

/** Swaps upper and lower case of the plain letters, as Caps Lock does. */
export function invertCase(text: string): string {
  return text.replace(/[A-Za-z]/g, (letter) =>
    letter === letter.toUpperCase() ? letter.toLowerCase() : letter.toUpperCase(),
  );
}

function compareCharacters(
  printed: string,
  body: string,
): {
  readonly characters: CalibrationCharacters;
  readonly isCaseInverted: boolean;
} {
  for (const isCaseInverted of [false, true]) {
    const seen = isCaseInverted ? invertCase(body) : body;
    if (seen === printed) return { characters: { kind: 'equal' }, isCaseInverted };
  }
  const pairs = keyboardLayouts.flatMap((layout) =>
    layout === 'us'
      ? []
      : [
          { tablet: layout, scanner: 'us' as Layout },
          { tablet: 'us' as Layout, scanner: layout },
        ],
  );
  const scored = pairs.flatMap((pair) => {
    const wanted = throughLayouts(printed, pair.scanner, pair.tablet);
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
    characters: { kind: 'unknown', wanted: printed, found: body },
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

function compareSeparators(places: readonly SeparatorPlace[], tail: string): readonly CalibrationSeparator[] {
  return places.map(({ name, char, before, after }) => {
    const pattern = new RegExp(`${before}([^A-Za-z]*)${after}`, 'i');
    const between = pattern.exec(tail)?.[1];
    if (between === char) return { name, fate: 'kept', by: null };
    return between === undefined || between === ''
      ? { name, fate: 'lost', by: null }
      : { name, fate: 'replaced', by: between };
  });
}
