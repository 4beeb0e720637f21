// How is a placement file's text laid out: separated, or aligned with blanks? With a header or without?
// Method: both ways are tried, and the one whose header names more fields is taken; without a header the one that gives more rows of the same
// length with a designator in one column.

import { alignedHeaderScore, alignedRows, alignedWithoutHeader } from './aligned.ts';
import { lookAtColumns } from './column-look.ts';
import { fewestFieldsKnown, uncommentHeader } from './comment.ts';
import { placementHeaderWords } from './fields.ts';
import { joinHeaderRows } from './header-pair.ts';
import type { SheetRows } from './headers.ts';
import { fieldsByLook, placementHeaderScore } from './placement-columns.ts';
import type { SheetProblem } from './problems.ts';
import { type TextRows, textToRows } from './text.ts';

/** A placement file's text with its rows, so that who has them need not split it again. */
export interface PlacementText {
  readonly text: string;
  readonly rows: SheetRows;
  readonly problems: readonly SheetProblem[];
}

/** Rows of a placement file's text, whichever way it is laid out. `separated`: the text as `textToRows` splits it, where that is at hand. */
export function placementRows(
  text: string,
  separated: Omit<TextRows, 'separator'> = textToRows(text),
): PlacementText {
  const { rows, problems } = layOut(text, separated);
  return { text, rows, problems };
}

function layOut(text: string, separated: Omit<TextRows, 'separator'>): Omit<PlacementText, 'text'> {
  const plain = uncommentHeader(separated.rows, placementHeaderWords);
  const separatedScore = placementHeaderScore(separated.rows);
  const alignedScore = alignedHeaderScore(text);
  if (Math.max(separatedScore, alignedScore) >= fewestFieldsKnown) {
    const aligned = alignedScore > separatedScore ? alignedRows(text) : null;
    if (aligned !== null && placementHeaderScore(aligned.rows) > separatedScore)
      return { rows: joinHeaderRows(aligned.rows, placementHeaderWords), problems: aligned.problems };
    return { rows: joinHeaderRows(plain, placementHeaderWords), problems: separated.problems };
  }
  const joined = joinHeaderRows(plain, placementHeaderWords);
  if (joined !== plain) return { rows: joined, problems: separated.problems };
  const bare = alignedWithoutHeader(text);
  const known = (rows: SheetRows) => fieldsByLook(lookAtColumns(rows, 0))?.size ?? 0;
  if (bare !== null && known(bare.rows) > known(separated.rows)) return bare;
  return { rows: plain, problems: separated.problems };
}
