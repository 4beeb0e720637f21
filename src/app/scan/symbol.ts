// Draws a text as a Data Matrix symbol (ISO/IEC 16022, ECC 200), as squares. Method: the writer beside the decoder in the same library; its file is fetched when
// the first label is drawn, and lies in the offline copy. Refused: a second library for one symbol.

import { prepareZXingModule, writeBarcode } from 'zxing-wasm/writer';
import wasmUrl from 'zxing-wasm/writer/zxing_writer.wasm?url';

/** A square symbol without its white edge: row after row, true for a dark square. */
export interface CodeSquares {
  readonly side: number;
  readonly dark: readonly boolean[];
}

let prepared = false;

/** The symbol of a text; square, the smallest that holds it. Rejects with why where the text is too long for one, or nothing can be drawn here. */
export async function drawSymbol(text: string): Promise<CodeSquares> {
  if (!prepared) prepareZXingModule({ overrides: { locateFile: () => wasmUrl } });
  prepared = true;
  return symbolOf(text);
}

/** The same once the library's file is at hand. */
export async function symbolOf(text: string): Promise<CodeSquares> {
  const { symbol, error } = await writeBarcode(text, { format: 'DataMatrix', options: 'forceSquare' });
  if (error || symbol.width !== symbol.height)
    throw new Error(
      `Cannot draw a code as its text must fit one symbol: current length is ${text.length} ${error}`,
    );
  return { side: symbol.width, dark: [...symbol.data].map((light) => light === 0) };
}
