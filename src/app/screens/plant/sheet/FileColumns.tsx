// The columns of the board's own files, beside a sheet or without one: each with what stands in it, each to be corrected.

import { useEffect, useState } from 'preact/hooks';
import { type BillField, billFields } from '../../../../../shared/sheet/bill-fields.ts';
import { type PlacementField, placementFields } from '../../../../../shared/sheet/fields.ts';
import type { SheetRole, SheetSummary, ShownColumn } from '../../../../worker/sheet-protocol.ts';
import { Button } from '../../../ui/Button.tsx';
import { boardWords } from '../../../words/board.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { say } from '../../../words/words.ts';
import { asChosen } from './as-chosen.ts';
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
  const { placements, bill } = asChosen(summary, session.choosing.value);
  return (
    <>
      {placements !== null && placements.columns.length > 0 && (
        <OneFile
          title={words.placementColumnsTitle}
          file={placements}
          fields={placementFields}
          isLacking={lacks('placements')}
          key={`placements ${placements.key}`}
          onChoose={(index, field) => remember(session.choosePlacementColumn(index, field))}
          testId="placement-columns"
        />
      )}
      {bill !== null && bill.columns.length > 0 && (
        <OneFile
          title={board.billColumnsTitle}
          file={bill}
          fields={billFields}
          isLacking={lacks('bill')}
          key={bill.key}
          onChoose={(index, field) => remember(session.chooseBillColumn(index, field))}
          testId="bill-columns"
        />
      )}
    </>
  );
}

interface OneFileProps<F extends PlacementField | BillField> {
  readonly title: string;
  readonly file: { readonly columns: readonly ShownColumn<F>[]; readonly isRemembered: boolean };
  readonly fields: readonly F[];
  readonly isLacking: boolean;
  readonly onChoose: (index: number, field: F | null) => void;
  readonly testId: string;
}

/** The columns of one file: in a line where nothing is in doubt; open where something is, and from then on. */
function OneFile<F extends PlacementField | BillField>(props: OneFileProps<F>) {
  const { title, file, testId, isLacking } = props;
  const words = say(sheetWords);
  const board = say(boardWords);
  const [opened, setOpened] = useState(isLacking);
  useEffect(() => {
    if (isLacking) setOpened(true);
  }, [isLacking]);
  if (isLacking || opened)
    return (
      <Columns
        title={title}
        columns={file.columns}
        fields={props.fields}
        nameOf={(field) => words.fields[field]}
        isRemembered={file.isRemembered}
        isLacking={isLacking}
        onChoose={props.onChoose}
        testId={testId}
      />
    );
  const used = file.columns.flatMap(({ header, field }) =>
    field === null ? [] : [`${header || '–'} = ${words.fields[field]}`],
  );
  return (
    <section class="card stack" data-testid={testId}>
      <div class="row">
        <h2>{title}</h2>
        {file.isRemembered && <span class="chip go">✓ {words.remembered}</span>}
      </div>
      <p class="soft" data-raw>
        {used.join(' · ')}
      </p>
      <div>
        <Button onPress={() => setOpened(true)} testId={`${testId}-open`}>
          {board.correctColumns}
        </Button>
      </div>
    </section>
  );
}
