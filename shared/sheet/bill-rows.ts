// How is a bill's text laid out: separated, or aligned with blanks?
// Method: the separator under which a row reads most like a bill's header; where no separator gives one, wide gaps or the runs of blanks that header
// and rows have in common.

import { alignedRows } from './aligned.ts';
import { billHeaderWords } from './bill-fields.ts';
import { uncomment } from './comment.ts';
import { type SheetRows, scoreHeaderRow } from './headers.ts';
import type { SheetProblem } from './problems.ts';
import { textToRows } from './text.ts';

function headerScore(rows: SheetRows): number {
  let best = 0;
  for (const row of rows.slice(0, 60)) best = Math.max(best, scoreHeaderRow(uncomment(row), billHeaderWords));
  return best;
}

/** Rows of a bill's text. */
export function billRows(text: string): {
  readonly rows: SheetRows;
  readonly problems: readonly SheetProblem[];
} {
  const separated = textToRows(text);
  const separatedScore = headerScore(separated.rows);
  if (separatedScore >= 2) return separated;
  const aligned = alignedRows(text, billHeaderWords);
  return aligned !== null && headerScore(aligned.rows) > separatedScore ? aligned : separated;
}
