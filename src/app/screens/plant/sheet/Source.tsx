// Where the sheet comes from: a file, a drop, or pasted rows; and a placement file beside it.

import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { BillSummary, SheetRole } from '../../../../worker/sheet-protocol.ts';
import { useApp } from '../../../app.ts';
import { Button } from '../../../ui/Button.tsx';
import { AreaField, ChoiceField, Field, SelectField } from '../../../ui/Field.tsx';
import { FileButton } from '../../../ui/FileButton.tsx';
import { boardWords } from '../../../words/board.ts';
import { guideWords } from '../../../words/guide.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { formatCount, say } from '../../../words/words.ts';
import type { SheetInHand } from './asked.ts';
import { lacking } from './model.ts';
import { Offers } from './Offers.tsx';
import type { SheetSession } from './session.ts';

/** A sheet to practise with: parts of our own making on four slots. */
const exampleSheet = [
  'Product: Practice sensor',
  'Revision: A',
  'Side: top',
  'Slot,Part,Qty per panel,Tape width,Pitch',
  ...['RES-1001,12', 'CAP-2002,8', 'CAP-2003,6', 'DIO-3004,2'].map(
    (partAndQty, at) => `M1-F-00${at + 1},${partAndQty},8,4`,
  ),
].join('\n');

/** A button that opens the device's own picker of files. */
export function SourceButton(props: {
  readonly input: SheetRole;
  readonly session: SheetSession;
  readonly tone: 'act' | 'plain';
  readonly large?: boolean;
  readonly children: ComponentChildren;
}) {
  return (
    <FileButton
      icon={props.input === 'sheet' ? 'stock' : 'search'}
      tone={props.tone}
      {...(props.large ? { large: true } : {})}
      testId={`file-${props.input}`}
      onFile={(file) => void props.session.open(props.input, file.name, file)}
    >
      {props.children}
    </FileButton>
  );
}

export function ChooseSheet({ session }: { readonly session: SheetSession }) {
  const words = say(sheetWords);
  const [text, setText] = useState('');
  const [over, setOver] = useState(false);
  const board = say(boardWords);
  const isPractice = useApp().practice !== null;
  return (
    <div class="stack">
      {isPractice && (
        <div>
          <Button
            tone="act"
            large
            testId="sheet-example"
            onPress={() => void session.open('sheet', 'example.csv', exampleSheet)}
          >
            {say(guideWords).example}
          </Button>
        </div>
      )}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a drop is a shortcut; the button inside does the same */}
      <section
        class={`card drop${over ? ' over' : ''}`}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          const file = event.dataTransfer?.files[0];
          if (file) void session.open('sheet', file.name, file);
        }}
      >
        <SourceButton input="sheet" session={session} tone="act" large>
          {words.choose}
        </SourceButton>
        <p class="soft">{words.chooseHelp}</p>
      </section>
      <Offers session={session} />
      <section class="card stack">
        <h2>{board.way}</h2>
        <p class="soft">{board.wayHelp}</p>
        <div>
          <SourceButton input="placements" session={session} tone="plain" large>
            {board.choosePlacements}
          </SourceButton>
        </div>
      </section>
      <AreaField
        label={words.paste}
        testId="sheet-paste"
        isCode
        rows={6}
        autocapitalize="off"
        placeholder={words.pasteHint}
        value={text}
        onInput={setText}
        onPaste={(event) => {
          const pasted = event.clipboardData?.getData('text/plain') ?? '';
          if (text !== '' || !pasted.includes('\n')) return;
          // Rows go to be read at once: a text field of some megabytes would stop the page.
          event.preventDefault();
          void session.open('sheet', words.pasted, pasted);
        }}
      />
      {text.trim() !== '' && (
        <div>
          <Button
            tone="act"
            testId="sheet-paste-read"
            onPress={() => void session.open('sheet', words.pasted, text)}
          >
            {words.readPasted}
          </Button>
        </div>
      )}
    </div>
  );
}

