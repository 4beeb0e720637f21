// Draws a text as a Data Matrix symbol (ISO/IEC 16022, ECC 200), as squares, by the writer beside the decoder in the same library. Refused: a second
// library for one symbol.

import { writeBarcode } from 'zxing-wasm/writer';

/** A square symbol without its white edge: row after row, true for a dark square. */
export interface CodeSquares {
  readonly side: number;
  readonly dark: readonly boolean[];
}

/** The symbol of a text; square, the smallest that holds it. Rejects with why where the text is too long for one. */
export async function symbolOf(text: string): Promise<CodeSquares> {
  const { symbol, error } = await writeBarcode(text, { format: 'DataMatrix', options: 'forceSquare' });
  if (error || symbol.width !== symbol.height)
    throw new Error(
      `Cannot draw a code as its text must fit one symbol: current length is ${text.length} ${error}`,
    );
  return { side: symbol.width, dark: [...symbol.data].map((light) => light === 0) };
}
