// What the sheet is: product, side, revision and line; what taking it in changes; and the one button that does it.

import { useState } from 'preact/hooks';
import { NAMELESS } from '../../../../../shared/floor/place.ts';
import type { SheetDiff } from '../../../../../shared/sheet/diff.ts';
import type { SheetSlot } from '../../../../../shared/sheet/slot.ts';
import { useApp, useFloor } from '../../../app.ts';
import { newId } from '../../../device/ids.ts';
import { takeLine } from '../../../line-in-hand.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { ChoiceField, Field } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import type { Words } from '../../../words/areas.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { formatCount, say } from '../../../words/words.ts';
import type { SheetInHand } from './asked.ts';
import {
  boardsOfForm,
  obstacle,
  planTake,
  type TakeForm,
  type TakeObstacle,
  type TakePlan,
  takeDrafts,
} from './model.ts';
import type { SheetSession } from './session.ts';

/** Why it cannot be taken in yet, as a sentence for the button. */
function sayObstacle(words: Words<'sheet'>, found: TakeObstacle): string {
  const { obstacles } = words;
  switch (found.code) {
    case 'sheet-errors':
      return obstacles[found.code](found.count);
    case 'revision-there':
      return obstacles[found.code](found.revision);
    case 'line-there':
      return obstacles[found.code](found.line);
    case 'too-large':
      return obstacles[found.code](found.slots);
    default:
      return obstacles[found.code];
  }
}

interface TakeInProps {
  readonly session: SheetSession;
  readonly inHand: SheetInHand;
  readonly form: TakeForm;
  readonly slots: readonly SheetSlot[];
  /** What the slots come from, by name. */
  readonly source: string;
  /** Whether side and line are still to be asked. */
  readonly asksPlace: boolean;
  /** What keeps it out beside the form itself; null where nothing does. */
  readonly blockedBy: string | null;
}

export function TakeIn(props: TakeInProps) {
  const { session, inHand, form, slots, source, asksPlace, blockedBy } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(sheetWords);
  const refusal = useRefusal('take-setup');
  const [writing, setWriting] = useState(false);
  const { summary, placements, choices } = inHand;
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const plan = planTake(form, slots, { floor, zone, names: words });
  const errors = summary.problems.filter(({ severity }) => severity === 'error').length;
  const found = obstacle(form, plan, { floor, errors });
  // What is read by now may say something else: nothing is taken in by what was read before.
  const waits = session.busy.value === null ? blockedBy : words.steps.checking;

  async function take(): Promise<void> {
    setWriting(true);
    const setup = newId();
    try {
      const boardsPerPanel = placements ? choices.boardsPerPanel : (boardsOfForm(form) ?? 1);
      await app.write(takeDrafts(form, plan, { setup, source, boardsPerPanel }));
      const { line } = plan.line;
      if (plan.isNewLine) takeLine(app, line);
      session.clear();
      session.taken.value = { setup, line, product: form.product.trim(), revision: form.revision.trim() };
    } finally {
      setWriting(false);
    }
  }

  return (
    <>
      <section class="card stack">
        <h2>{words.whatTitle}</h2>
        <Form
          form={form}
          plan={plan}
          zone={zone}
          asksBoards={placements === null}
          asksPlace={asksPlace}
          onChange={(next) => (session.form.value = next)}
        />
        <Growth plan={plan} />
        {plan.parts.length > 0 && (
          <p class="soft" data-testid="take-packages">
            {words.packages(formatCount(plan.parts.length))}
          </p>
        )}
      </section>
      {plan.diff && plan.before && <Changes diff={plan.diff} revision={plan.before.revision} />}
      <div class="take">
        <Button
          tone="act"
          large
          testId="sheet-take"
          disabledReason={refusal ?? waits ?? (found ? sayObstacle(words, found) : writing ? '…' : null)}
          onPress={() => {
            take().catch(() => undefined); // shown by the fault screen
          }}
        >
          {words.take}
        </Button>
        {!plan.diff && found === null && waits === null && <span class="soft">{words.first}</span>}
      </div>
    </>
  );
}

