// What @zxing/browser's reader is asked for and what it answers, in this app's own terms: no WebAssembly, one code a picture, several
// times less thorough than the wasm reader. No element of a page is touched here, so that tests read drawn labels with it.

import { BrowserMultiFormatReader } from '@zxing/browser';
import {
  BarcodeFormat,
  type BinaryBitmap,
  DecodeHintType,
  NotFoundException,
  type Result as ReadResult,
} from '@zxing/library';
import type { CodeFormat, FoundCode, Quad } from '../../worker/decode-protocol.ts';

const SCRIPT_FORMATS: Readonly<Partial<Record<CodeFormat, BarcodeFormat>>> = {
  DataMatrix: BarcodeFormat.DATA_MATRIX,
  QRCode: BarcodeFormat.QR_CODE,
  PDF417: BarcodeFormat.PDF_417,
  Code128: BarcodeFormat.CODE_128,
  Code39: BarcodeFormat.CODE_39,
  Code93: BarcodeFormat.CODE_93,
  ITF: BarcodeFormat.ITF,
  Aztec: BarcodeFormat.AZTEC,
};

/** The library's reader for the formats wanted: a picture without a code and one with a damaged code both hold nothing. */
export class ScriptReader extends BrowserMultiFormatReader {
  /** `pauseMs` from the end of one picture to the next, where it reads a stream. */
  constructor(formats: readonly CodeFormat[], pauseMs: number) {
    const wanted = formats.flatMap((format) => SCRIPT_FORMATS[format] ?? []);
    const hints = new Map<DecodeHintType, unknown>([
      [DecodeHintType.TRY_HARDER, true],
      [DecodeHintType.POSSIBLE_FORMATS, wanted],
    ]);
    super(hints, { delayBetweenScanAttempts: pauseMs, delayBetweenScanSuccess: pauseMs });
  }

  /** Throws "not found" for whatever kept the picture from being read: any other fault would end the library's loop. */
  override decodeBitmap(bitmap: BinaryBitmap): ReadResult {
    try {
      return super.decodeBitmap(bitmap);
    } catch {
      throw new NotFoundException();
    }
  }
}

/** The code of an answer; null for a kind that nobody asked for, or one without a place in the picture. */
export function foundIn(result: ReadResult): FoundCode | null {
  const scriptFormat = result.getBarcodeFormat();
  const format = (Object.keys(SCRIPT_FORMATS) as CodeFormat[]).find(
    (each) => SCRIPT_FORMATS[each] === scriptFormat,
  );
  const points = result.getResultPoints().filter((point) => point !== null);
  if (format === undefined || points.length === 0) return null;
  const xs = points.map((point) => point.getX());
  const ys = points.map((point) => point.getY());
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const quad: Quad = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  return { text: result.getText(), format, symbologyId: '', quad, pass: 'script' };
}
