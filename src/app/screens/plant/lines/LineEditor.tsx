// One line in hand: its name and zone, a row a bank, and beside it what comes of it, as a picture.

import { useState } from 'preact/hooks';
import { type LaneHeld, laneHeld } from '../../../../../shared/floor/lane-held.ts';
import {
  nextMachine,
  otherBank,
  type RangesFault,
  readRange,
  type SlotRange,
} from '../../../../../shared/floor/slot-ranges.ts';
import type { FloorState, Line } from '../../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../../app.ts';
import { takeLine } from '../../../line-in-hand.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { Field } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import type { Words } from '../../../words/areas.ts';
import { lineListWords } from '../../../words/lines.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { shellWords } from '../../../words/shell.ts';
import { say } from '../../../words/words.ts';
import { freeLineId } from '../sheet/model.ts';
import { Lanes } from './Lanes.tsx';
import { LinePicture } from './LinePicture.tsx';
import { formOf, type LineForm, type LineObstacle, lanesTold, lineDrafts, readLine } from './model.ts';
import { ZoneField } from './ZoneField.tsx';

interface LineEditorProps {
  readonly line: Line | null;
  /** Null where there is nothing else to go to. */
  readonly onClose: (() => void) | null;
  readonly onSaved: () => void;
}

/** Why it cannot be saved yet. */
function sayObstacle(words: Words<'lines'>, obstacle: LineObstacle): string {
  if (obstacle.code === 'ranges') return words.obstacles.ranges(obstacle.faults.length);
  if (obstacle.code === 'lost')
    return words.obstacles.lost(obstacle.slots.slice(0, 3).join(', '), obstacle.slots.length);
  if (obstacle.code === 'lane-held') return sayHeld(words, obstacle);
  return words.obstacles[obstacle.code];
}

/** What keeps a lane. */
function sayHeld(
  words: Words<'lines'>,
  { name, held }: { readonly name: string; readonly held: LaneHeld },
): string {
  const { runs, reels, open } = words.lanes.held;
  return held.why === 'runs' ? runs(name) : held.why === 'reels' ? reels(held.slots.join(', ')) : open;
}

/** What keeps the last lane of the form from being taken out of it; null where it may go. */
function sayLastHeld(floor: FloorState, form: LineForm, words: Words<'lines'>): string | null {
  const last = form.lanes.at(-1)?.lane ?? null;
  const told = lanesTold(floor, form.line).find(({ lane }) => lane === last && form.opened.includes(lane));
  const held = told ? laneHeld(floor, told.line) : null;
  return told === undefined || held === null ? null : sayHeld(words, { name: told.name, held });
}

export function LineEditor({ line, onClose, onSaved }: LineEditorProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(lineListWords);
  const sheet = say(sheetWords);
  const refusal = useRefusal('define-line');
  const [form, setForm] = useState<LineForm>(() => formOf(floor, line, words.newName));
  const read = readLine(form, floor, sheet.bank);
  const { obstacle } = read;
  const faults = obstacle?.code === 'ranges' ? obstacle.faults : [];
  const save = () => {
    const seen = app.store.floor(); // another tablet may have told of lanes since this was drawn
    const last = readLine(form, seen, sheet.bank);
    if (last.obstacle !== null) return;
    const id = form.line ?? freeLineId(seen);
    app.record(lineDrafts(form, id, last.machines, seen), {
      notice: { tone: 'go', text: words.saved(form.name.trim()) },
      next: () => {
        if (form.line === null) takeLine(app, id);
        onSaved();
      },
    });
  };
  return (
    <div class="stack" data-testid="line-form">
      <section class="card stack">
        <h2>{line ? line.name : words.newTitle}</h2>
        <LineNames form={form} onForm={setForm} />
        <p class="soft">{words.help}</p>
        <Banks form={form} faults={faults} onForm={setForm} />
      </section>
      <Lanes form={form} held={sayLastHeld(floor, form, words)} onForm={setForm} />
      {read.machines !== null && read.machines.length > 0 && (
        <section class="card stack">
          <h2>{words.picture}</h2>
          <LinePicture machines={read.machines} />
        </section>
      )}
      <div class="row">
        <Button
          tone="act"
          large
          testId="line-save"
          disabledReason={refusal ?? (obstacle ? sayObstacle(words, obstacle) : null)}
          onPress={save}
        >
          {words.save}
        </Button>
        {onClose && (
          <Button large onPress={onClose}>
            {say(shellWords).cancel}
          </Button>
        )}
      </div>
    </div>
  );
}

