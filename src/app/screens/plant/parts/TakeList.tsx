// A list comes in: its file or its rows, what its columns hold, what is wrong with it. What is then done with it is the caller's.

import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { chooseColumn, columnsToMap, keepChoice, mapToKept } from '../../../../../shared/sheet/choice.ts';
import type { ColumnMap } from '../../../../../shared/sheet/headers.ts';
import type { ListKind, ListSummary } from '../../../../worker/list-protocol.ts';
import type { SheetFault } from '../../../../worker/sheet-protocol.ts';
import { useApp } from '../../../app.ts';
import { Button } from '../../../ui/Button.tsx';
import { AreaField, SelectField } from '../../../ui/Field.tsx';
import { FileButton } from '../../../ui/FileButton.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { partListWords } from '../../../words/part-list.ts';
import { partsWords } from '../../../words/parts.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { say } from '../../../words/words.ts';
import { Columns } from '../sheet/Columns.tsx';
import { Problems } from '../sheet/Problems.tsx';
import { readList } from './list-reader.ts';
import '../sheet/sheet.css';

interface Source {
  readonly name: string;
  readonly content: Blob | string;
}

/** A list that was read, with the name of what it was read from. */
interface InHand {
  readonly source: Source;
  readonly summary: ListSummary;
}

interface TakeListProps {
  readonly list: ListKind;
  readonly title: string;
  readonly help: string;
  readonly choose: string;
  /** Where the way back leads. */
  readonly back: string;
  /** What is done with the list; `reading`: why not yet, while it is read by other columns than those of the summary; null once it is read. */
  readonly children: (summary: ListSummary, name: string, reading: string | null) => ComponentChildren;
}

/** The list in hand, and what it is read by. */
function useList(list: ListKind) {
  const app = useApp();
  const [inHand, setInHand] = useState<InHand | null>(null);
  const [fault, setFault] = useState<{ readonly name: string; readonly is: SheetFault } | null>(null);
  const [busy, setBusy] = useState(false);
  const asked = useRef(0);
  const holds = inHand !== null;
  // A list in hand is a task that an update of the app must not end.
  useEffect(() => {
    if (!holds) return;
    app.openTasks.value = app.openTasks.peek() + 1;
    return () => {
      app.openTasks.value = app.openTasks.peek() - 1;
    };
  }, [holds]);
  async function read(
    source: Source,
    how: { readonly columns?: ColumnMap<string>; readonly page?: number } = {},
  ): Promise<void> {
    asked.current += 1;
    const mine = asked.current;
    setBusy(true);
    const { columns = null, page = null } = how;
    const remembered = app.preferences.value.sheetColumns;
    const answer = await readList({ list, source: { ...source, number: mine }, columns, remembered, page });
    if (mine !== asked.current) return;
    setBusy(false);
    if (answer.kind === 'refused') return setFault({ name: source.name, is: answer.fault });
    setFault(null);
    setInHand({ source, summary: answer.summary });
  }
  function choose({ source, summary }: InHand, index: number, field: string | null): void {
    const columns = chooseColumn(summary.columns, index, field);
    const map = columnsToMap(columns, summary.fields);
    const { value } = app.preferences;
    const choice = { key: summary.key, kept: mapToKept(map) };
    app.preferences.value = { ...value, sheetColumns: keepChoice(value.sheetColumns, choice) };
    // The choice stands where it was made while a long list is read by it.
    setInHand({ source, summary: { ...summary, columns } });
    void read(source, { columns: map, page: summary.page });
  }
  return { inHand, fault, busy, read, choose };
}

export function TakeList(props: TakeListProps) {
  const all = say(partListWords);
  const sheet = say(sheetWords);
  const words = all.take;
  const { inHand, fault, busy, read, choose } = useList(props.list);
  return (
    <div class="stack sheet" data-testid={`take-${props.list}`}>
      <div class="row">
        <h2 class="grow">{props.title}</h2>
        <a class="button" href={props.back} data-testid="take-back">
          {say(partsWords).cancel}
        </a>
      </div>
      {busy && (
        <div class="reading" role="status" data-testid="reading">
          <span>{sheet.steps.checking}</span>
          <span class="running" />
        </div>
      )}
      {fault !== null && (
        <div class="caution fault" role="alert" data-testid="list-fault">
          <Icon name="warn" />
          <div>
            <b translate={false}>{fault.name}</b>
            <br />
            {sheet.faults[fault.is]} {inHand && sheet.kept}
          </div>
        </div>
      )}
      {inHand === null ? (
        <ChooseList {...props} onRead={(source) => void read(source)} />
      ) : (
        <>
          <section class="card stack">
            <div class="row">
              <b class="grow sheet-name" translate={false}>
                {inHand.source.name}
              </b>
              <FileButton
                icon="stock"
                tone="plain"
                testId="list-file"
                onFile={(file) => void read({ name: file.name, content: file })}
              >
                {words.another}
              </FileButton>
            </div>
            {inHand.summary.pages.length > 1 && (
              <SelectField
                label={words.page}
                testId="list-page"
                value={String(inHand.summary.page)}
                onChoose={(page) => void read(inHand.source, { page: Number(page) })}
              >
                {inHand.summary.pages.map((name, at) => (
                  <option key={name} value={String(at)}>
                    {name}
                  </option>
                ))}
              </SelectField>
            )}
          </section>
          <Columns
            title={sheet.columnsTitle}
            columns={inHand.summary.columns}
            fields={inHand.summary.fields}
            nameOf={(field) => all.fields[field] ?? field}
            isRemembered={inHand.summary.isRemembered}
            isLacking={inHand.summary.problems.some(({ code }) => code === 'columnMissing')}
            onChoose={(index, field) => choose(inHand, index, field)}
            testId="list-columns"
          />
          <Problems summary={inHand.summary} help={sheet.errorsBlock} />
          {props.children(inHand.summary, inHand.source.name, busy ? sheet.steps.checking : null)}
        </>
      )}
    </div>
  );
}

function ChooseList(props: TakeListProps & { readonly onRead: (source: Source) => void }) {
  const words = say(partListWords).take;
  const [text, setText] = useState('');
  return (
    <>
      <section class="card drop">
        <FileButton
          icon="stock"
          tone="act"
          large
          testId="list-file"
          onFile={(file) => props.onRead({ name: file.name, content: file })}
        >
          {props.choose}
        </FileButton>
        <p class="soft">{props.help}</p>
      </section>
      <AreaField
        label={words.paste}
        testId="list-paste"
        isCode
        rows={6}
        autocapitalize="off"
        value={text}
        onInput={setText}
      />
      {text.trim() !== '' && (
        <div>
          <Button
            tone="plain"
            testId="list-paste-read"
            onPress={() => props.onRead({ name: words.pasted, content: text })}
          >
            {words.read}
          </Button>
        </div>
      )}
    </>
  );
}
