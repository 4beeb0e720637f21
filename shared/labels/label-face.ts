// What stands where on one label: the code, and as much text as can be read beside it. Method: the code first, in squares of whole printer dots; then the lines in
// the rest, all by one size, the least important left out until they are large enough to read. What was left out is told.
// Refused: text that shrinks until it fits, which nobody reads; squares that are no whole dots, which a label printer draws unevenly.

import type { Paper } from './label-paper.ts';

/** How large a line is against a plain one. */
const SIZES = { small: 0.85, plain: 1, id: 1.3, large: 1.7 } as const;
/** Height of a plain letter's line that is read at arm's length, mm, and the largest that is of use: common practice. */
const LEAST_MM = 1.9;
const MOST_MM = 7;
const LINE = 1.2;
/** A letter's mean width against its size, plain and bold: of the usual sans serif faces, on the wide side. */
const WIDE = 0.58;
const WIDE_BOLD = 0.64;
/** A line may be drawn this much narrower before it is cut. */
const NARROW = 0.7;
/** White squares around a code: 1 is the least by ISO/IEC 16022; twice that, since paper gets dirty. */
const QUIET = 2;
/** Squares: three dots at least, so that a lost dot leaves most of it; 0.25 mm for hand scanners and tablets; more than 1 mm helps nobody. */
const LEAST_DOTS = 3;
const LEAST_MODULE_MM = 0.25;
const MOST_MODULE_MM = 1;
/** Between code and text. */
const GAP_MM = 1.2;

/** How wide a text is against the size of its letters. */
export type WidthOf = (text: string, isBold: boolean) => number;

/** The width of a text by its letters' usual one; on the wide side. */
export const usualWidth: WidthOf = (text, isBold) => text.length * (isBold ? WIDE_BOLD : WIDE);

/** One line of text, the most important first. `keep`: it is never left out. */
export interface FaceLine {
  readonly name: string;
  readonly text: string;
  readonly size: keyof typeof SIZES;
  readonly keep: boolean;
}

/** A line where it stands: `yMm` is its baseline. `narrow`: drawn that much narrower, 1: as it is. */
export interface PlacedLine {
  readonly name: string;
  readonly text: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly sizeMm: number;
  readonly isBold: boolean;
  readonly narrow: number;
}

/** A label's face, mm from its top left corner. */
export interface Face {
  /** The first square of the code, without its white edge, and the side of a square. */
  readonly code: {
    readonly xMm: number;
    readonly yMm: number;
    readonly moduleMm: number;
    readonly dots: number;
  };
  readonly lines: readonly PlacedLine[];
  /** Lines for which there was no room, by name. */
  readonly left: readonly string[];
  /** Lines that were cut, by name. */
  readonly cut: readonly string[];
}

/** Why a label has no face: its code or its text is too large. `needsMm`: the side that the code alone takes, its white edge included. */
export interface NoFace {
  readonly problem: 'code-too-large' | 'text-too-large';
  readonly needsMm: number;
}

interface Area {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Lays a label out. `modules`: squares on a side of its code; `widthOf`: as wide as its text is where it is drawn. */
export function layFace(
  paper: Pick<Paper, 'widthMm' | 'heightMm' | 'marginMm' | 'dpi'>,
  modules: number,
  lines: readonly FaceLine[],
  widthOf: WidthOf = usualWidth,
): Face | NoFace {
  const { marginMm, dpi } = paper;
  const width = paper.widthMm - 2 * marginMm;
  const height = paper.heightMm - 2 * marginMm;
  const dotMm = 25.4 / dpi;
  const leastDots = Math.max(LEAST_DOTS, Math.ceil(LEAST_MODULE_MM / dotMm - 1e-9));
  const across = modules + 2 * QUIET;
  const needsMm = across * leastDots * dotMm;
  if (needsMm > Math.min(width, height)) return { problem: 'code-too-large', needsMm };
  const isWide = width >= height * 1.15;
  const share = isWide ? Math.min(height, width * 0.42) : Math.min(width, height * 0.5);
  const mostDots = Math.max(leastDots, Math.floor(MOST_MODULE_MM / dotMm));
  const dots = Math.min(mostDots, Math.max(leastDots, Math.floor(share / (across * dotMm))));
  const moduleMm = dots * dotMm;
  const side = across * moduleMm;
  const area: Area = isWide
    ? { xMm: marginMm + side + GAP_MM, yMm: marginMm, widthMm: width - side - GAP_MM, heightMm: height }
    : { xMm: marginMm, yMm: marginMm + side + GAP_MM, widthMm: width, heightMm: height - side - GAP_MM };
  const text = layText(area, lines, widthOf);
  if (text === null) return { problem: 'text-too-large', needsMm };
  const snap = (mm: number) => Math.ceil(mm / dotMm - 1e-9) * dotMm;
  const edge = QUIET * moduleMm;
  const code = { xMm: snap(marginMm) + edge, yMm: snap(marginMm) + edge, moduleMm, dots };
  return { code, ...text };
}

/** The lines in an area, all by one size; null where not even those to keep have room. */
function layText(
  area: Area,
  lines: readonly FaceLine[],
  widthOf: WidthOf,
): Pick<Face, 'lines' | 'left' | 'cut'> | null {
  let kept = [...lines];
  const left: string[] = [];
  for (;;) {
    const sum = kept.reduce((total, { size }) => total + SIZES[size] * LINE, 0);
    const plainMm = Math.min(MOST_MM, sum === 0 ? MOST_MM : area.heightMm / sum);
    if (plainMm >= LEAST_MM && area.widthMm >= 4 * LEAST_MM) {
      const placed = kept.map((line) => fitLine(line, { area, plainMm, widthOf }));
      return { ...stackLines(area, placed, plainMm), left };
    }
    const last = [...kept].reverse().find(({ keep }) => !keep);
    if (last === undefined) return null;
    kept = kept.filter((line) => line !== last);
    left.unshift(last.name);
  }
}

type Fitted = Omit<PlacedLine, 'xMm' | 'yMm'> & { readonly line: FaceLine };

/** A line as large as it may be in one line; a long one smaller, then narrower, then cut. */
function fitLine(
  line: FaceLine,
  { area, plainMm, widthOf }: { readonly area: Area; readonly plainMm: number; readonly widthOf: WidthOf },
): Fitted {
  const isBold = line.size === 'large' || line.size === 'id';
  const leastMm = LEAST_MM * SIZES.small;
  const natural = widthOf(line.text, isBold);
  const sizeMm = Math.max(leastMm, Math.min(plainMm * SIZES[line.size], area.widthMm / (natural * NARROW)));
  let text = line.text;
  for (
    let keep = text.length - 1;
    keep > 0 && widthOf(text, isBold) * sizeMm * NARROW > area.widthMm + 1e-9;
    keep -= 1
  )
    text = `${line.text.slice(0, keep)}…`;
  const narrow = Math.min(1, area.widthMm / (widthOf(text, isBold) * sizeMm));
  return { line, name: line.name, text, sizeMm, isBold, narrow };
}

/** The lines below each other. */
function stackLines(area: Area, fitted: readonly Fitted[], plainMm: number): Pick<Face, 'lines' | 'cut'> {
  let bottom = area.yMm;
  const lines = fitted.map(({ line, ...placed }): PlacedLine => {
    const high = plainMm * SIZES[line.size];
    bottom += high * LINE;
    return { ...placed, xMm: area.xMm, yMm: bottom - high * (LINE - 0.95) };
  });
  return { lines, cut: fitted.flatMap(({ line, text }) => (text === line.text ? [] : [line.name])) };
}
