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
  { name: 'Hungarian (QWERTZ)', mark: 'őö:', brace: 'Ő', colon: 'É' },
  { name: 'Czech (QWERTZ)', mark: 'ú0:', brace: '', colon: '' },
  { name: 'Nordic', mark: 'å=:', brace: 'Å', colon: 'ÖÆØ' },
  { name: 'Italian', mark: 'è=:', brace: 'é', colon: 'ç' },
  { name: 'Spanish', mark: '`=:', brace: '^', colon: 'Ñ' },
  { name: 'French (AZERTY)', mark: '^0/', brace: '¨', colon: 'M' },
];

// What the German layout makes of the keys that a US scanner presses; the way back for the hint to a person.
const GERMAN_TYPED = 'ß´ü+#öä-zyZY?`Ü*\'ÖÄ;:_"§&/()=';
const GERMAN_MEANT = '-=[]\\;\'/yzYZ_+{}|:"<>?@#^&*()';

// Hungarian keyboards have the nought left of the one: the key of the US nought types ö, and the marks stand elsewhere too.
const HUNGARIAN_TYPED = 'öüóőúéáű-zyZYÖÜÓÉ_:?';
const HUNGARIAN_MEANT = "0-=[];'\\/yzYZ)_+:?><";

// The digit row of a Czech keyboard without Shift.
const CZECH_TYPED = '+ěščřžýáíé=zyZY';
const CZECH_MEANT = '1234567890-yzYZ';

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

/**
 * Capitals, digits and marks with small letters of one keyboard among them and no others: no language writes so, and no part number. Ö stands
 * for the nought on a Hungarian keyboard and for the semicolon on a German one.
 */
function amongCapitals(text: string): string | null {
  if (/ß/.test(text) && !/[a-z]/.test(text)) return 'German (QWERTZ)';
  if (!/^[A-Z0-9ÖÄÜ\s\p{P}\p{S}\p{Cc}öäüóőúéáű]+$/u.test(text) || !/[A-Z0-9]/.test(text)) return null;
  const body = text.slice(1);
  const isNought = !text.includes('0') && /\dö(?:ö|\d|$)/.test(text);
  // Italian and Spanish keyboards put an accent in front as well.
  if ((/[óőúéáű]/.test(body) || isNought) && !text.includes('ä')) return 'Hungarian (QWERTZ)';
  return /[öäü´§]/.test(text) ? 'German (QWERTZ)' : null;
}

/** Digits typed without Shift on a Czech keyboard: none is left, and three signs or more of two kinds stand for them. */
function isCzechDigits(text: string): boolean {
  if (!/^[A-Z+ěščřžýáíé=,._ -]+$/.test(text) || !/[A-Z]/.test(text)) return false;
  const signs = text.match(/[ěščřžýáíé+]/g) ?? [];
  return signs.length >= 3 && new Set(signs).size >= 2 && /[ěščřž]/.test(text);
}

/** Names the keyboard layout that altered a code, or null where none shows. */
export function findKeyboardLayout(text: string): LayoutFinding | null {
  if (isFrenchDigits(text)) return finding('French (AZERTY)', text);
  if (isCzechDigits(text)) return finding('Czech (QWERTZ)', text);
  // Every other altered text holds a letter beyond ASCII, or one of two accents in front.
  if (text[0] !== '`' && text[0] !== '^' && isAscii(text)) return null;
  for (const layout of LAYOUTS) {
    const lower = text.slice(0, 3).toLowerCase();
    const keyList = text[0] === layout.brace && [...text].some((char) => layout.colon.includes(char));
    if (lower === layout.mark || (keyList && layout.name !== 'French (AZERTY)'))
      // The French header alone says nothing of the digits behind it.
      return layout.name === 'French (AZERTY)'
        ? { layout: layout.name, meant: null }
        : finding(layout.name, text);
  }
  const among = amongCapitals(text);
  if (among !== null) return finding(among, text);
  // Keys before Ö: the German layout's colon.
  const keys = /(?:^|[\s,;])[A-Za-z]{2,4}Ö[^\s\p{L}]/u.test(text);
  return keys ? finding('German (QWERTZ)', text) : null;
}

/** What each layout typed, and what was meant; layouts that are not here have no way back that is known. */
const WAYS_BACK: Readonly<Record<string, readonly [typed: string, meant: string]>> = {
  'German (QWERTZ)': [GERMAN_TYPED, GERMAN_MEANT],
  'Hungarian (QWERTZ)': [HUNGARIAN_TYPED, HUNGARIAN_MEANT],
  'Czech (QWERTZ)': [CZECH_TYPED, CZECH_MEANT],
  'French (AZERTY)': [FRENCH_TYPED, FRENCH_MEANT],
};

function finding(layout: string, text: string): LayoutFinding {
  const [typed, meant] = WAYS_BACK[layout] ?? [];
  return { layout, meant: typed === undefined || meant === undefined ? null : typedBack(text, typed, meant) };
}

/** A text with each key that a layout types otherwise as it was meant. */
function typedBack(text: string, typed: string, meant: string): string {
  let back = '';
  for (const char of text) back += meant[typed.indexOf(char)] ?? char;
  return back;
}
