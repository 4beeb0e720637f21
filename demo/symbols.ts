// Draws a label's symbols as SVG. The drawing library is needed by the demo only, so it is loaded when the sheet is asked for.

import type { LabelSymbol, SymbolFormat } from './reels.ts';

/** The drawing library is not installed: it comes with `npm ci`, but not with `npm ci --omit=dev`. */
export class SymbolsMissing extends Error {}

/** Draws one symbol; returns an `svg` element as text. */
export type DrawSymbol = (symbol: LabelSymbol) => string;

const names = {
  DataMatrix: 'datamatrix',
  Code128: 'code128',
  QRCode: 'qrcode',
} as const satisfies Record<SymbolFormat, string>;

/** How a symbol is drawn, in the words of the drawing library. */
export function drawingOf({ text, format }: LabelSymbol) {
  const flat = format === 'Code128';
  // Code 128 asks for quiet zones of 10 modules, Data Matrix of 1, QR of 4 (ISO/IEC 15417, 16022, 18004): a little more is given.
  const zone = flat ? 12 : 5;
  return {
    bcid: names[format],
    text,
    parse: false,
    ...(flat ? { height: 9, includetext: false } : {}),
    paddingwidth: zone,
    paddingheight: flat ? 2 : zone,
    backgroundcolor: 'ffffff',
    scale: 2,
  };
}

/** Loads the drawing library. */
export async function loadSymbols(): Promise<DrawSymbol> {
  const { toSVG } = await importDrawing();
  return (symbol) => toSVG(drawingOf(symbol));
}

async function importDrawing() {
  try {
    return await import('bwip-js/node');
  } catch {
    throw new SymbolsMissing('the label sheet needs the package bwip-js: run "npm ci" without --omit=dev');
  }
}
