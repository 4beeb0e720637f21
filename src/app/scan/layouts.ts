// Keyboard layouts a tablet may be set to, as what each key types; used to name the layout that mangled a scan.
// Method: one string per row of keys, plain and shifted, compared by position. Refused: `navigator.keyboard`, which only
// one browser family has and which tells the physical keyboard, not the scanner's.
// The tables are checked against the X keyboard data base (xkeyboard-config) in the tests.

export const keyboardLayouts = [
  'us',
  'uk',
  'german',
  'swiss-german',
  'french',
  'spanish',
  'italian',
  'swedish',
] as const;
export type Layout = (typeof keyboardLayouts)[number];

/** Key positions in the order of the strings below: digit row, three letter rows, the extra key by the left Shift. */
export const KEY_POSITIONS: readonly string[] = [
  'Backquote',
  ...[...'1234567890'].map((digit) => `Digit${digit}`),
  'Minus',
  'Equal',
  ...[...'QWERTYUIOP'].map((letter) => `Key${letter}`),
  'BracketLeft',
  'BracketRight',
  'Backslash',
  ...[...'ASDFGHJKL'].map((letter) => `Key${letter}`),
  'Semicolon',
  'Quote',
  'IntlBackslash',
  ...[...'ZXCVBNM'].map((letter) => `Key${letter}`),
  'Comma',
  'Period',
  'Slash',
];

/** A key that types nothing by itself but waits for a letter. */
export const DEAD = '\ufffd';

// A blank stands for a dead key. Rows: digits, upper, home, lower (from the extra key on).
const ROWS: Readonly<Record<Layout, readonly [plain: readonly string[], shifted: readonly string[]]>> = {
  us: [
    ['`1234567890-=', 'qwertyuiop[]\\', "asdfghjkl;'", '\\zxcvbnm,./'],
    ['~!@#$%^&*()_+', 'QWERTYUIOP{}|', 'ASDFGHJKL:"', '|ZXCVBNM<>?'],
  ],
  uk: [
    ['`1234567890-=', 'qwertyuiop[]#', "asdfghjkl;'", '\\zxcvbnm,./'],
    ['¬!"£$%^&*()_+', 'QWERTYUIOP{}~', 'ASDFGHJKL:@', '|ZXCVBNM<>?'],
  ],
  german: [
    [' 1234567890ß ', 'qwertzuiopü+#', 'asdfghjklöä', '<yxcvbnm,.-'],
    ['°!"§$%&/()=? ', "QWERTZUIOPÜ*'", 'ASDFGHJKLÖÄ', '>YXCVBNM;:_'],
  ],
  'swiss-german': [
    ["§1234567890' ", 'qwertzuiopü $', 'asdfghjklöä', '<yxcvbnm,.-'],
    ['°+"*ç%&/()=? ', 'QWERTZUIOPè!£', 'ASDFGHJKLéà', '>YXCVBNM;:_'],
  ],
  french: [
    ['²&é"\'(-è_çà)=', 'azertyuiop $*', 'qsdfghjklmù', '<wxcvbn,;:!'],
    ['~1234567890°+', 'AZERTYUIOP £µ', 'QSDFGHJKLM%', '>WXCVBN?./§'],
  ],
  spanish: [
    ["º1234567890'¡", 'qwertyuiop +ç', 'asdfghjklñ ', '<zxcvbnm,.-'],
    ['ª!"·$%&/()=?¿', 'QWERTYUIOP *Ç', 'ASDFGHJKLÑ ', '>ZXCVBNM;:_'],
  ],
  italian: [
    ["\\1234567890'ì", 'qwertyuiopè+ù', 'asdfghjklòà', '<zxcvbnm,.-'],
    ['|!"£$%&/()=?^', 'QWERTYUIOPé*§', 'ASDFGHJKLç°', '>ZXCVBNM;:_'],
  ],
  swedish: [
    ['§1234567890+ ', "qwertyuiopå '", 'asdfghjklöä', '<zxcvbnm,.-'],
    ['½!"#¤%&/()=? ', 'QWERTYUIOPÅ *', 'ASDFGHJKLÖÄ', '>ZXCVBNM;:_'],
  ],
};

/** What a layout types on the keys of `KEY_POSITIONS`; `DEAD` where a key waits for a letter. */
export function layoutChars(layout: Layout): {
  readonly plain: readonly string[];
  readonly shifted: readonly string[];
} {
  const [plain, shifted] = ROWS[layout];
  const chars = (rows: readonly string[]) => [...rows.join('')].map((char) => (char === ' ' ? DEAD : char));
  return { plain: chars(plain), shifted: chars(shifted) };
}

/** The key that types a character in a layout; null where it takes a third level or a dead key. */
export function charToKey(
  char: string,
  layout: Layout,
): { readonly code: string; readonly shift: boolean } | null {
  const { plain, shifted } = layoutChars(layout);
  const at = char === DEAD ? -1 : plain.indexOf(char);
  const shiftedAt = char === DEAD ? -1 : shifted.indexOf(char);
  if (at < 0 && shiftedAt < 0) return null;
  const isShifted = at < 0;
  return { code: KEY_POSITIONS[isShifted ? shiftedAt : at] ?? '', shift: isShifted };
}

/** What a tablet set to `host` receives when a scanner set to `scanner` sends a text, key by key. */
export function throughLayouts(text: string, scanner: Layout, host: Layout): string {
  const { plain, shifted } = layoutChars(host);
  return [...text]
    .map((char) => {
      const key = charToKey(char, scanner);
      if (key === null) return char;
      const at = KEY_POSITIONS.indexOf(key.code);
      return (key.shift ? shifted[at] : plain[at]) ?? char;
    })
    .join('');
}
