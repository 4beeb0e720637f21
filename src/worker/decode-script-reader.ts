// The reader for browsers where WebAssembly is barred: plain script, one code a frame. Slower, and several times less thorough.

import { BrowserMultiFormatReader } from '@zxing/browser';
import {
  BarcodeFormat,
  BinaryBitmap,
  DecodeHintType,
  HybridBinarizer,
  type Result as ReadResult,
  RGBLuminanceSource,
} from '@zxing/library';
import type { CodeFormat, FoundCode, GrayImage, Quad } from './decode-protocol.ts';

const SCRIPT_FORMATS: Readonly<Partial<Record<CodeFormat, BarcodeFormat>>> = {
  DataMatrix: BarcodeFormat.DATA_MATRIX,
  QRCode: BarcodeFormat.QR_CODE,
  PDF417: BarcodeFormat.PDF_417,
  Code128: BarcodeFormat.CODE_128,
  Code39: BarcodeFormat.CODE_39,
  ITF: BarcodeFormat.ITF,
  Aztec: BarcodeFormat.AZTEC,
};

/** Reads one grey picture; empty when nothing was found. */
export function readWithScript(image: GrayImage, formats: readonly CodeFormat[]): readonly FoundCode[] {
  const hints = new Map<DecodeHintType, unknown>([
    [DecodeHintType.TRY_HARDER, true],
    [DecodeHintType.POSSIBLE_FORMATS, formats.flatMap((format) => SCRIPT_FORMATS[format] ?? [])],
  ]);
  const source = new RGBLuminanceSource(new Uint8ClampedArray(image.data), image.width, image.height);
  const reader = new BrowserMultiFormatReader(hints);
  try {
    return toFound(reader.decodeBitmap(new BinaryBitmap(new HybridBinarizer(source))));
  } catch {
    // This library throws for "nothing found" as for a damaged code; either way the frame gave nothing.
    return [];
  }
}

function toFound(result: ReadResult): readonly FoundCode[] {
  const scriptFormat = result.getBarcodeFormat();
  const format = (Object.keys(SCRIPT_FORMATS) as CodeFormat[]).find(
    (each) => SCRIPT_FORMATS[each] === scriptFormat,
  );
  if (format === undefined) return [];
  const points = result.getResultPoints().filter((point) => point !== null);
  const xs = points.map((point) => point.getX());
  const ys = points.map((point) => point.getY());
  if (points.length === 0) return [];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const quad: Quad = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  return [{ text: result.getText(), format, symbologyId: '', quad, pass: 'script' }];
}
