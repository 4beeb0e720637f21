// Draws codes on a page: the library's own file is fetched when the first one is drawn, and lies in the offline copy.

import { prepareZXingModule } from 'zxing-wasm/writer';
import wasmUrl from 'zxing-wasm/writer/zxing_writer.wasm?url';
import { type CodeSquares, symbolOf } from './symbol.ts';

let prepared = false;

/** The symbol of a text. Rejects where it is too long for one, or nothing can be drawn here. */
export function drawSymbol(text: string): Promise<CodeSquares> {
  if (!prepared) prepareZXingModule({ overrides: { locateFile: () => wasmUrl } });
  prepared = true;
  return symbolOf(text);
}