interface PartProps {
  readonly form: LineForm;
  readonly onForm: (form: LineForm) => void;
}

function LineNames({ form, onForm }: PartProps) {
  const words = say(lineListWords);
  return (
    <div class="form">
      <Field
        label={words.name}
        testId="line-name"
        autocomplete="off"
        maxLength={60}
        value={form.name}
        onInput={(name) => onForm({ ...form, name })}
      />
      <ZoneField
        testId="line-zone"
        help={words.zoneHelp}
        value={form.zone}
        onInput={(zone) => onForm({ ...form, zone })}
      />
    </div>
  );
}

/** A row a bank, and what often comes next: the rear bank, the next machine. */
function Banks({ form, faults, onForm }: PartProps & { readonly faults: readonly RangesFault[] }) {
  const words = say(lineListWords);
  const { ranges } = form;
  const put = (next: readonly SlotRange[]) => onForm({ ...form, ranges: next });
  const has = (range: SlotRange) => ranges.some(({ first }) => first.trim() === range.first);
  const across = ranges.flatMap((range) => otherBank(range) ?? []).filter((range) => !has(range));
  const machine = nextMachine(ranges);
  return (
    <>
      {ranges.map((range, at) => (
        <BankRow
          key={at}
          range={range}
          fault={faults.find((fault) => fault.at === at) ?? null}
          number={at + 1}
          onRange={(next) => put(ranges.map((each, index) => (index === at ? next : each)))}
          onRemove={ranges.length > 1 ? () => put(ranges.filter((_, index) => index !== at)) : null}
        />
      ))}
      <div class="row">
        {across.length > 0 && (
          <Button testId="line-across" onPress={() => put([...filled(ranges), ...across])}>
            {words.addAcross(across.map(({ first }) => first).join(', '))}
          </Button>
        )}
        {machine.length > 0 && (
          <Button testId="line-next-machine" onPress={() => put([...filled(ranges), ...machine])}>
            {words.addMachine(machine[0]?.first ?? '')}
          </Button>
        )}
        <Button testId="line-add-bank" onPress={() => put([...ranges, { first: '', last: '' }])}>
          {words.addBank}
        </Button>
      </div>
    </>
  );
}

const filled = (ranges: readonly SlotRange[]) =>
  ranges.filter(({ first, last }) => first.trim() + last.trim() !== '');

/** The range with trays on its places, or feeders again. */
function holding({ first, last }: SlotRange, hasTrays: boolean): SlotRange {
  return hasTrays ? { first, last, holds: 'trays' } : { first, last };
}

function BankRow(props: {
  readonly range: SlotRange;
  readonly fault: RangesFault | null;
  readonly number: number;
  readonly onRange: (range: SlotRange) => void;
  readonly onRemove: (() => void) | null;
}) {
  const { range, fault, number, onRange, onRemove } = props;
  const words = say(lineListWords);
  // Half a bank is no fault while it is typed.
  const isHalf = range.first.trim() === '' || range.last.trim() === '';
  const told = readRange(range);
  const wrong = fault !== null && !isHalf ? words.faults[fault.code] : null;
  return (
    <fieldset class="bank-row">
      <legend>{words.bankOf(number)}</legend>
      <Field
        label={words.first}
        testId={`bank-first-${number}`}
        isCode
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        maxLength={40}
        value={range.first}
        onInput={(first) => onRange({ ...range, first })}
      />
      <Field
        label={words.last}
        testId={`bank-last-${number}`}
        isCode
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        maxLength={40}
        value={range.last}
        onInput={(last) => onRange({ ...range, last })}
        wrong={wrong}
      />
      <span class="soft tells">{told.ok && fault === null ? words.slots(told.value.positions) : ''}</span>
      {onRemove && (
        <Button tone="quiet" label={words.removeOf(number)} onPress={onRemove}>
          <Icon name="cross" />
        </Button>
      )}
      <label class="check">
        <input
          type="checkbox"
          data-testid={`bank-trays-${number}`}
          checked={range.holds === 'trays'}
          onChange={({ currentTarget }) => onRange(holding(range, currentTarget.checked))}
        />
        {words.holdsTrays}
      </label>
    </fieldset>
  );
}
