// A board's own files without a sheet: what they place, which side on which line, the slots proposed for it, and taking it in.

import type { LeftOutReason } from '../../../../../shared/sheet/placement-row.ts';
import { useFloor } from '../../../app.ts';
import { Button } from '../../../ui/Button.tsx';
import { ChoiceField } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import type { Words } from '../../../words/areas.ts';
import { boardWords } from '../../../words/board.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { formatCount, say } from '../../../words/words.ts';
import type { SheetInHand } from './asked.ts';
import { type BoardContext, countRows, linesWithSlots, type SlotRow, slotRows } from './board-model.ts';
import { boardSlots } from './board-slots.ts';
import { FileColumns } from './FileColumns.tsx';
import { LoadingSheet } from './LoadingSheet.tsx';
import type { TakeForm } from './model.ts';
import { Problems } from './Problems.tsx';
import { Slots } from './Slots.tsx';
import { Bill, BoardsField, PutAway, SourceButton } from './Source.tsx';
import type { Remember, SheetSession } from './session.ts';
import { TakeIn } from './TakeIn.tsx';

/** What both ways in are given. */
export interface WayProps {
  readonly session: SheetSession;
  readonly inHand: SheetInHand;
  readonly form: TakeForm;
  readonly remember: (choice: Remember | null) => void;
}

interface InHandProps {
  readonly session: SheetSession;
  readonly inHand: SheetInHand;
}

export function Board({ session, inHand, form, remember }: WayProps) {
  const words = say(boardWords);
  const floor = useFloor();
  const { summary, placements, bill } = inHand;
  const hasLine = linesWithSlots(floor).some(({ line }) => line === form.line);
  const { line, side } = form;
  const plan = session.slots.plan.value;
  const context: BoardContext | null =
    hasLine && line !== null && side !== null
      ? {
          floor,
          line,
          side,
          product: form.product,
          widths: session.slots.widths.value,
          plan: plan?.line === line && plan.side === side ? plan : null,
        }
      : null;
  const rows = context === null ? [] : slotRows(summary.board?.parts ?? [], context);
  const errors = summary.problems.filter(({ severity }) => severity === 'error').length;
  const source = [placements, bill].flatMap((file) => (file === null ? [] : [file.name])).join(' + ');
  return (
    <>
      {context !== null && context.plan !== null && (
        <LoadingSheet context={context} rows={rows} form={form} />
      )}
      <BoardCard session={session} inHand={inHand} form={form} />
      <FileColumns session={session} summary={summary} remember={remember} />
      <Problems summary={summary} help={words.filesHelp} />
      {summary.board !== null && (
        <>
          <Slots
            session={session}
            context={context}
            rows={rows}
            parts={summary.board.parts}
            errors={errors}
          />
          <TakeIn
            session={session}
            inHand={inHand}
            form={form}
            slots={side === null ? [] : boardSlots(rows, side)}
            source={source}
            asksPlace={false}
            blockedBy={blockedBy(words, { errors, context, rows })}
          />
        </>
      )}
    </>
  );
}

/** What keeps the board out, the first thing first; null where nothing does. */
function blockedBy(
  words: Words<'board'>,
  is: { readonly errors: number; readonly context: BoardContext | null; readonly rows: readonly SlotRow[] },
): string | null {
  if (is.errors > 0) return words.filesWrong(is.errors);
  if (is.context === null) return words.noSlots;
  if (is.rows.length === 0) return words.noParts;
  const { open, faulty, left } = countRows(is.rows);
  if (open === is.rows.length || left === is.rows.length) return words.noSlots;
  if (open > 0) return words.slotsOpen(open);
  return faulty > 0 ? words.slotsFaulty(faulty) : null;
}

