// A list comes in: its file or its rows, what its columns hold, what is wrong with it. What is then done with it is the caller's.

import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { keepChoice, mapToKept } from '../../../../../shared/sheet/choice.ts';
import type { ListKind, ListSummary } from '../../../../worker/list-protocol.ts';
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
import {
  answerList,
  askList,
  choiceOf,
  emptyDesk,
  type InHand,
  type ListDesk,
  type ListQuestion,
  type ListSource,
  shownColumns,
} from './list-in-hand.ts';
import { readList } from './list-reader.ts';
import '../sheet/sheet.css';

interface TakeListProps {
  readonly list: ListKind;
  readonly title: string;
  readonly help: string;
  readonly choose: string;
  /** Where the way back leads. */
  readonly back: string;
  /** What is done with the list; `reading`: why not yet, while another list or the same by other columns is read; null once it is read. */
  readonly children: (summary: ListSummary, name: string, reading: string | null) => ComponentChildren;
}

/** The list in hand, what it is read by, and what is asked next. */
function useList(list: ListKind) {
  const app = useApp();
  const [desk, setDesk] = useState(emptyDesk);
  const now = useRef(desk);
  const number = useRef(0);
  const holds = desk.inHand !== null;
  // A list in hand is a task that an update of the app must not end.
  useEffect(() => {
    if (!holds) return;
    app.openTasks.value = app.openTasks.peek() + 1;
    return () => {
      app.openTasks.value = app.openTasks.peek() - 1;
    };
  }, [holds]);
  function put(next: ListDesk): void {
    now.current = next;
    setDesk(next);
  }
  async function ask(question: ListQuestion): Promise<void> {
    put(askList(now.current, question));
    number.current += 1;
    const { chosen, page } = question;
    const source = { ...question.source, number: number.current };
    const remembered = app.preferences.value.sheetColumns;
    const reply = await readList({ list, source, columns: chosen?.map ?? null, remembered, page });
    const isAwaited = now.current.asked === question;
    put(answerList(now.current, question, reply));
    if (!isAwaited || chosen === null || reply.kind === 'refused') return;
    const { value } = app.preferences;
    const choice = { key: chosen.key, kept: mapToKept(chosen.map) };
    app.preferences.value = { ...value, sheetColumns: keepChoice(value.sheetColumns, choice) };
  }
  return {
    desk,
    read: (source: ListSource, page: number | null = null) => void ask({ source, chosen: null, page }),
    choose: (inHand: InHand, index: number, field: string | null) =>
      void ask(choiceOf(now.current, inHand, { index, field })),
  };
}

export function TakeList(props: TakeListProps) {
  const all = say(partListWords);
  const sheet = say(sheetWords);
  const words = all.take;
  const { desk, read, choose } = useList(props.list);
  const { inHand, fault } = desk;
  const busy = desk.asked !== null;
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
        <ChooseList {...props} onRead={read} />
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
                onFile={(file) => read({ name: file.name, content: file })}
              >
                {words.another}
              </FileButton>
            </div>
            {inHand.summary.pages.length > 1 && (
              <SelectField
                label={words.page}
                testId="list-page"
                value={String(inHand.summary.page)}
                onChoose={(page) => read(inHand.source, Number(page))}
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
            columns={shownColumns(desk)}
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

function ChooseList(props: TakeListProps & { readonly onRead: (source: ListSource) => void }) {
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
