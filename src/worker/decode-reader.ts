// From one grey picture to the codes in it, through the wasm reader.
// Method: the reader's pixel entry with the bytes kept as they are ("Plain": GS stays U+001D). Refused: its wrapper, which
// widens each grey pixel to four and narrows it again, and its text for people, which replaces control characters.

import {
  BINARIZERS,
  type Binarizer,
  CHARACTER_SETS,
  defaultReaderOptions,
  EAN_ADD_ON_SYMBOLS,
  encodeFormats,
  type ReadInputBarcodeFormat,
  TEXT_MODES,
  type ZXingReaderOptions,
  type ZXingReadResult,
} from 'zxing-wasm/reader';
import {
  type CodeFormat,
  codeFormats,
  type FoundCode,
  type GrayImage,
  type Quad,
} from './decode-protocol.ts';

export interface ReadEffort {
  readonly tryHarder: boolean;
  readonly tryRotate: boolean;
  readonly tryInvert: boolean;
  readonly tryDownscale: boolean;
  readonly tryDenoise: boolean;
  readonly binarizer: Binarizer;
}

/** The parts of the wasm module used here; its own types lean on a package of global declarations that is not needed else. */
export interface ReaderModule {
  readonly HEAPU8: Uint8Array;
  _malloc(bytes: number): number;
  _free(pointer: number): void;
  readBarcodesFromPixmap(
    pointer: number,
    width: number,
    height: number,
    options: ZXingReaderOptions,
  ): { size(): number; get(index: number): ZXingReadResult | undefined; delete(): void };
}

export type CodeReader = (
  image: GrayImage,
  formats: readonly CodeFormat[],
  effort: ReadEffort,
) => readonly Omit<FoundCode, 'pass'>[];

// Standard Code 39 only: the full-ASCII variant reads "+A" as "a" and would change part numbers.
const READER_FORMATS: Readonly<Record<CodeFormat, ReadInputBarcodeFormat>> = {
  DataMatrix: 'DataMatrix',
  QRCode: 'QRCode',
  PDF417: 'PDF417',
  Code128: 'Code128',
  Code39: 'Code39Std',
  Code93: 'Code93',
  ITF: 'ITF',
  EANUPC: 'EANUPC',
  Aztec: 'Aztec',
};

/** Wraps a loaded reader module. */
export function createCodeReader(module: ReaderModule): CodeReader {
  return (image, formats, effort) => {
    const size = image.width * image.height;
    const pointer = module._malloc(size);
    if (pointer === 0)
      throw new RangeError(
        `Cannot read frame as it must fit the decoder's memory: current value is ${size} bytes`,
      );
    try {
      module.HEAPU8.set(image.data.subarray(0, size), pointer);
      const results = module.readBarcodesFromPixmap(
        pointer,
        image.width,
        image.height,
        toOptions(formats, effort),
      );
      const found = Array.from({ length: results.size() }, (_, index) => results.get(index));
      const codes = found.flatMap((result) => (result === undefined ? [] : toFound(result)));
      results.delete();
      return codes;
    } finally {
      module._free(pointer);
    }
  };
}

function toOptions(formats: readonly CodeFormat[], effort: ReadEffort): ZXingReaderOptions {
  return {
    ...defaultReaderOptions,
    ...effort,
    formats: encodeFormats(formats.map((format) => READER_FORMATS[format])),
    binarizer: BINARIZERS.indexOf(effort.binarizer),
    textMode: TEXT_MODES.indexOf('Plain'),
    characterSet: CHARACTER_SETS.indexOf('Unknown'),
    eanAddOnSymbol: EAN_ADD_ON_SYMBOLS.indexOf('Ignore'),
    maxNumberOfSymbols: 24,
    tryCode39ExtendedMode: false,
  };
}

function toFound(result: ZXingReadResult): Omit<FoundCode, 'pass'>[] {
  const format = codeFormats.find((each) => each === result.symbology);
  if (!result.isValid || format === undefined) return [];
  const { topLeft, topRight, bottomRight, bottomLeft } = result.position;
  const quad: Quad = [topLeft, topRight, bottomRight, bottomLeft];
  const code = { text: result.text, format, symbologyId: result.symbologyIdentifier, quad };
  const { sequenceSize: of, sequenceIndex: index, sequenceId: id } = result;
  return of > 1 && index >= 0 ? [{ ...code, portion: { index, of, id } }] : [code];
}
