// A setup sheet in: choose it, look at its columns and problems, say what it is, see what changes, take it in.

import { effect } from '@preact/signals';
import { keepChoice } from '../../../../../shared/sheet/choice.ts';
import { sheetFields } from '../../../../../shared/sheet/fields.ts';
import { type App, useApp, useFloor } from '../../../app.ts';
import { takeLine } from '../../../line-in-hand.ts';
import { useRefusal } from '../../../may.ts';
import { address, fromHereTo } from '../../../router.ts';
import { Button } from '../../../ui/Button.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { plantWords } from '../../../words/plant.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { say } from '../../../words/words.ts';
import { asChosen } from './as-chosen.ts';
import { Board, type WayProps } from './Board.tsx';
import { Columns } from './Columns.tsx';
import { FileColumns } from './FileColumns.tsx';
import { Held } from './Held.tsx';
import { Problems } from './Problems.tsx';
import { createSheetReader } from './reader.ts';
import { ChooseSheet, SourceCard } from './Source.tsx';
import { createSheetSession, type Remember, type SheetSession, type Taken } from './session.ts';
import { TakeIn } from './TakeIn.tsx';
import './sheet.css';

let kept: SheetSession | null = null;

/** The one sheet in hand of this window. */
function sessionOf(app: App): SheetSession {
  if (kept) return kept;
  kept = createSheetSession(createSheetReader(), {
    floor: app.store.floor,
    line: () => app.line.value,
    remembered: () => app.preferences.value.sheetColumns,
  });
  holdTask(app, kept);
  return kept;
}

/** A sheet in hand is a task that an update of the app must not end. */
function holdTask(app: App, { inHand, held }: SheetSession): void {
  let isHeld = false;
  effect(() => {
    const holds = inHand.value !== null || held.value.length > 0;
    if (holds !== isHeld) app.openTasks.value = app.openTasks.peek() + (holds ? 1 : -1);
    isHeld = holds;
  });
}

export function Sheet() {
  const app = useApp();
  const session = sessionOf(app);
  const inHand = session.inHand.value;
  const form = session.form.value;
  const taken = session.taken.value;
  const remember = (choice: Remember | null) => {
    if (!choice) return;
    const { value } = app.preferences;
    app.preferences.value = { ...value, sheetColumns: keepChoice(value.sheetColumns, choice) };
  };
  return (
    <div class="stack sheet">
      <Waiting session={session} />
      {!inHand && <Held session={session} />}
      {taken && <TakenCard taken={taken} session={session} />}
      {!taken && !inHand && <ChooseSheet session={session} />}
      {inHand && form && inHand.sheet !== null && (
        <SheetWay session={session} inHand={inHand} form={form} remember={remember} />
      )}
      {inHand && form && inHand.sheet === null && (
        <Board session={session} inHand={inHand} form={form} remember={remember} />
      )}
    </div>
  );
}

/** A sheet that names its slots. */
function SheetWay({ session, inHand, form, remember }: WayProps) {
  const words = say(sheetWords);
  const { summary, sheet } = inHand;
  return (
    <>
      <SourceCard session={session} inHand={inHand} />
      <Columns
        title={words.columnsTitle}
        columns={asChosen(summary, session.choosing.value).columns}
        fields={sheetFields}
        nameOf={(field) => words.fields[field]}
        isRemembered={summary.isRemembered}
        isLacking={summary.problems.some(
          ({ code, role }) => role === 'sheet' && (code === 'columnMissing' || code === 'columnAbsent'),
        )}
        key={sheet?.number}
        onChoose={(index, field) => remember(session.chooseSheetColumn(index, field))}
        testId="columns"
      />
      <FileColumns session={session} summary={summary} remember={remember} />
      <Problems summary={summary} help={words.errorsBlock} />
      <TakeIn
        session={session}
        inHand={inHand}
        form={form}
        slots={summary.slots}
        source={sheet?.name ?? ''}
        asksPlace={true}
        blockedBy={null}
      />
    </>
  );
}

/** Reading takes its time, or could not be done; what was there before stays below. */
function Waiting({ session }: { readonly session: SheetSession }) {
  const words = say(sheetWords);
  const busy = session.busy.value;
  const fault = session.fault.value;
  if (busy) {
    return (
      <div class="reading" role="status" data-testid="reading">
        <span>{words.steps[busy.step]}</span>
        <span class="running" />
        <Button onPress={session.giveUp}>{words.stop}</Button>
      </div>
    );
  }
  if (!fault) return null;
  return (
    <div class="caution fault" role="alert" data-testid="sheet-fault">
      <Icon name="warn" />
      <div>
        <b translate={false}>{fault.name}</b>
        <br />
        {words.faults[fault.fault]}
        {session.inHand.value && ` ${words.kept}`}
      </div>
    </div>
  );
}

function TakenCard({ taken, session }: { readonly taken: Taken; readonly session: SheetSession }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(sheetWords);
  const setups = say(plantWords).setups;
  const refusal = useRefusal('choose-setup');
  const blocked = refusal ?? (floor.current.has(taken.line) ? setups.runOpen : null);
  return (
    <section class="card stack taken" data-testid="sheet-taken">
      <h2>
        <Icon name="check" size={32} /> {words.taken(taken.product, taken.revision)}
      </h2>
      <div class="row">
        <Button
          tone="act"
          large
          disabledReason={blocked}
          testId="sheet-build"
          onPress={() => {
            const { line, setup } = taken;
            const goOn = fromHereTo('load');
            app.record([{ kind: 'setup.chosen', payload: { line, setup } }], {
              next: () => {
                takeLine(app, line);
                app.notice.value = { tone: 'go', text: setups.chosenNow(taken.product) };
                session.clear();
                goOn();
              },
            });
          }}
        >
          {words.build}
        </Button>
        <a class="button large" href={address('plant', 'setups')}>
          {words.allSetups}
        </a>
        <Button large onPress={session.clear} testId="sheet-next">
          {words.next}
        </Button>
      </div>
      {blocked === null && <p class="soft">{words.buildHelp}</p>}
    </section>
  );
}
