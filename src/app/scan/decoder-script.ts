// The reader for browsers where WebAssembly is barred: plain script, one code a frame, on the page's thread.
// Loaded only when the worker said that it cannot run.

import {
  BarcodeFormat,
  BinaryBitmap,
  DecodeHintType,
  HybridBinarizer,
  MultiFormatReader,
  type Result as ReadResult,
  RGBLuminanceSource,
} from '@zxing/library';
import { rgbaToGray } from '../../worker/decode-image.ts';
import type { CodeFormat, FoundCode, GrayImage, Quad } from '../../worker/decode-protocol.ts';
import type { DecodeAnswer, Decoder, DecodeWishes } from './decoder.ts';
import type { GrabbedFrame } from './grab.ts';

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
  const reader = new MultiFormatReader();
  reader.setHints(hints);
  try {
    return toFound(reader.decodeWithState(new BinaryBitmap(new HybridBinarizer(source))));
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

/** A decoder on the page's own thread. */
export function createScriptDecoder(): Decoder {
  const canvas = document.createElement('canvas');
  return {
    path: 'script',
    async decode({ frame, crop }: GrabbedFrame, wishes: DecodeWishes): Promise<DecodeAnswer> {
      const startMs = performance.now();
      const { x, y, width, height } = crop;
      canvas.width = width;
      canvas.height = height;
      const context = canvas.getContext('2d', { willReadFrequently: true });
      if (context === null)
        throw new TypeError('Cannot read frame as a 2D canvas must be there: current value is null');
      context.drawImage(frame, x, y, width, height, 0, 0, width, height);
      frame.close();
      const image = rgbaToGray(context.getImageData(0, 0, width, height).data, width, height);
      const codes = readWithScript(image, wishes.formats);
      return { codes, width, height, spentMs: performance.now() - startMs };
    },
    close() {},
  };
}
