// Bars of a Code 128 symbol, for the one code that a page prints for readers of bar codes only.
// Method: ISO/IEC 15417, code set B throughout, control characters by a single shift to set A; no set C, since the text is
// not digits. Refused: a general symbol library, many times larger than this table; the tests hold one against it.

/** Widths of bars and spaces in modules, by symbol value (ISO/IEC 15417, table 1); 103 to 105 start, 106 stops. */
const PATTERNS = (
  '212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231 113222 ' +
  '123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321 ' +
  '232121 111323 131123 131321 112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121 ' +
  '313121 211331 231131 213113 213311 213131 311123 311321 331121 312113 312311 332111 314111 221411 431111 111224 ' +
  '111422 121124 121421 141122 141221 112214 112412 122114 122411 142112 142211 241211 221114 413111 241112 134111 ' +
  '111242 121142 121241 114212 124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113 ' +
  '114311 411113 411311 113141 114131 311141 411131 211412 211214 211232 2331112'
).split(' ');
const SHIFT = 98;
const START_B = 104;
const STOP = 106;
/** Empty modules that a reader wants on either side. */
const QUIET = 10;

/** A symbol's bars: from the left edge of the quiet zone, in modules. */
export interface Bars {
  readonly bars: readonly { readonly from: number; readonly width: number }[];
  /** All of it, quiet zones included. */
  readonly width: number;
}

function valuesOf(text: string): number[] {
  return [...text].flatMap((char) => {
    const code = char.charCodeAt(0);
    if (char.length > 1 || code > 126) {
      throw new RangeError(`Cannot draw text as bars as it must be ASCII: current value is ${char}`);
    }
    return code < 32 ? [SHIFT, code + 64] : [code - 32];
  });
}

/** The bars of a text of ASCII characters, control characters included. Throws RangeError for any other. */
export function code128Bars(text: string): Bars {
  const values = [START_B, ...valuesOf(text)];
  // Check character: the sum of values times places, modulo 103; the start counts once.
  const sum = values.reduce((total, value, at) => total + value * Math.max(1, at), 0);
  const bars: { from: number; width: number }[] = [];
  let from = QUIET;
  for (const value of [...values, sum % 103, STOP]) {
    [...(PATTERNS[value] ?? '')].forEach((digit, at) => {
      const width = Number(digit);
      if (at % 2 === 0) bars.push({ from, width });
      from += width;
    });
  }
  return { bars, width: from + QUIET };
}
