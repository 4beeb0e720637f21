// A size of labels as it is typed: texts in, a checked size or what is wrong with which field. Pure.

import type { LabelSize } from '../../../../../shared/floor/state.ts';
import { FIRST_PAPER, paperProblem } from '../../../../../shared/labels/label-paper.ts';
import { readFigure } from '../../../frame/count-model.ts';

/** The figures of a size, in the order in which they are asked. */
export const sizeFields = [
  'widthMm',
  'heightMm',
  'marginMm',
  'dpi',
  'pageWidthMm',
  'pageHeightMm',
  'columns',
  'rows',
  'leftMm',
  'topMm',
  'gapXMm',
  'gapYMm',
] as const;
export type SizeField = (typeof sizeFields)[number];

/** Those that a roll does not ask: its page is the label. */
const sheetOnly: readonly SizeField[] = [
  'pageWidthMm',
  'pageHeightMm',
  'columns',
  'rows',
  'leftMm',
  'topMm',
  'gapXMm',
  'gapYMm',
];

/** The form as typed. */
export type SizeForm = { readonly [F in SizeField]: string } & {
  readonly size: string;
  readonly paper: LabelSize['paper'];
};

/** Least and most of each figure, as the entry's check has them. */
const ranges: Readonly<Record<SizeField, readonly [number, number]>> = {
  widthMm: [5, 1000],
  heightMm: [5, 1000],
  pageWidthMm: [5, 1000],
  pageHeightMm: [5, 1000],
  columns: [1, 30],
  rows: [1, 60],
  leftMm: [0, 200],
  topMm: [0, 200],
  gapXMm: [0, 200],
  gapYMm: [0, 200],
  marginMm: [0, 200],
  dpi: [100, 2400],
};

/** The fields that are asked for a kind of paper. */
export function fieldsFor(paper: LabelSize['paper']): readonly SizeField[] {
  return paper === 'sheet' ? sizeFields : sizeFields.filter((field) => !sheetOnly.includes(field));
}

/** The form of a size, or of a new one. A sheet begins as A4. */
export function formOf(size: LabelSize | null): SizeForm {
  const from = size ?? { ...FIRST_PAPER, size: '', pageWidthMm: 210, pageHeightMm: 297 };
  const texts = sizeFields.map((field) => [field, String(from[field])] as const);
  return {
    size: from.size,
    paper: from.paper,
    ...(Object.fromEntries(texts) as { [F in SizeField]: string }),
  }; // every field
}

/** What is wrong with a form. */
export type SizeWrong =
  | { readonly field: 'size'; readonly code: 'name' }
  | { readonly field: SizeField; readonly code: 'number' }
  | { readonly field: SizeField; readonly code: 'range'; readonly least: number; readonly most: number }
  | {
      readonly field: SizeField;
      readonly code: 'too-wide' | 'too-high' | 'no-room';
      readonly overMm: number;
    };

/** Reads a form. */
export function readSize(
  form: SizeForm,
): { readonly ok: true; readonly size: LabelSize } | { readonly ok: false; readonly wrong: SizeWrong } {
  const no = (wrong: SizeWrong) => ({ ok: false, wrong }) as const;
  const asked = fieldsFor(form.paper);
  const found: { [F in SizeField]?: number } = {};
  for (const field of asked) {
    const value = readFigure(form[field]);
    const isWhole = field === 'columns' || field === 'rows' || field === 'dpi';
    if (value === null || (isWhole && !Number.isInteger(value))) return no({ field, code: 'number' });
    const [least, most] = ranges[field];
    if (value < least || value > most) return no({ field, code: 'range', least, most });
    found[field] = value;
  }
  const { widthMm = 0, heightMm = 0 } = found;
  const roll = { pageWidthMm: widthMm, pageHeightMm: heightMm, columns: 1, rows: 1 };
  const edges = { leftMm: 0, topMm: 0, gapXMm: 0, gapYMm: 0 };
  const figures = { ...FIRST_PAPER, ...roll, ...edges, ...found };
  const size: LabelSize = { ...figures, paper: form.paper, size: form.size.trim() };
  const problem = paperProblem(size);
  if (problem !== null) {
    const field = { 'too-wide': 'columns', 'too-high': 'rows', 'no-room': 'marginMm' } as const;
    return no({ field: field[problem.code], ...problem });
  }
  if (size.size === '') return no({ field: 'size', code: 'name' });
  return { ok: true, size };
}
