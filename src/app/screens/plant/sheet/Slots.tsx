// The slots of a board by machine and bank, as they were proposed and as a person changed them; what found none, and why.

import { useState } from 'preact/hooks';
import { placeKey } from '../../../../../shared/floor/address.ts';
import type { BoardPart } from '../../../../../shared/sheet/board-parts.ts';
import { Button } from '../../../ui/Button.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { boardWords } from '../../../words/board.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { formatCount, say } from '../../../words/words.ts';
import {
  type BoardContext,
  boardPlaces,
  byWalk,
  countRows,
  inTheWay,
  isBlocking,
  moveTo,
  planOf,
  proposalQuestion,
  type SlotRow,
  whyOf,
} from './board-model.ts';
import { heldName, waitingOn, withPlans } from './held-boards.ts';
import { effects, planNow, SlotPicker } from './SlotPicker.tsx';
import type { SheetSession } from './session.ts';
import { useSlotDrag } from './slot-drag.ts';
import { sayFault } from './slot-fault.ts';
import { type BankList, bankLists } from './slot-lists.ts';
import { sayWidth } from './slot-width.ts';
import './slots.css';

interface SlotsProps {
  readonly session: SheetSession;
  /** Null where side or line is still to be chosen. */
  readonly context: BoardContext | null;
  readonly rows: readonly SlotRow[];
  readonly parts: readonly BoardPart[];
  readonly errors: number;
}

export function Slots({ session, context, rows, parts, errors }: SlotsProps) {
  const words = say(boardWords);
  const [chosen, setChosen] = useState<string | null>(null);
  const { slots } = session;
  const hasPlan = context !== null && context.plan !== null;
  const question = context === null ? null : proposalQuestion(rows, context);
  const waiting = context === null ? [] : waitingOn(session.held.value, context.floor, context.line);
  const values = rows.filter(({ board }) => board.isNamedByValue).length;
  const unknown = rows.filter(
    ({ widthMm, isLeft, isOnTray }) => widthMm === null && !isLeft && !isOnTray,
  ).length;
  const blocked =
    session.busy.value !== null
      ? say(sheetWords).steps.checking
      : errors > 0
        ? words.filesWrong(errors)
        : context === null
          ? words.chooseLine
          : rows.length === 0
            ? words.noParts
            : null;
  const propose = () => {
    if (context === null || question === null) return;
    const { line, side } = context;
    slots.propose(
      question,
      (found, others) => {
        session.held.value = withPlans(session.held.value, waiting, others);
        const now = slots.plan.value;
        return planOf(found, { ...context, plan: now?.line === line && now.side === side ? now : null });
      },
      waiting.map(({ parts: wanted }) => wanted),
    );
  };
  const row = rows.find(({ part }) => part === chosen);
  return (
    <section class="card stack slots" data-testid="slots">
      <h2>{words.slotsTitle}</h2>
      <p>{words.isProposal}</p>
      {!hasPlan && <p class="soft">{words.proposalHelp}</p>}
      {waiting.length > 0 && (
        <p data-testid="slots-together">
          {words.together(waiting.map(({ board }) => heldName(board)).join(', '))}
        </p>
      )}
      {values > 0 && <Caution text={words.namedByValue(formatCount(values))} testId="named-by-value" />}
      {slots.isFailed.value && <Caution text={words.proposeFailed} testId="propose-failed" />}
      {slots.isBusy.value ? (
        <div class="reading" role="status" data-testid="proposing">
          <span>{words.proposing}</span>
          <span class="running" />
          <Button onPress={slots.giveUp}>{words.stopProposing}</Button>
        </div>
      ) : (
        <div class="row">
          <Button
            tone={hasPlan ? 'plain' : 'act'}
            large={!hasPlan}
            testId="propose"
            disabledReason={blocked}
            onPress={propose}
          >
            {hasPlan ? words.proposeAgain : words.propose}
          </Button>
          {hasPlan && (
            <Button onPress={() => window.print()} testId="slots-print">
              <Icon name="print" size={22} /> {words.paper.print}
            </Button>
          )}
          {hasPlan && (
            <Button onPress={session.hold} testId="slots-add-board">
              {words.addBoard}
            </Button>
          )}
        </div>
      )}
      {hasPlan && <Difference rows={rows} context={context} />}
      {hasPlan && unknown > 0 && <Caution text={words.widthsUnknown(unknown)} testId="widths-unknown" />}
      {hasPlan && (
        <SlotList session={session} rows={rows} context={context} parts={parts} onChoose={setChosen} />
      )}
      {row !== undefined && context !== null && (
        <SlotPicker
          session={session}
          context={context}
          parts={parts}
          row={row}
          rows={rows}
          onClose={() => setChosen(null)}
        />
      )}
    </section>
  );
}

function Caution({ text, testId }: { readonly text: string; readonly testId: string }) {
  return (
    <div class="caution" data-testid={testId}>
      <Icon name="warn" />
      <span>{text}</span>
    </div>
  );
}

/** What the plan is against the line of today. */
function Difference({ rows, context }: Pick<SlotListProps, 'rows' | 'context'>) {
  const words = say(boardWords);
  const out = inTheWay(rows, context).length;
  const { fresh, moves, stays } = countRows(rows);
  return (
    <p data-testid="slots-difference">
      <b>{words.toPutIn(fresh + moves)}</b>
      <br />
      <span class="soft">
        {words.difference(fresh, moves, stays)}
        {out > 0 && ` ${words.comeOut(out)}`}
      </span>
    </p>
  );
}

interface SlotListProps {
  readonly session: SheetSession;
  readonly rows: readonly SlotRow[];
  readonly context: BoardContext;
  readonly parts: readonly BoardPart[];
  readonly onChoose: (part: string) => void;
}

