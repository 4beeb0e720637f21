// Labels as a poor printer prints them: dots that run, dots that are missing, on paper that is not quite white; then seen by a scanner. For the checks
// that hold this project's labels against readers from outside. Text stands in as blocks of its size.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule } from 'zxing-wasm/writer';
import { seededChance } from '../../../../shared/kit/chance.ts';
import { layFace } from '../../../../shared/labels/label-face.ts';
import type { Paper } from '../../../../shared/labels/label-paper.ts';
import { packageId } from '../../../../shared/labels/package-id.ts';
import { type PrintedPackage, packageMessage } from '../../../../shared/labels/package-label.ts';
import { type CodeSquares, symbolOf } from '../../../../src/app/scan/symbol.ts';

/** A gray picture, row after row, 0 black. */
export interface Gray {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** How badly it is printed. `gain`: by how much of a dot each dot is larger, over its whole width; `missing`: share of dots that were not printed. */
export interface Damage {
  readonly gain: number;
  readonly missing: number;
}

/** Reads the writer's file from the package, since no page serves it here. */
export function prepareWriter(): void {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/writer/zxing_writer.wasm'));
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });
}

/** Parts of a printer's dot in the drawing, and in what the scanner sees. */
const FINE = 4;
const SEEN = 2;

/** One printed label. `seed` draws which dots are missing. */
export function printLabel(
  code: CodeSquares,
  lines: Parameters<typeof layFace>[2],
  paper: Paper,
  damage: Damage & { readonly seed: number },
): Gray {
  const face = layFace(paper, code.side, lines);
  if ('problem' in face)
    throw new Error(`Cannot print as the label must have room: current one is ${face.problem}`);
  const dotMm = 25.4 / paper.dpi;
  const columns = Math.ceil(paper.widthMm / dotMm);
  const rows = Math.ceil(paper.heightMm / dotMm);
  const chance = seededChance(damage.seed);
  const dots: [number, number][] = [];
  const black = (x0: number, y0: number, x1: number, y1: number) => {
    for (let y = y0; y < y1; y += 1) for (let x = x0; x < x1; x += 1) dots.push([x, y]);
  };
  const at = (mm: number) => Math.round(mm / dotMm);
  const { xMm, yMm, dots: side } = face.code;
  for (const [index, dark] of code.dark.entries()) {
    if (!dark) continue;
    const x = at(xMm) + (index % code.side) * side;
    const y = at(yMm) + Math.floor(index / code.side) * side;
    black(x, y, x + side, y + side);
  }
  for (const { text, xMm: left, yMm: base, sizeMm } of face.lines)
    for (const [index, letter] of [...text].entries())
      if (letter !== ' ') {
        const x = left + index * sizeMm * 0.55;
        black(
          at(x),
          at(base - sizeMm * 0.7),
          Math.min(columns, at(x + sizeMm * (0.2 + 0.2 * chance()))),
          at(base),
        );
      }
  const [width, height] = [columns * FINE, rows * FINE];
  const fine = new Uint8Array(width * height).fill(232);
  const more = (damage.gain * FINE) / 2;
  for (const [x, y] of dots) {
    if (chance() < damage.missing) continue;
    const [x0, x1] = [Math.round(x * FINE - more), Math.round((x + 1) * FINE + more)];
    const [y0, y1] = [Math.round(y * FINE - more), Math.round((y + 1) * FINE + more)];
    for (let row = Math.max(0, y0); row < Math.min(height, y1); row += 1)
      fine.fill(28, row * width + Math.max(0, x0), row * width + Math.min(width, x1));
  }
  return seenBy(fine, width, height);
}

/** What a scanner sees of it: the mean of what falls on each of its own dots. */
function seenBy(fine: Uint8Array, width: number, height: number): Gray {
  const step = FINE / SEEN;
  const [columns, rows] = [Math.floor(width / step), Math.floor(height / step)];
  const data = new Uint8Array(columns * rows);
  for (let y = 0; y < rows; y += 1)
    for (let x = 0; x < columns; x += 1) {
      let sum = 0;
      for (let dy = 0; dy < step; dy += 1)
        for (let dx = 0; dx < step; dx += 1) sum += fine[(y * step + dy) * width + x * step + dx] ?? 0;
      data[y * columns + x] = Math.round(sum / step ** 2);
    }
  return { data, width: columns, height: rows };
}

/** Sizes that plants have: small and usual rolls, tall tags, A4 sheets of 24. */
export const papers: readonly Omit<Paper, 'dpi'>[] = [
  ['roll', 60, 40, 2],
  ['roll', 50, 25, 1],
  ['roll', 38, 60, 1.5],
  ['sheet', 70, 37, 3],
].map(([paper, widthMm, heightMm, marginMm]) => ({
  paper: paper as 'roll' | 'sheet',
  widthMm: Number(widthMm),
  heightMm: Number(heightMm),
  pageWidthMm: Number(widthMm),
  pageHeightMm: Number(heightMm),
  columns: 1,
  rows: 1,
  leftMm: 0,
  topMm: 0,
  gapXMm: 0,
  gapYMm: 0,
  marginMm: Number(marginMm),
}));

/** A package drawn by chance, with the lines of its label. */
export function somePackage(seed: number): {
  readonly facts: PrintedPackage;
  readonly lines: Parameters<typeof layFace>[2];
} {
  const chance = seededChance(seed);
  const some = (letters: string, least: number, most: number) =>
    Array.from(
      { length: least + Math.floor(chance() * (most - least + 1)) },
      () => letters[Math.floor(chance() * letters.length)],
    ).join('');
  const codes = '0123456789ABCDEFGHJKLMNPRSTUVWXYZ-';
  const hash = some('0123456789abcdef', 16, 16);
  const facts: PrintedPackage = {
    reel: packageId(hash, 1 + Math.floor(chance() * 500_000)),
    part: `P${some(codes, 4, 14)}1`,
    supplierPart: chance() < 0.7 ? `A${some(codes, 5, 20)}9` : null,
    quantity: Math.floor(chance() * 12_000),
    lot: chance() < 0.9 ? `L${some(codes, 3, 12)}7` : null,
    dateCode: chance() < 0.8 ? `2${Math.floor(chance() * 7)}${10 + Math.floor(chance() * 42)}` : null,
    msl: chance() < 0.3 ? '3' : null,
    expires: null,
  };
  const lines = [
    { name: 'id', text: facts.reel, size: 'id' as const, keep: true },
    { name: 'part', text: facts.part ?? '', size: 'large' as const, keep: true },
    { name: 'left', text: `${facts.quantity} ± 12 left`, size: 'plain' as const, keep: true },
    { name: 'lot', text: `Lot ${facts.lot ?? ''}`, size: 'plain' as const, keep: false },
  ];
  return { facts, lines };
}

/** A package's label, printed, and what its code says. */
export async function somePrint(
  seed: number,
  dpi: number,
  damage: Damage,
): Promise<{ readonly image: Gray; readonly message: string; readonly facts: PrintedPackage }> {
  const { facts, lines } = somePackage(seed);
  const message = packageMessage(facts);
  const paper = papers[seed % papers.length] ?? papers[0];
  if (paper === undefined) throw new Error('Cannot print as there must be paper: current list is empty');
  const image = printLabel(await symbolOf(message), lines, { ...paper, dpi }, { ...damage, seed });
  return { image, message, facts };
}
