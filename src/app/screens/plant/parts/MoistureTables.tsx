// The floor-life and bake tables cell by cell: what each rests on, and the plant's own values from its licensed copy.

import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { bakeKey, lifeKey } from '../../../../../shared/floor/moisture-rules.ts';
import { type BakeBody, bakeBodies } from '../../../../../shared/floor/vocabulary.ts';
import { bakeTemperatures } from '../../../../../shared/moisture/bake.ts';
import { type TableLevel, tableHumidities, tableLevels } from '../../../../../shared/moisture/derating.ts';
import { type PackageClass, packageClasses } from '../../../../../shared/moisture/levels.ts';
import { moistureRuling } from '../../../../../shared/moisture/reel-life.ts';
import { SHIPPED_EDITION, type ValueSource, valueSources } from '../../../../../shared/moisture/values.ts';
import { useApp, useFloor } from '../../../app.ts';
import { recordOwn } from '../../../frame/signed.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { ChoiceField, Field } from '../../../ui/Field.tsx';
import { packagesWords } from '../../../words/packages.ts';
import { formatDay, formatNumber, say } from '../../../words/words.ts';
import { type Editing, ValueDialog } from './MoistureValue.tsx';
import {
  bakeRows,
  draftObstacle,
  draftToRuled,
  isOutOfOrder,
  lifeRows,
  type MoistureDraft,
  moistureDraft,
} from './moisture-model.ts';

export function MoistureTables() {
  const app = useApp();
  const floor = useFloor();
  const words = say(packagesWords).tables;
  const refusal = useRefusal('rule-moisture');
  const ruling = moistureRuling(floor);
  const [draft, setDraft] = useState(() => moistureDraft(ruling));
  const [table, setTable] = useState<'life' | 'bake'>('life');
  const [editing, setEditing] = useState<Editing | null>(null);
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const obstacle = draftObstacle(draft, ruling);
  return (
    <div class="stack moisture">
      <p>{words.intro}</p>
      <p class="soft" data-testid="moisture-follows">
        {words.shipped(SHIPPED_EDITION)}
        {ruling && <> {words.own(ruling.ruled.edition, ruling.ruled.source, formatDay(ruling.atMs, zone))}</>}
      </p>
      <Legend />
      <Choice
        label={words.which}
        at={table}
        all={['life', 'bake'] as const}
        text={(each) => words[each]}
        name="table"
        onChoose={setTable}
      />
      {table === 'life' ? (
        <LifeTable draft={draft} canEdit={refusal === null} onEdit={setEditing} />
      ) : (
        <BakeTable draft={draft} canEdit={refusal === null} onEdit={setEditing} />
      )}
      <OwnCopy draft={draft} onChange={setDraft} />
      <Button
        tone="act"
        large
        testId="moisture-save"
        disabledReason={refusal ?? (obstacle && words[obstacle])}
        onPress={() => {
          recordOwn(app, [{ kind: 'moisture.ruled', payload: draftToRuled(draft) }], {
            notice: { tone: 'go', text: words.saved },
          });
        }}
      >
        {words.save}
      </Button>
      {editing && (
        <ValueDialog
          editing={editing}
          isOdd={(days) => editing.of === 'life' && isOutOfOrder(draft, { ...editing.cell, days })}
          onClose={() => setEditing(null)}
          onTake={(value) => {
            setDraft(withValue(draft, editing, value));
            setEditing(null);
          }}
        />
      )}
    </div>
  );
}

/** The draft with a cell's value; undefined: as shipped. */
function withValue(draft: MoistureDraft, editing: Editing, value: number | null | undefined): MoistureDraft {
  if (editing.of === 'life') {
    const lives = new Map(draft.lives);
    if (value === undefined) lives.delete(lifeKey(editing.cell));
    else lives.set(lifeKey(editing.cell), { ...editing.cell, days: value });
    return { ...draft, lives };
  }
  const bakes = new Map(draft.bakes);
  if (typeof value !== 'number') bakes.delete(bakeKey(editing.cell));
  else bakes.set(bakeKey(editing.cell), { ...editing.cell, hours: value });
  return { ...draft, bakes };
}

function Legend() {
  const words = say(packagesWords).tables;
  return (
    <ul class="legend">
      {valueSources.map((source) => (
        <li key={source} data-testid={`legend-${source}`}>
          <b aria-hidden="true">{words.marks[source]}</b> {words.legend[source]}
        </li>
      ))}
    </ul>
  );
}

function Choice<T extends string>(props: {
  readonly label: string;
  readonly at: T;
  readonly all: readonly T[];
  readonly text: (each: T) => string;
  readonly name: string;
  readonly onChoose: (each: T) => void;
}) {
  return (
    <ChoiceField
      label={props.label}
      value={props.at}
      choices={props.all.map((each) => ({
        value: each,
        text: props.text(each),
        testId: `${props.name}-${each}`,
      }))}
      onChoose={props.onChoose}
    />
  );
}

interface TableProps {
  readonly draft: MoistureDraft;
  readonly canEdit: boolean;
  readonly onEdit: (editing: Editing) => void;
}