type Grip = ReturnType<typeof useSlotDrag>['handle'];

/** Bank by bank, with what is free between; a part can be dragged by its handle to any of it. */
function SlotList({ session, rows, context, parts, onChoose }: SlotListProps) {
  const words = say(boardWords);
  const { plan } = session.slots;
  const { drag, handle } = useSlotDrag((part, slot) => {
    const before = rows.find((row) => row.part === part)?.slot ?? null;
    if (before === null || placeKey(before) !== placeKey(slot))
      plan.value = moveTo(planNow(context), part, slot);
  });
  const places = boardPlaces(context);
  const { open } = byWalk(rows);
  const group = (title: string, of: readonly SlotRow[], testId: string) =>
    of.length > 0 && (
      <div class="slot-group" key={title} data-testid={testId}>
        <h3>{title}</h3>
        {of.map((row) => (
          <Row key={row.part} row={row} onChoose={onChoose} grip={handle} />
        ))}
      </div>
    );
  const without = open.filter(({ isLeft }) => !isLeft);
  const left = open.filter(({ isLeft }) => isLeft);
  const held = rows.find(({ part }) => part === drag?.part);
  return (
    <>
      <p class="soft">{words.dragHelp}</p>
      {group(words.openTitle(without.length), without, 'slots-open')}
      {places !== null &&
        bankLists(rows, places).map((list) => (
          <Bank key={list.key} list={list} over={drag?.over ?? null} onChoose={onChoose} grip={handle} />
        ))}
      {group(words.leftTitle(left.length), left, 'slots-left')}
      {drag !== null && held !== undefined && (
        <div
          class="drag-ghost"
          style={{ left: `min(${drag.x}px, calc(100vw - 300px))`, top: `max(${drag.y}px, 180px)` }}
          data-testid="drag-ghost"
        >
          <b class="code" translate={false}>
            {held.part} → {drag.over ?? '…'}
          </b>
          {drag.over !== null &&
            effects(words, { context, parts, row: held, rows }, drag.over).map((text) => (
              <span key={text}>{text}</span>
            ))}
        </div>
      )}
    </>
  );
}

function Bank(props: {
  readonly list: BankList;
  readonly over: string | null;
  readonly onChoose: (part: string) => void;
  readonly grip: Grip;
}) {
  const { list, over, onChoose, grip } = props;
  const words = say(boardWords);
  const { bank } = list;
  const named = bank === null ? words.ownPlaces : `${bank.machine}, ${bank.name}`;
  return (
    <div class="slot-group" data-testid="slots-bank">
      <h3>{bank?.hasTrays ? words.bankOfTrays(named) : named}</h3>
      {list.lines.map((line) =>
        line.is === 'part' ? (
          <Row
            key={line.row.part}
            row={line.row}
            onChoose={onChoose}
            grip={grip}
            isOver={over === line.row.slot}
          />
        ) : (
          <p
            key={line.first}
            class={`slot-free${over === line.first ? ' over' : ''}`}
            data-drop={line.first}
            data-testid={`slot-free-${line.first}`}
          >
            {line.first === line.last ? words.freeOne(line.first) : words.freeRange(line.first, line.last)}
          </p>
        ),
      )}
    </div>
  );
}

/** Why the part is where it is: a word and a shape, the colour beside. */
function Why({ row }: { readonly row: SlotRow }) {
  const words = say(boardWords);
  if (row.slot === null || row.isLeft) return null;
  const why = whyOf(row);
  const blocking = row.faults.some(isBlocking);
  if (blocking) return <span class="chip stop">✕ {row.slot}</span>;
  if (why === 'stays') return <span class="chip go">✓ {words.stays}</span>;
  if (why === 'moves') return <span class="chip care">↔ {words.moves(row.standsOn ?? '')}</span>;
  return <span class="chip">+ {row.isSaid || row.asIn === null ? words.fresh : words.asIn(row.asIn)}</span>;
}

interface RowProps {
  readonly row: SlotRow;
  readonly onChoose: (part: string) => void;
  readonly grip: Grip;
  readonly isOver?: boolean;
}

function Row({ row, onChoose, grip, isOver = false }: RowProps) {
  const words = say(boardWords);
  const told = [
    words.perPanel(formatCount(row.perPanel)),
    sayWidth(words, row),
    ...(row.part === row.board.part ? [] : [words.inFile(row.board.part)]),
    ...(row.isSaid ? [words.said] : []),
  ];
  return (
    <div
      class={`slot-line${isOver ? ' over' : ''}`}
      data-drop={row.isLeft ? undefined : (row.slot ?? undefined)}
    >
      {/* For mouse and finger; the button beside it does the same by keyboard. */}
      <span class="grip" aria-hidden="true" data-testid={`grip-${row.part}`} {...grip(row.part)}>
        ⠿
      </span>
      <button
        type="button"
        class="slot-row"
        data-testid={`slot-row-${row.part}`}
        onClick={() => onChoose(row.part)}
      >
        <b class="code at" translate={false}>
          {row.isLeft ? '–' : (row.slot ?? '?')}
        </b>
        <span class="what">
          <b class="code" translate={false} data-raw>
            {row.part}
          </b>
          <span class="soft">{told.join(' · ')}</span>
          {row.slot === null && !row.isLeft && (
            <span class="wrong">✕ {row.reason === null ? words.noneYet : words.reasons[row.reason]}</span>
          )}
          {row.faults.map((fault) => (
            <span
              class={isBlocking(fault) ? 'wrong' : 'mind'}
              key={`${fault.code}${'part' in fault ? fault.part : ''}`}
            >
              {isBlocking(fault) ? '✕' : '△'} {sayFault(words, fault)}
            </span>
          ))}
        </span>
        <Why row={row} />
      </button>
    </div>
  );
}
