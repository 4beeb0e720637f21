// The columns of the board's own files, beside a sheet or without one: each with what stands in it, each to be corrected.

import { billFields } from '../../../../../shared/sheet/bill-fields.ts';
import { placementFields } from '../../../../../shared/sheet/fields.ts';
import type { SheetRole, SheetSummary } from '../../../../worker/sheet-protocol.ts';
import { boardWords } from '../../../words/board.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { say } from '../../../words/words.ts';
import { Columns } from './Columns.tsx';
import type { Remember, SheetSession } from './session.ts';

interface FileColumnsProps {
  readonly session: SheetSession;
  readonly summary: SheetSummary;
  readonly remember: (choice: Remember | null) => void;
}

/** Codes of problems that a person puts right by saying what a column holds. */
const columnCodes: readonly string[] = [
  'columnMissing',
  'columnAbsent',
  'columnNotFound',
  'partsAreDesignators',
  'genericParts',
  'headerGuessed',
];

/** Columns of the placement file and of the bill; a file that says itself what is what (IPC-2581) has none to choose. */
export function FileColumns({ session, summary, remember }: FileColumnsProps) {
  const words = say(sheetWords);
  const board = say(boardWords);
  const lacks = (of: SheetRole) =>
    summary.problems.some(({ code, role }) => role === of && columnCodes.includes(code));
  const { placements, bill } = summary;
  return (
    <>
      {placements !== null && placements.columns.length > 0 && (
        <Columns
          title={words.placementColumnsTitle}
          columns={placements.columns}
          fields={placementFields}
          nameOf={(field) => words.fields[field]}
          isRemembered={placements.isRemembered}
          isLacking={lacks('placements')}
          key={`placements ${placements.key}`}
          onChoose={(index, field) => remember(session.choosePlacementColumn(index, field))}
          testId="placement-columns"
        />
      )}
      {bill !== null && bill.columns.length > 0 && (
        <Columns
          title={board.billColumnsTitle}
          columns={bill.columns}
          fields={billFields}
          nameOf={(field) => words.fields[field]}
          isRemembered={bill.isRemembered}
          isLacking={lacks('bill')}
          key={bill.key}
          onChoose={(index, field) => remember(session.chooseBillColumn(index, field))}
          testId="bill-columns"
        />
      )}
    </>
  );
}
