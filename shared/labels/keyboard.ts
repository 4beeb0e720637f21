// Whether a scanner types for another keyboard layout than the tablet's, so that `[)>` arrives as `ü=:` and `-` as `ß`.
// Method: the header mark and the brackets and colons of key lists as each layout alters them (US keys, national
// layouts as printed on keyboards). Such text is named and never read: y and z may be exchanged in it unseen.

import { isAscii } from './characters.ts';

/** A layout that alters what the scanner sends. */
interface Layout {
  readonly name: string;
  /** `[)>` as this layout types it. */
  readonly mark: string;
  /** `{` and `:` as this layout types them. */
  readonly brace: string;
  readonly colon: string;
}

const LAYOUTS: readonly Layout[] = [
  { name: 'German (QWERTZ)', mark: 'ü=:', brace: 'Ü', colon: 'Ö' },
  { name: 'Nordic', mark: 'å=:', brace: 'Å', colon: 'ÖÆØ' },
  { name: 'Italian', mark: 'è=:', brace: 'é', colon: 'ç' },
  { name: 'Spanish', mark: '`=:', brace: '^', colon: 'Ñ' },
  { name: 'French (AZERTY)', mark: '^0/', brace: '¨', colon: 'M' },
];

// What the German layout makes of the keys that a US scanner presses; the way back for the hint to a person.
const GERMAN_TYPED = 'ß´ü+#öä-zyZY?`Ü*\'ÖÄ;:_"§&/()=';
const GERMAN_MEANT = '-=[]\\;\'/yzYZ_+{}|:"<>?@#^&*()';

/** A layout found, and the text as it was meant where that can be told. */
export interface LayoutFinding {
  readonly layout: string;
  /** Null where the way back is not known. */
  readonly meant: string | null;
}

// The French keyboard's digits need Shift: the digit row without it, with the letters that stand elsewhere.
const FRENCH_TYPED = '&é"\'(-è_çà)AQWZ?';
const FRENCH_MEANT = '1234567890-QAZWM';
const FRENCH_DIGIT = /[&é"'(_èçà]/g;

/**
 * A code whose digits came as a French keyboard's digit row: none is left, and at least three signs of that row stand for them. Codes
 * come in capitals; a word with accents or quotes does not.
 */
function isFrenchDigits(text: string): boolean {
  if (/[^A-Z&é"'(_èçà),?.;:!-]/.test(text) || !/[A-Z]/.test(text)) return false;
  const signs = text.match(FRENCH_DIGIT) ?? [];
  return signs.length >= 3 && new Set(signs).size >= 2;
}

/** Names the keyboard layout that altered a code, or null where none shows. */
export function findKeyboardLayout(text: string): LayoutFinding | null {
  if (isFrenchDigits(text))
    return { layout: 'French (AZERTY)', meant: typedBack(text, FRENCH_TYPED, FRENCH_MEANT) };
  // Every other altered text holds a letter beyond ASCII, or one of two accents in front.
  if (text[0] !== '`' && text[0] !== '^' && isAscii(text)) return null;
  for (const layout of LAYOUTS) {
    const lower = text.slice(0, 3).toLowerCase();
    const keyList = text[0] === layout.brace && [...text].some((char) => layout.colon.includes(char));
    if (lower === layout.mark || (keyList && layout.name !== 'French (AZERTY)'))
      return finding(layout.name, text);
  }
  // Upper-case text with ß: no part number or lot holds one, it is the German layout's hyphen. Keys before Ö: its colon.
  const sharp = text.includes('ß') && !/[a-z]/.test(text);
  const keys = /(?:^|[\s,;])[A-Za-z]{2,4}Ö[^\s\p{L}]/u.test(text);
  return sharp || keys ? finding('German (QWERTZ)', text) : null;
}

function finding(layout: string, text: string): LayoutFinding {
  if (layout !== 'German (QWERTZ)') return { layout, meant: null };
  return { layout, meant: typedBack(text, GERMAN_TYPED, GERMAN_MEANT) };
}

/** A text with each key that a layout types otherwise as it was meant. */
function typedBack(text: string, typed: string, meant: string): string {
  let back = '';
  for (const char of text) back += meant[typed.indexOf(char)] ?? char;
  return back;
}
