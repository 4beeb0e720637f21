// Where do labels lie on the paper? Method: a page is a grid of equal labels; a roll is a page of one label, or of one row. All in mm from the top left corner.
// Refused: sizes that printers know by name, since a plant's roll is what it is.

/** How labels lie on the paper, mm; `dpi`: dots per inch of the printer. */
export interface Paper {
  readonly paper: 'roll' | 'sheet';
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pageWidthMm: number;
  readonly pageHeightMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly leftMm: number;
  readonly topMm: number;
  readonly gapXMm: number;
  readonly gapYMm: number;
  /** White edge inside each label. */
  readonly marginMm: number;
  readonly dpi: number;
}

/** What a plant prints on that entered no size yet: one label after the other on a roll, from a label printer of 203 dots per inch. */
export const FIRST_PAPER: Paper = {
  paper: 'roll',
  widthMm: 60,
  heightMm: 40,
  pageWidthMm: 60,
  pageHeightMm: 40,
  columns: 1,
  rows: 1,
  leftMm: 0,
  topMm: 0,
  gapXMm: 0,
  gapYMm: 0,
  marginMm: 2,
  dpi: 203,
};

/** More than this over the edge of the paper is an error and not a rounding, mm. */
const ROUNDING_MM = 0.05;

/** Why labels do not lie on their paper; null where they do. `overMm`: by how much the last one goes over the edge. */
export function paperProblem(
  paper: Paper,
): { readonly code: 'too-wide' | 'too-high' | 'no-room'; readonly overMm: number } | null {
  const { columns, rows, widthMm, heightMm, gapXMm, gapYMm, marginMm } = paper;
  const overX = paper.leftMm + columns * widthMm + (columns - 1) * gapXMm - paper.pageWidthMm;
  const overY = paper.topMm + rows * heightMm + (rows - 1) * gapYMm - paper.pageHeightMm;
  if (overX > ROUNDING_MM) return { code: 'too-wide', overMm: overX };
  if (overY > ROUNDING_MM) return { code: 'too-high', overMm: overY };
  const room = Math.min(widthMm, heightMm) - 2 * marginMm;
  return room < 5 ? { code: 'no-room', overMm: 5 - room } : null;
}

/** Where one label lies. `index`: which of those printed. */
export interface LabelPlace {
  readonly index: number;
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * The pages of `count` labels. `first`: how many labels of the first sheet are gone already; a roll has none. `offset`: how far this printer must be
 * told to move all, mm.
 */
export function pagesOf(
  paper: Paper,
  count: number,
  more: { readonly first: number; readonly offsetXMm: number; readonly offsetYMm: number },
): readonly (readonly LabelPlace[])[] {
  const onPage = paper.columns * paper.rows;
  const gone = paper.paper === 'sheet' ? Math.max(0, Math.floor(more.first)) % onPage : 0;
  const pages: LabelPlace[][] = [];
  for (let index = 0; index < count; index += 1) {
    const at = index + gone;
    const place = at % onPage;
    const column = place % paper.columns;
    const row = Math.floor(place / paper.columns);
    const page = Math.floor(at / onPage);
    pages[page] ??= [];
    pages[page].push({
      index,
      xMm: paper.leftMm + column * (paper.widthMm + paper.gapXMm) + more.offsetXMm,
      yMm: paper.topMm + row * (paper.heightMm + paper.gapYMm) + more.offsetYMm,
    });
  }
  return pages;
}
