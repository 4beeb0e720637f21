// Invented labels as a sheet of paper in millimetres, printed at a given module width: what the frame bench photographs.
// Symbols come from bwip-js (an independent encoder); the sheet is drawn with covered-area edges, so that a module need
// not be a whole number of pixels.

import bwip from 'bwip-js/node';
import { type Chance, chanceBelow } from '../../shared/kit/chance.ts';
import type { CodeFormat, GrayImage } from '../../src/worker/decode-protocol.ts';

export interface PrintedCode {
  readonly text: string;
  readonly format: CodeFormat;
}

export interface PrintedLabel {
  readonly codes: readonly PrintedCode[];
}

export interface Sheet {
  readonly image: GrayImage;
  readonly pixelsPerMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly labels: readonly PrintedLabel[];
}

interface Symbol {
  readonly code: PrintedCode;
  /** Dark cells, rows of modules. */
  readonly cells: readonly (readonly boolean[])[];
  /** Height of one row over the module width. */
  readonly rowHeight: number;
}

const LETTERS = 'ABCDEFGHJKLMNPRSTUVWXYZ';
const PAPER = 232;
const INK = 26;
const LABEL_MM = { width: 74, height: 30 };
const GAP_MM = 4;
const BAR_MM = 6;

function word(chance: Chance, length: number): string {
  return Array.from({ length }, () =>
    chance() < 0.6 ? String(chanceBelow(chance, 10)) : LETTERS.charAt(chanceBelow(chance, LETTERS.length)),
  ).join('');
}

interface RawSymbol {
  readonly pixs?: readonly number[];
  readonly pixx?: number;
  readonly pixy?: number;
  readonly sbs?: readonly number[];
}

function symbolOf(text: string, format: CodeFormat): Symbol {
  const names: Readonly<Partial<Record<CodeFormat, string>>> = {
    DataMatrix: 'datamatrix',
    QRCode: 'qrcode',
    PDF417: 'pdf417',
    Code128: 'code128',
    Code39: 'code39',
  };
  const escaped = [...text]
    .map((char) => (char < ' ' ? `^${String(char.charCodeAt(0)).padStart(3, '0')}` : char))
    .join('');
  const options = {
    bcid: names[format] ?? '',
    text: escaped,
    parse: true,
    ...(format === 'PDF417' ? { columns: 4 } : {}),
  };
  // The typings of `raw` name neither its fields nor its single-object call.
  const [raw] = (bwip as unknown as { raw(options: object): readonly RawSymbol[] }).raw(options);
  if (raw?.sbs !== undefined) {
    const bars = raw.sbs.flatMap((width, at) =>
      Array.from({ length: Math.round(width) }, () => at % 2 === 0),
    );
    return { code: { text, format }, cells: [bars], rowHeight: 0 };
  }
  const { pixs = [], pixx = 0, pixy = 0 } = raw ?? {};
  const cells = Array.from({ length: pixy }, (_, y) =>
    Array.from({ length: pixx }, (_, x) => pixs[y * pixx + x] === 1),
  );
  return { code: { text, format }, cells, rowHeight: format === 'PDF417' ? 3 : 1 };
}

// Layouts met on reel labels: one square code alone, with stripes, stripes alone, stacked stripes, Code 39.
function labelSymbols(chance: Chance): readonly Symbol[] {
  const part = word(chance, 4 + chanceBelow(chance, 5));
  const lot = word(chance, 6);
  const count = String(1000 * (1 + chanceBelow(chance, 9)));
  const envelope = `[)>\u001e06\u001dP${part}\u001dQ${count}\u001d1T${lot}\u001e\u0004`;
  const stripes = [`P${part}`, `Q${count}`, `1T${lot}`];
  switch (chanceBelow(chance, 6)) {
    case 0:
      return [symbolOf(envelope, 'DataMatrix')];
    case 1:
      return [
        symbolOf(envelope, 'DataMatrix'),
        ...stripes.slice(0, 2).map((text) => symbolOf(text, 'Code128')),
      ];
    case 2:
      return [symbolOf(`P${part}Q${count}`, 'QRCode'), symbolOf(`S${word(chance, 8)}`, 'Code128')];
    case 3:
      return stripes.map((text) => symbolOf(text, 'Code128'));
    case 4:
      return [symbolOf(envelope, 'PDF417')];
    default:
      return [symbolOf(`S${word(chance, 6)}`, 'Code39'), symbolOf(envelope, 'DataMatrix')];
  }
}

/** Draws one or two labels, one above the other. */
export function makeSheet(
  chance: Chance,
  options: { moduleMm: number; pixelsPerMm: number; labels: 1 | 2 },
): Sheet {
  const { pixelsPerMm, moduleMm } = options;
  const heightMm = options.labels * LABEL_MM.height + (options.labels - 1) * GAP_MM;
  const canvas = createCanvas(LABEL_MM.width, heightMm, pixelsPerMm);
  const labels = Array.from({ length: options.labels }, (_, at): PrintedLabel => {
    const topMm = at * (LABEL_MM.height + GAP_MM);
    canvas.fill({ x: 0, y: topMm, width: LABEL_MM.width, height: LABEL_MM.height }, PAPER);
    const symbols = labelSymbols(chance);
    layOut(symbols, moduleMm, topMm).forEach(({ symbol, x, y, barMm }) => {
      drawSymbol(canvas, symbol, { x, y, moduleMm, barMm });
    });
    drawPrint(canvas, chance, topMm + LABEL_MM.height - 3.4);
    return { codes: symbols.map(({ code }) => code) };
  });
  return { image: canvas.image(), pixelsPerMm, widthMm: LABEL_MM.width, heightMm, labels };
}