function Form(props: {
  readonly form: TakeForm;
  readonly plan: TakePlan;
  readonly zone: string;
  /** False where the placement file's own field has asked already. */
  readonly asksBoards: boolean;
  /** False where the board's own card has asked for side and line already. */
  readonly asksPlace: boolean;
  readonly onChange: (form: TakeForm) => void;
}) {
  const { form, plan, onChange } = props;
  const words = say(sheetWords);
  const floor = useFloor();
  const lines = [...floor.lines.values()];
  const text = (
    key: 'product' | 'revision' | 'newLine' | 'newLineName' | 'boards',
    label: string,
    help: string | null = null,
  ) => (
    <Field
      key={key}
      label={label}
      testId={`take-${key}`}
      autocomplete="off"
      maxLength={key === 'newLine' ? 20 : 120}
      value={form[key] ?? ''}
      onInput={(text) => onChange({ ...form, [key]: text })}
      help={help}
    />
  );
  return (
    <div class="form">
      {text('product', words.product)}
      {text('revision', words.revision, plan.before ? words.revisionHelp(plan.before.revision) : null)}
      {props.asksPlace && (
        <ChoiceField
          label={words.side}
          value={form.side}
          choices={(['top', 'bottom'] as const).map((side) => ({
            value: side,
            text: words.sides[side],
            testId: `take-${side}`,
          }))}
          onChoose={(side) => onChange({ ...form, side })}
        />
      )}
      {props.asksPlace && lines.length > 0 && (
        <ChoiceField<string | null>
          label={words.line}
          value={form.line}
          choices={[
            ...lines.map(({ line, name }) => ({ value: line, text: name, testId: `take-line-${line}` })),
            { value: null, text: words.newLine, testId: 'take-new-line' },
          ]}
          onChoose={(line) => onChange({ ...form, line })}
        />
      )}
      {props.asksBoards && text('boards', words.boards, words.boardsTakeHelp)}
      {props.asksPlace &&
        form.line === null &&
        text('newLineName', words.newLineName, words.zone(props.zone))}
      {props.asksPlace && form.line === null && text('newLine', words.newLineId)}
    </div>
  );
}

/** What taking it in adds to the line; a sheet for another line shows here before it does harm. */
function Growth({ plan }: { readonly plan: TakePlan }) {
  const words = say(sheetWords);
  if (plan.grown.length === 0) return null;
  const named = (machine: string, bank: string) =>
    [machine, words.bank(bank)].filter((name) => name !== NAMELESS).join(' ');
  return (
    <div class={plan.isNewLine ? 'told' : 'caution'} data-testid="growth">
      {!plan.isNewLine && <Icon name="warn" />}
      <div>
        <b>{plan.isNewLine ? words.defines : words.grows}</b>
        <ul>
          {plan.grown.map(({ machine, bank, before, after }) => (
            <li key={`${machine}${bank}`}>
              {before === 0
                ? words.newBank(named(machine, bank), after)
                : words.longerBank(named(machine, bank), before, after)}
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}

const FIRST_CHANGES = 12;

function Changes({ diff, revision }: { readonly diff: SheetDiff; readonly revision: string }) {
  const words = say(sheetWords);
  const [opened, setOpened] = useState(false);
  const show = (value: SheetDiff['changed'][number]['fields'][number]['before']): string => {
    if (value === null || value === '') return words.nothing;
    if (typeof value === 'boolean') return value ? words.yes : words.no;
    if (typeof value === 'object') return value.length === 0 ? words.nothing : value.join(', ');
    return String(value);
  };
  const rows = [
    ...diff.changed.map(({ slot, fields }) => ({
      slot,
      tone: 'care',
      mark: `△ ${words.changed}`,
      text: fields
        .map(({ field, before, after }) => `${words.fieldsChanged[field]} ${show(before)} → ${show(after)}`)
        .join(' · '),
    })),
    ...diff.added.map(({ slot, part }) => ({ slot, tone: 'go', mark: `+ ${words.added}`, text: part })),
    ...diff.removed.map(({ slot, part }) => ({ slot, tone: 'stop', mark: `− ${words.removed}`, text: part })),
  ];
  const shown = opened ? rows : rows.slice(0, FIRST_CHANGES);
  return (
    <section class="card stack" data-testid="changes">
      <div class="row">
        <h2>{words.changesTitle(revision)}</h2>
        {rows.length === 0 && <span class="chip">{words.noChanges}</span>}
      </div>
      {shown.length > 0 && (
        <div>
          {shown.map((row) => (
            <div class="change" key={`${row.mark}${row.slot}`}>
              <span class={`chip ${row.tone}`}>{row.mark}</span>
              <b class="code" translate={false}>
                {row.slot}
              </b>
              <span>{row.text}</span>
            </div>
          ))}
        </div>
      )}
      {rows.length > FIRST_CHANGES && (
        <div>
          <Button onPress={() => setOpened(!opened)}>
            {opened ? words.fewer : words.more(rows.length - FIRST_CHANGES)}
          </Button>
        </div>
      )}
      <p class="soft">{words.same(formatCount(diff.same))}</p>
    </section>
  );
}