function BoardCard({ session, inHand, form }: Omit<WayProps, 'remember'>) {
  const words = say(boardWords);
  const sheet = say(sheetWords);
  const { placements, bill, summary } = inHand;
  const found = summary.placements;
  return (
    <section class="card stack" data-testid="board">
      {placements !== null && (
        <div class="row">
          <div class="grow">
            <b class="sheet-name" translate={false}>
              {placements.name}
            </b>
            <br />
            <span class="soft" data-testid="placement-count">
              {found && sheet.placed(formatCount(found.placements), formatCount(found.parts))}
            </span>
          </div>
          <SourceButton input="placements" session={session} tone="plain">
            {sheet.otherPlacements}
          </SourceButton>
        </div>
      )}
      <div class="row">
        <span class="grow soft">{placements === null ? words.isBill : words.isPlacements}</span>
        <Button onPress={() => void session.readAsSheet()} testId="read-as-sheet">
          {words.readAsSheet}
        </Button>
        <PutAway session={session} />
      </div>
      {placements === null && (
        <div>
          <SourceButton input="placements" session={session} tone="act" large>
            {words.choosePlacements}
          </SourceButton>
        </div>
      )}
      <div class="stack beside">
        <Bill session={session} inHand={inHand} key={bill?.number} />
      </div>
      {summary.board !== null && <BoardQuestions session={session} inHand={inHand} form={form} />}
      <NotPlacedList inHand={inHand} />
    </section>
  );
}

/** Side, boards in a panel, and the line; where there is no line, what is missing. */
function BoardQuestions({ session, inHand, form }: Omit<WayProps, 'remember'>) {
  const words = say(boardWords);
  const sheet = say(sheetWords);
  const floor = useFloor();
  const lines = linesWithSlots(floor);
  const parts = inHand.summary.board?.parts ?? [];
  const count = (side: 'top' | 'bottom') => formatCount(parts.reduce((sum, part) => sum + part[side], 0));
  return (
    <>
      <div class="form beside">
        <ChoiceField
          label={sheet.side}
          value={form.side}
          choices={(['top', 'bottom'] as const).map((side) => ({
            value: side,
            text: sheet.sides[side],
            testId: `take-${side}`,
          }))}
          onChoose={(side) => (session.form.value = { ...form, side })}
          help={words.sidesOf(count('top'), count('bottom'))}
        />
        <BoardsField session={session} inHand={inHand} />
        {lines.length > 0 && (
          <ChoiceField<string>
            label={sheet.line}
            value={form.line}
            choices={lines.map(({ line, name }) => ({
              value: line,
              text: name,
              testId: `board-line-${line}`,
            }))}
            onChoose={(line) => (session.form.value = { ...form, line })}
          />
        )}
      </div>
      {lines.length === 0 && <NoLine session={session} />}
    </>
  );
}

function NoLine({ session }: { readonly session: SheetSession }) {
  const words = say(boardWords);
  return (
    <div class="caution" data-testid="board-no-line">
      <Icon name="warn" />
      <div class="stack">
        <span>
          <b>{words.noLine}</b> {words.noLineHelp}
        </span>
        <div>
          <Button onPress={session.clear} testId="board-to-sheet">
            {words.toSheet}
          </Button>
        </div>
      </div>
    </div>
  );
}

const mostNames = 40;

/** What is listed and not counted, by why. */
function NotPlacedList({ inHand }: Pick<InHandProps, 'inHand'>) {
  const words = say(boardWords);
  const all = inHand.summary.board?.notPlaced ?? [];
  if (all.length === 0) return null;
  const groups = new Map<LeftOutReason | null, string[]>();
  for (const { designator, reason } of all) groups.set(reason, [...(groups.get(reason) ?? []), designator]);
  return (
    <div class="stack beside" data-testid="board-not-placed">
      <b>{words.notPlacedTitle(formatCount(all.length))}</b>
      <ul class="joined">
        {[...groups].map(([reason, names]) => (
          <li key={reason ?? 'bill'} data-raw>
            {reason === null ? words.leftByBill : words.left[reason]}:{' '}
            <span class="code" translate={false}>
              {names.slice(0, mostNames).join(' ')}
              {names.length > mostNames && ' …'}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