export function SourceCard({
  session,
  inHand,
}: {
  readonly session: SheetSession;
  readonly inHand: SheetInHand;
}) {
  const words = say(sheetWords);
  const { sheet, placements, summary, choices } = inHand;
  const ignored = Object.entries(summary.ignored).map(([reason, count]) =>
    // The keys are those of the summary's own table.
    words.ignored[reason as keyof typeof words.ignored](count),
  );
  return (
    <section class="card stack">
      <div class="row">
        <div class="grow">
          <b class="sheet-name" translate={false}>
            {sheet?.name}
          </b>
          <br />
          <span class="soft" data-testid="sheet-count">
            {words.slots(summary.slots.length, formatCount(summary.slots.length))}
            {ignored.length > 0 && ` · ${words.leftOut(ignored.join(', '))}`}
          </span>
        </div>
        <SourceButton input="sheet" session={session} tone="plain">
          {words.another}
        </SourceButton>
        <PutAway session={session} />
      </div>
      {summary.pages.length > 1 && (
        <SelectField
          label={words.page}
          testId="sheet-page"
          value={String(summary.page)}
          onChoose={(page) => void session.choose({ page: Number(page) })}
        >
          {summary.pages.map((page, index) => (
            <option key={`${page}${index}`} value={String(index)}>
              {page}
            </option>
          ))}
        </SelectField>
      )}
      {placements === null ? (
        <div class="row">
          <SourceButton input="placements" session={session} tone="plain">
            {words.addPlacements}
          </SourceButton>
          <span class="soft grow">{words.placementsHelp}</span>
        </div>
      ) : (
        <Placements session={session} inHand={inHand} />
      )}
      <Lacking session={session} inHand={inHand} key={choices.machine + choices.bank} />
    </section>
  );
}

function Placements({ session, inHand }: { readonly session: SheetSession; readonly inHand: SheetInHand }) {
  const words = say(sheetWords);
  const { placements, summary } = inHand;
  const found = summary.placements;
  return (
    <div class="stack beside">
      <div class="row">
        <div class="grow">
          <b translate={false}>{placements?.name}</b>
          <br />
          <span class="soft" data-testid="placement-count">
            {found && words.placed(formatCount(found.placements), formatCount(found.parts))}
          </span>
        </div>
        <SourceButton input="placements" session={session} tone="plain">
          {words.otherPlacements}
        </SourceButton>
        <Button onPress={() => void session.drop('placements')}>{words.removePlacements}</Button>
      </div>
      <div class="form">
        <ChoiceField
          label={words.scope}
          value={summary.scope}
          choices={(['top', 'bottom', 'both'] as const).map((scope) => ({
            value: scope,
            text: words.scopes[scope],
          }))}
          onChoose={(scope) => void session.choose({ scope })}
        />
        <BoardsField session={session} inHand={inHand} />
      </div>
      <Bill session={session} inHand={inHand} />
    </div>
  );
}

/** Back to the choice of a file; nothing that was taken in changes. */
export function PutAway({ session }: Pick<InHandProps, 'session'>) {
  const words = say(boardWords);
  return (
    <Button onPress={session.clear} testId="sheet-put-away">
      {words.putAway}
    </Button>
  );
}

interface InHandProps {
  readonly session: SheetSession;
  readonly inHand: SheetInHand;
}

/** How many boards a panel has, where the file describes one. */
export function BoardsField({ session, inHand }: InHandProps) {
  const words = say(sheetWords);
  const [boards, setBoards] = useState(String(inHand.choices.boardsPerPanel));
  return (
    <Field
      label={words.boards}
      testId="boards"
      inputMode="numeric"
      value={boards}
      isWrong={!isBoards(boards)}
      onInput={(text) => {
        setBoards(text);
        if (isBoards(text)) void session.choose({ boardsPerPanel: Number(text) });
      }}
      help={words.boardsHelp}
    />
  );
}