/** A label of a shelf, with its paper in millimetres from the sheet's corner. */
export interface ShelfLabel extends PrintedLabel {
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

const SHELF_MM = { width: 74, height: 56 };
const SHELF_GAP_MM = { x: 10, y: 8 };

/**
 * Draws a shelf: labels side by side in rows, each with one square code, large enough to be read from where a dozen of them is in view.
 */
export function makeShelf(
  chance: Chance,
  { columns, rows, pixelsPerMm }: { columns: number; rows: number; pixelsPerMm: number },
): { readonly sheet: Sheet; readonly labels: readonly ShelfLabel[] } {
  const cell = { width: SHELF_MM.width + SHELF_GAP_MM.x, height: SHELF_MM.height + SHELF_GAP_MM.y };
  const [widthMm, heightMm] = [columns * cell.width, rows * cell.height];
  const canvas = createCanvas(widthMm, heightMm, pixelsPerMm);
  const labels = Array.from({ length: columns * rows }, (_, at): ShelfLabel => {
    const box = {
      x: (at % columns) * cell.width + SHELF_GAP_MM.x / 2 + (chance() - 0.5) * 4,
      y: Math.floor(at / columns) * cell.height + SHELF_GAP_MM.y / 2 + (chance() - 0.5) * 3,
      ...SHELF_MM,
    };
    canvas.fill(box, PAPER);
    const [part, lot] = [word(chance, 6), word(chance, 6)];
    const count = String(1000 * (1 + chanceBelow(chance, 9)));
    const envelope = `[)>\u001e06\u001dP${part}\u001dQ${count}\u001d1T${lot}\u001d3S${word(chance, 8)}\u001e\u0004`;
    const square = symbolOf(envelope, chance() < 0.8 ? 'DataMatrix' : 'QRCode');
    const modules = square.cells.length;
    drawSymbol(canvas, square, { x: box.x + 4, y: box.y + 5, moduleMm: 36 / modules, barMm: 0 });
    drawPrint(canvas, chance, box.y + box.height - 8);
    return { codes: [square.code], box };
  });
  return { sheet: { image: canvas.image(), pixelsPerMm, widthMm, heightMm, labels }, labels };
}

interface Placed {
  readonly symbol: Symbol;
  readonly x: number;
  readonly y: number;
  readonly barMm: number;
}

function layOut(symbols: readonly Symbol[], moduleMm: number, topMm: number): readonly Placed[] {
  let y = topMm + 2.6;
  let squareRight = 2;
  const placed: Placed[] = [];
  for (const symbol of symbols.filter(({ rowHeight }) => rowHeight > 0)) {
    placed.push({ symbol, x: 3, y: topMm + 3.5, barMm: 0 });
    squareRight = 3 + (symbol.cells[0]?.length ?? 0) * moduleMm;
  }
  const isStacked = placed.length > 0;
  for (const symbol of symbols.filter(({ rowHeight }) => rowHeight === 0)) {
    const widthMm = (symbol.cells[0]?.length ?? 0) * moduleMm;
    // A quiet zone of ten modules left and right.
    const left = (isStacked ? squareRight : 0) + 10 * moduleMm;
    const fits = left + widthMm + 10 * moduleMm <= LABEL_MM.width;
    const below = isStacked && !fits && y < topMm + 17;
    if (below) y = topMm + 19.5;
    placed.push({
      symbol,
      x: fits ? left : Math.max(10 * moduleMm, (LABEL_MM.width - widthMm) / 2),
      y,
      barMm: BAR_MM,
    });
    y += 8.2;
  }
  return placed;
}

interface Canvas {
  fill(box: { x: number; y: number; width: number; height: number }, tone: number): void;
  image(): GrayImage;
}

function createCanvas(widthMm: number, heightMm: number, pixelsPerMm: number): Canvas {
  const width = Math.ceil(widthMm * pixelsPerMm);
  const height = Math.ceil(heightMm * pixelsPerMm);
  const data = new Uint8Array(width * height).fill(92);
  return {
    fill(box, tone) {
      const left = box.x * pixelsPerMm;
      const right = Math.min(width, (box.x + box.width) * pixelsPerMm);
      const top = box.y * pixelsPerMm;
      const bottom = Math.min(height, (box.y + box.height) * pixelsPerMm);
      for (let y = Math.floor(top); y < bottom; y++) {
        const coverY = Math.min(y + 1, bottom) - Math.max(y, top);
        for (let x = Math.floor(left); x < right; x++) {
          const cover = coverY * (Math.min(x + 1, right) - Math.max(x, left));
          const at = y * width + x;
          data[at] = Math.round(data[at]! * (1 - cover) + tone * cover); // inside by the bounds above
        }
      }
    },
    image: () => ({ data, width, height }),
  };
}

function drawSymbol(
  canvas: Canvas,
  symbol: Symbol,
  at: { x: number; y: number; moduleMm: number; barMm: number },
): void {
  const rowMm = symbol.rowHeight === 0 ? at.barMm : symbol.rowHeight * at.moduleMm;
  symbol.cells.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      let end = x;
      while (row[end + 1]) end += 1;
      canvas.fill(
        { x: at.x + x * at.moduleMm, y: at.y + y * rowMm, width: (end - x + 1) * at.moduleMm, height: rowMm },
        INK,
      );
      x = end;
    }
  });
}

/** Small print in blocks of dots: something a decoder must not read. */
function drawPrint(canvas: Canvas, chance: Chance, topMm: number): void {
  for (let letter = 0; letter < 26; letter++) {
    for (let dot = 0; dot < 35; dot++) {
      if (chance() < 0.45) continue;
      const x = 3 + letter * 2.1 + (dot % 5) * 0.32;
      canvas.fill({ x, y: topMm + Math.floor(dot / 5) * 0.32, width: 0.32, height: 0.32 }, INK);
    }
  }
}
