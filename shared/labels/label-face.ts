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

/** One line of text, the most important first. `keep`: it is never left out. */
export interface FaceLine {
  readonly name: string;
  readonly text: string;
  readonly size: keyof typeof SIZES;
  readonly keep: boolean;
}

/** A line where it stands: `yMm` is its baseline. `narrowMm`: drawn into this width, where it would be wider. */
export interface PlacedLine {
  readonly name: string;
  readonly text: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly sizeMm: number;
  readonly isBold: boolean;
  readonly narrowMm: number | null;
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

/** Lays a label out. `modules`: squares on a side of its code. */
export function layFace(
  paper: Pick<Paper, 'widthMm' | 'heightMm' | 'marginMm' | 'dpi'>,
  modules: number,
  lines: readonly FaceLine[],
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
  const text = layText(area, lines);
  if (text === null) return { problem: 'text-too-large', needsMm };
  const snap = (mm: number) => Math.ceil(mm / dotMm - 1e-9) * dotMm;
  const edge = QUIET * moduleMm;
  const code = { xMm: snap(marginMm) + edge, yMm: snap(marginMm) + edge, moduleMm, dots };
  return { code, ...text };
}

/** The lines in an area, all by one size; null where not even those to keep have room. */
function layText(area: Area, lines: readonly FaceLine[]): Pick<Face, 'lines' | 'left' | 'cut'> | null {
  let kept = [...lines];
  const left: string[] = [];
  for (;;) {
    const sum = kept.reduce((total, { size }) => total + SIZES[size] * LINE, 0);
    const plainMm = Math.min(MOST_MM, sum === 0 ? MOST_MM : area.heightMm / sum);
    if (plainMm >= LEAST_MM && area.widthMm >= 4 * LEAST_MM)
      return { ...placeLines(area, kept, plainMm), left };
    const last = [...kept].reverse().find(({ keep }) => !keep);
    if (last === undefined) return null;
    kept = kept.filter((line) => line !== last);
    left.unshift(last.name);
  }
}

function placeLines(area: Area, lines: readonly FaceLine[], plainMm: number): Pick<Face, 'lines' | 'cut'> {
  const cut: string[] = [];
  let bottom = area.yMm;
  const placed = lines.map(({ name, text, size }): PlacedLine => {
    const isBold = size === 'large' || size === 'id';
    const wide = isBold ? WIDE_BOLD : WIDE;
    const natural = text.length * wide;
    // As large as it may be in one line; a long one smaller, down to the least.
    const sizeMm = Math.max(
      LEAST_MM * SIZES.small,
      Math.min(plainMm * SIZES[size], area.widthMm / (natural * NARROW)),
    );
    bottom += plainMm * SIZES[size] * LINE;
    const most = Math.floor(area.widthMm / (sizeMm * wide * NARROW));
    const shown = text.length > most ? `${text.slice(0, Math.max(1, most - 1))}…` : text;
    if (shown !== text) cut.push(name);
    return {
      name,
      text: shown,
      xMm: area.xMm,
      yMm: bottom - plainMm * SIZES[size] * (LINE - 0.95),
      sizeMm,
      isBold,
      narrowMm: shown.length * wide * sizeMm > area.widthMm ? area.widthMm : null,
    };
  });
  return { lines: placed, cut };
}