/** The bill beside the placement file: what was joined, part by part, and what is not placed. */
export function Bill({ session, inHand }: InHandProps) {
  const words = say(sheetWords);
  const { bill, summary } = inHand;
  const joined = summary.bill;
  return (
    <>
      <div class="row">
        <div class="grow">
          {bill !== null && (
            <>
              <b translate={false}>{bill.name}</b>
              <br />
            </>
          )}
          <span class="soft" data-testid="bill-count">
            {joined === null
              ? words.billHelp
              : words.joined(formatCount(joined.parts.length), formatCount(joined.notPlaced.length))}
          </span>
        </div>
        <SourceButton input="bill" session={session} tone="plain">
          {bill === null ? words.addBill : words.otherBill}
        </SourceButton>
        {bill !== null && <Button onPress={() => void session.drop('bill')}>{words.removeBill}</Button>}
      </div>
      {joined !== null && joined.variants.length > 0 && <Variant session={session} inHand={inHand} />}
      {joined !== null && joined.parts.length > 0 && (
        <JoinedParts joined={joined} tellsRest={inHand.sheet !== null} />
      )}
    </>
  );
}

/** Which of the bill's variants is built. */
function Variant({ session, inHand }: InHandProps) {
  const words = say(boardWords);
  const { summary, choices } = inHand;
  return (
    <SelectField
      label={words.variant}
      testId="bill-variant"
      value={choices.variant ?? ''}
      help={words.variantHelp}
      onChoose={(variant) => void session.choose({ variant: variant === '' ? null : variant })}
    >
      <option value="">{words.variantNone}</option>
      {summary.bill?.variants.map((variant) => (
        <option key={variant} value={variant}>
          {variant}
        </option>
      ))}
    </SelectField>
  );
}

const shownAtFirst = 5;

function JoinedParts({ joined, tellsRest }: { readonly joined: BillSummary; readonly tellsRest: boolean }) {
  const words = say(sheetWords);
  const [isOpen, setOpen] = useState(false);
  const shown = isOpen ? joined.parts : joined.parts.slice(0, shownAtFirst);
  return (
    <div class="stack" data-testid="joined">
      <ul class="joined">
        {shown.map(({ part, top, bottom, designators, supplierParts }) => (
          <li key={part} data-raw>
            <b translate={false}>{part}</b> {words.perSide(formatCount(top), formatCount(bottom))}{' '}
            <span class="soft code" translate={false}>
              {[designators.join(' '), ...supplierParts].join(' · ')}
            </span>
          </li>
        ))}
      </ul>
      {tellsRest && joined.notPlaced.length > 0 && (
        <p class="soft" data-testid="not-placed" data-raw>
          {words.notPlaced} <span translate={false}>{joined.notPlaced.slice(0, 40).join(' ')}</span>
          {joined.notPlaced.length > 40 && ' …'}
        </p>
      )}
      {joined.parts.length > shownAtFirst && (
        <div>
          <Button onPress={() => setOpen(!isOpen)} testId="joined-more">
            {isOpen ? words.fewer : words.more(joined.parts.length - shownAtFirst)}
          </Button>
        </div>
      )}
    </div>
  );
}

function isBoards(typed: string): boolean {
  return /^[1-9]\d{0,3}$/.test(typed);
}

/** Machine and bank for slots that name none; asked for only where some do not. */
function Lacking({ session, inHand }: { readonly session: SheetSession; readonly inHand: SheetInHand }) {
  const words = say(sheetWords);
  const { choices, summary } = inHand;
  const lacks = lacking(summary.slots);
  const asked = [
    { key: 'machine', label: words.lackMachine, hint: 'M1' },
    { key: 'bank', label: words.lackBank, hint: 'F' },
  ] as const;
  const wanted = asked.filter(({ key }) => lacks[key] || choices[key] !== '');
  if (wanted.length === 0) return null;
  return (
    <div class="form">
      {wanted.map(({ key, label, hint }) => (
        <Field
          key={key}
          label={label}
          testId={`lack-${key}`}
          isCode
          placeholder={hint}
          maxLength={20}
          value={choices[key]}
          onLeave={(text) => void session.choose({ [key]: text.trim() })}
          help={words.lackHelp}
        />
      ))}
    </div>
  );
}
