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

/**
 * Quiet zones in the library's steps: one module of Code 128, half a module of the others. The standards ask for 10 modules
 * (ISO/IEC 15417), 1 (ISO/IEC 16022) and 4 (ISO/IEC 18004); a little more is given.
 */
const quietZones = { Code128: 12, DataMatrix: 5, QRCode: 9 } as const satisfies Record<SymbolFormat, number>;

/** Drawing units of one step: an even number, so that every edge falls on a whole unit. */
const UNITS = 2;

/** How a symbol is drawn, in the words of the drawing library. */
export function drawingOf({ text, format }: LabelSymbol) {
  const flat = format === 'Code128';
  return {
    bcid: names[format],
    text,
    parse: false,
    ...(flat ? { height: 9, includetext: false } : {}),
    paddingwidth: quietZones[format],
    paddingheight: flat ? 2 : quietZones[format],
    backgroundcolor: 'ffffff',
    scale: UNITS,
  };
}

/** Loads the drawing library. */
export async function loadSymbols(): Promise<DrawSymbol> {
  const { toSVG } = await importDrawing();
  // Drawn one unit to the pixel: whole pixels a module on any screen, and edges that no smoothing blurs.
  return (symbol) =>
    toSVG(drawingOf(symbol)).replace(
      /<svg viewBox="0 0 (\d+) (\d+)"/,
      '<svg width="$1" height="$2" shape-rendering="crispEdges" viewBox="0 0 $1 $2"',
    );
}

async function importDrawing() {
  try {
    return await import('bwip-js/node');
  } catch {
    throw new SymbolsMissing('the label sheet needs the package bwip-js: run "npm ci" without --omit=dev');
  }
}