/** One value with the mark of what it rests on. */
function Cell(props: {
  readonly shown: string;
  readonly said: string;
  readonly source: ValueSource;
  readonly canEdit: boolean;
  readonly testId: string;
  readonly onEdit: () => void;
}) {
  const words = say(packagesWords).tables;
  const { shown, said, source } = props;
  return (
    <td class={source}>
      <button
        type="button"
        disabled={!props.canEdit}
        data-testid={props.testId}
        aria-label={`${said}: ${words.legend[source]}`}
        onClick={props.onEdit}
      >
        {shown} <small aria-hidden="true">{words.marks[source]}</small>
      </button>
    </td>
  );
}

function Scrolled({ caption, children }: { readonly caption: string; readonly children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scrolled" tabIndex={0} aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        {children}
      </table>
    </section>
  );
}

function LifeTable({ draft, canEdit, onEdit }: TableProps) {
  const words = say(packagesWords).tables;
  const [packageClass, setClass] = useState<PackageClass>('A');
  const [level, setLevel] = useState<TableLevel>('3');
  return (
    <>
      <Choice
        label={words.class}
        at={packageClass}
        all={packageClasses}
        text={(each) => words.classes[each]}
        name="class"
        onChoose={setClass}
      />
      <Choice
        label={words.msl}
        at={level}
        all={tableLevels}
        text={(each) => each}
        name="level"
        onChoose={setLevel}
      />
      <Scrolled caption={words.lifeCaption}>
        <thead>
          <tr>
            <th scope="col">°C</th>
            {tableHumidities.map((humidity) => (
              <th scope="col" key={humidity}>
                {humidity} %
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lifeRows(draft, packageClass, level).map(({ celsius, cells }) => (
            <tr key={celsius}>
              <th scope="row">{celsius}</th>
              {cells.map(({ humidity, days, source }) => (
                <Cell
                  key={humidity}
                  shown={days === null ? words.noLimit : formatNumber(days)}
                  said={days === null ? words.noLimitSaid : formatNumber(days)}
                  source={source}
                  canEdit={canEdit}
                  testId={`cell-${celsius}-${humidity}`}
                  onEdit={() =>
                    onEdit({
                      of: 'life',
                      cell: { class: packageClass, level, celsius, humidity, days },
                      where: `${packageClass} · MSL\u00a0${level} · ${celsius}\u00a0°C · ${humidity}\u00a0%`,
                      isOwn: source === 'own',
                    })
                  }
                />
              ))}
            </tr>
          ))}
        </tbody>
      </Scrolled>
    </>
  );
}

function BakeTable({ draft, canEdit, onEdit }: TableProps) {
  const words = say(packagesWords).tables;
  const [body, setBody] = useState<BakeBody>('thin');
  return (
    <>
      <Choice
        label={words.body}
        at={body}
        all={bakeBodies}
        text={(each) => words.bodies[each]}
        name="body"
        onChoose={setBody}
      />
      <Scrolled caption={words.bakeCaption}>
        <thead>
          <tr>
            <th scope="col">MSL</th>
            {bakeTemperatures.flatMap((celsius) =>
              [words.late, words.soon].map((when) => (
                <th scope="col" key={`${celsius} ${when}`}>
                  {celsius} °C
                  <br />
                  <small>{when}</small>
                </th>
              )),
            )}
          </tr>
        </thead>
        <tbody>
          {bakeRows(draft, body).map(({ level, cells }) => (
            <tr key={level}>
              <th scope="row">{level}</th>
              {cells.map(({ celsius, isLong, value }) => (
                <Cell
                  key={`${celsius} ${isLong}`}
                  shown={value === null ? words.none : formatNumber(value.hours)}
                  said={value === null ? words.noneHelp : formatNumber(value.hours)}
                  source={value?.source ?? 'memory'}
                  canEdit={canEdit}
                  testId={`bake-${level}-${celsius}-${isLong ? 'late' : 'soon'}`}
                  onEdit={() =>
                    onEdit({
                      of: 'bake',
                      cell: { body, level, celsius, isLong, hours: value?.hours ?? 0 },
                      where: `${words.bodies[body]} · MSL\u00a0${level} · ${celsius}\u00a0°C · ${isLong ? words.late : words.soon}`,
                      isOwn: value?.source === 'own',
                    })
                  }
                />
              ))}
            </tr>
          ))}
        </tbody>
      </Scrolled>
    </>
  );
}

function OwnCopy(props: {
  readonly draft: MoistureDraft;
  readonly onChange: (draft: MoistureDraft) => void;
}) {
  const words = say(packagesWords).tables;
  const { draft, onChange } = props;
  const text = (key: 'edition' | 'source', help: string | null) => (
    <Field
      label={words[key]}
      testId={`moisture-${key}`}
      autocomplete="off"
      maxLength={200}
      value={draft[key]}
      onInput={(text) => onChange({ ...draft, [key]: text })}
      help={help}
    />
  );
  return (
    <div class="form">
      {text('edition', words.editionHelp)}
      {text('source', null)}
      <div class="field whole">
        <div class="choice">
          <button
            type="button"
            aria-pressed={draft.cabinetPauses}
            data-testid="moisture-cabinet"
            onClick={() => onChange({ ...draft, cabinetPauses: !draft.cabinetPauses })}
          >
            {draft.cabinetPauses ? '✓ ' : ''}
            {words.cabinet}
          </button>
        </div>
        <small>{words.cabinetHelp}</small>
      </div>
    </div>
  );
}
