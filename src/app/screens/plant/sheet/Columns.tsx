// What each column was taken for, beside what stands in it; a wrong guess is corrected here and remembered for the next sheet.

import { useState } from 'preact/hooks';
import type { ShownColumn } from '../../../../worker/sheet-protocol.ts';
import { Button } from '../../../ui/Button.tsx';
import { sheetWords } from '../../../words/sheet.ts';
import { say } from '../../../words/words.ts';

interface ColumnsProps<F extends string> {
  readonly title: string;
  readonly columns: readonly ShownColumn<F>[];
  readonly fields: readonly F[];
  readonly nameOf: (field: F) => string;
  readonly isRemembered: boolean;
  /** True where a wanted field has no column: then one of those not used may be it. */
  readonly isLacking: boolean;
  readonly onChoose: (index: number, field: F | null) => void;
  readonly testId: string;
}

export function Columns<F extends string>(props: ColumnsProps<F>) {
  const words = say(sheetWords);
  const { columns, fields, nameOf } = props;
  const used = columns.filter(({ field }) => field !== null);
  const unused = columns.filter(({ field }) => field === null);
  const few = columns.length <= 8;
  const [opened, setOpened] = useState(props.isLacking);
  const shown = few || opened ? columns : used;
  return (
    <section class="card stack" data-testid={props.testId}>
      <div class="row">
        <h2>{props.title}</h2>
        {props.isRemembered && <span class="chip go">✓ {words.remembered}</span>}
      </div>
      <p class="soft">{words.columnsHelp}</p>
      <div class="columns">
        {shown.map((column) => (
          <label
            key={column.index}
            class={`column${column.field === null ? ' unused' : ''}`}
            data-testid={`${props.testId}-${column.index}`}
          >
            <b translate={false}>{column.header || '–'}</b>
            <span class="samples code" translate={false}>
              {column.samples.length === 0 ? '–' : column.samples.join(' · ')}
            </span>
            <select
              aria-label={`${column.header}: ${words.holds}`}
              value={column.field ?? ''}
              onChange={(event) =>
                props.onChoose(
                  column.index,
                  fields.find((field) => field === event.currentTarget.value) ?? null,
                )
              }
            >
              <option value="">{words.notUsed}</option>
              {fields.map((field) => (
                <option key={field} value={field}>
                  {nameOf(field)}
                </option>
              ))}
            </select>
          </label>
        ))}
      </div>
      {!few && unused.length > 0 && (
        <div>
          <Button onPress={() => setOpened(!opened)} testId={`${props.testId}-unused`}>
            {opened ? words.hideUnused : words.unusedColumns(unused.length)}
          </Button>
        </div>
      )}
    </section>
  );
}
