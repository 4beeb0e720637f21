// What does one key of a keyboard-wedge scanner mean?
// Method: control characters by Ctrl position, by Alt and number pad, by a substitute key the plant has set; the rest by
// what the keyboard layout typed, or by key position where the scanner is known to send a US layout.
// Refused: `keypress` and `keyCode`, which differ by browser and lose the number pad.

export const FILE_SEPARATOR = '\u001c';
export const GROUP_SEPARATOR = '\u001d';
export const RECORD_SEPARATOR = '\u001e';
export const UNIT_SEPARATOR = '\u001f';
/** Stands where a key came that says nothing: a dead key, or a named key in the middle of a scan. */
export const LOST = '\ufffd';

/** A key going down, as plain data. */
export interface KeyDown {
  readonly key: string;
  /** Key position (`KeyA`, `Numpad0`), independent of the layout; may be empty on Android. */
  readonly code: string;
  readonly ctrl: boolean;
  readonly alt: boolean;
  readonly shift: boolean;
  readonly meta: boolean;
  /** The third-level shift of European layouts, which some systems report as Ctrl with Alt. */
  readonly altGraph: boolean;
  readonly repeat: boolean;
}

export interface KeyReading {
  /** Which character a key name stands for, such as `{ F8: GS }` or `{ '~': GS }`. */
  readonly substitutes: Readonly<Record<string, string>>;
  /** `layout`: what the tablet's layout typed. `us-positions`: by key position, for a scanner known to send US keys. */
  readonly read: 'layout' | 'us-positions';
}

export type KeyMeaning =
  | { readonly kind: 'char'; readonly char: string }
  | { readonly kind: 'end'; readonly by: 'Enter' | 'Tab' }
  | { readonly kind: 'alt-digit'; readonly digit: string }
  | { readonly kind: 'modifier' }
  | { readonly kind: 'unidentified' }
  | { readonly kind: 'shortcut' }
  | { readonly kind: 'named' };

const MODIFIERS = new Set([
  'Shift', 'Control', 'Alt', 'AltGraph', 'CapsLock', 'Meta', 'OS', 'NumLock', 'Fn', 'FnLock', 'ScrollLock',
]); // biome-ignore format: one line of names reads better

const CONTROLS_BY_KEY: Readonly<Record<string, string>> = {
  '\\': FILE_SEPARATOR,
  ']': GROUP_SEPARATOR,
  '^': RECORD_SEPARATOR,
  _: UNIT_SEPARATOR,
};

// The same four where a US scanner presses them; 6 and minus need Shift to be `^` and `_`.
const CONTROLS_BY_POSITION: Readonly<Record<string, { readonly char: string; readonly shift: boolean }>> = {
  Backslash: { char: FILE_SEPARATOR, shift: false },
  BracketRight: { char: GROUP_SEPARATOR, shift: false },
  Digit6: { char: RECORD_SEPARATOR, shift: true },
  Minus: { char: UNIT_SEPARATOR, shift: true },
};

const US_ROWS: readonly (readonly [codes: readonly string[], plain: string, shifted: string])[] = [
  [['Backquote', ...'1234567890'].map((d) => (d.length > 1 ? d : `Digit${d}`)), '`1234567890', '~!@#$%^&*()'],
  [['Minus', 'Equal', 'BracketLeft', 'BracketRight', 'Backslash'], '-=[]\\', '_+{}|'],
  [['Semicolon', 'Quote', 'Comma', 'Period', 'Slash', 'Space'], ";',./ ", ':"<>? '],
  [
    [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((l) => `Key${l}`),
    'abcdefghijklmnopqrstuvwxyz',
    'ABCDEFGHIJKLMNOPQRSTUVWXYZ',
  ],
];

const US_BY_POSITION: ReadonlyMap<string, readonly [plain: string, shifted: string]> = new Map(
  US_ROWS.flatMap(([codes, plain, shifted]) =>
    codes.map((code, index) => [code, [plain.charAt(index), shifted.charAt(index)]] as const),
  ),
);

function controlOf(key: KeyDown, inBurst: boolean): string | null {
  const byKey = CONTROLS_BY_KEY[key.key];
  if (byKey !== undefined) return byKey;
  // By position and by letter only inside a burst: outside, these are a person's zoom, copy and reload.
  if (!inBurst) return null;
  const byPosition = CONTROLS_BY_POSITION[key.code];
  if (byPosition !== undefined && byPosition.shift === key.shift) return byPosition.char;
  return /^[a-z]$/i.test(key.key) ? String.fromCharCode(key.key.toUpperCase().charCodeAt(0) - 64) : null;
}

function endOf(key: KeyDown, control: string | null): 'Enter' | 'Tab' | null {
  if (key.key === 'Enter' || control === '\r' || control === '\n') return 'Enter';
  return (key.key === 'Tab' && !key.ctrl && !key.alt) || control === '\t' ? 'Tab' : null;
}

/** What a key says. `inBurst`: whether a scan is already under way, which widens what counts as a control character. */
export function keyMeaning(key: KeyDown, inBurst: boolean, reading: KeyReading): KeyMeaning {
  if (MODIFIERS.has(key.key)) return { kind: 'modifier' };
  const digit = /^Numpad(\d)$/.exec(key.code)?.[1];
  if (key.alt && !key.ctrl && digit !== undefined) return { kind: 'alt-digit', digit };
  const substitute = reading.substitutes[key.key];
  if (substitute !== undefined && (inBurst || key.key.length > 1)) return { kind: 'char', char: substitute };
  // Ctrl with Alt is the third level of a European layout, not a control sequence.
  const control = key.ctrl && !key.alt && !key.altGraph ? controlOf(key, inBurst) : null;
  const end = endOf(key, control);
  if (end !== null) return { kind: 'end', by: end };
  if (control !== null) return { kind: 'char', char: control };
  if (key.key === 'Dead') return { kind: 'char', char: LOST };
  if (key.key === 'Unidentified' || key.key === 'Process' || key.key === '') return { kind: 'unidentified' };
  const isThirdLevel = key.altGraph || (key.ctrl && key.alt);
  if (key.meta || ((key.ctrl || key.alt) && !isThirdLevel)) return { kind: 'shortcut' };
  if ([...key.key].length !== 1) return { kind: 'named' };
  const us = reading.read === 'us-positions' ? US_BY_POSITION.get(key.code) : undefined;
  return { kind: 'char', char: us === undefined ? key.key : us[key.shift ? 1 : 0] };
}

/** The character of Alt and number pad digits; the lost mark above 255, where systems disagree. */
export function altDigitsToChar(digits: string): string {
  const value = Number.parseInt(digits, 10);
  return value <= 255 ? String.fromCharCode(value) : LOST;
}
