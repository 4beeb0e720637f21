// The line's rules: what a shift lead or engineer would otherwise keep on a sheet beside the machine.

import { useState } from 'preact/hooks';
import { IDLE_MINUTES, longestShiftMinutes } from '../../../../shared/floor/sign-out.ts';
import type { LineRules } from '../../../../shared/floor/state.ts';
import { pickOrders } from '../../../../shared/floor/vocabulary.ts';
import { isBeyondTable, lineClimate } from '../../../../shared/moisture/line-climate.ts';
import { useApp, useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { plantWords } from '../../words/plant.ts';
import { say } from '../../words/words.ts';
import {
  firstRules,
  formToClimate,
  formToCosts,
  formToIdle,
  formToRules,
  type RulesForm,
  rulesToForm,
  tapeWidthsOn,
} from './rules-form.ts';

export function Rules() {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords).rules;
  const line = app.line.value;
  const rules = line === null ? null : (floor.rules.get(line) ?? firstRules(line));
  const [form, setForm] = useState<RulesForm | null>(
    rules
      ? rulesToForm(
          rules,
          lineClimate(floor, line).entered,
          floor.idles.get(line ?? ''),
          floor.spliceCosts.get(line ?? ''),
        )
      : null,
  );
  const [wrong, setWrong] = useState<string | null>(null);
  if (!form || !rules || line === null) return <p class="empty">{words.noLine}</p>;
  const climate = formToClimate(form);
  const climateHelp = climate && isBeyondTable(climate) ? words.climateBeyond : words.climateHelp;
  const change = (part: Partial<RulesForm>) => {
    setWrong(null);
    setForm({ ...form, ...part });
  };
  const number = (
    key:
      | 'leadMinutes'
      | 'walkSeconds'
      | 'spliceSeconds'
      | 'hubMm'
      | 'intakeMm'
      | 'lossPercent'
      | 'labelPercent'
      | 'floorCelsius'
      | 'floorHumidity'
      | 'idleMinutes',
    unit: string,
    label: string,
    help?: string,
  ) => (
    <label class="field" key={key}>
      <span>{label}</span>
      <span class="unit">
        <input
          data-typing
          data-testid={`rule-${key}`}
          inputMode="decimal"
          value={form[key]}
          onInput={(event) => change({ [key]: event.currentTarget.value })}
        />
        {unit}
      </span>
      {help !== undefined && <small>{help}</small>}
    </label>
  );
  return (
    <div class="form">
      {number('leadMinutes', words.minutes, words.lead)}
      {number('walkSeconds', words.seconds, words.walk)}
      {number('spliceSeconds', words.seconds, words.splice)}
      {number('hubMm', 'mm', words.hub, words.lengthHelp)}
      {number('intakeMm', 'mm', words.intake, words.lengthHelp)}
      {number('lossPercent', '%', words.loss)}
      {number('labelPercent', '%', words.label, words.labelHelp)}
      <SpliceParts
        widths={tapeWidthsOn(floor, line)}
        typed={form.spliceParts}
        onChange={(spliceParts) => change({ spliceParts })}
      />
      <PickOrderField value={form.pickOrder} onChange={(pickOrder) => change({ pickOrder })} />
      {number('floorCelsius', '°C', words.floorCelsius)}
      {number('floorHumidity', '%', words.floorHumidity, climateHelp)}
      {number('idleMinutes', words.minutes, words.idle, words.idleHelp(longestShiftMinutes(form)))}
      <WeeklyField label={words.shifts} rows={form.shifts} onChange={(shifts) => change({ shifts })} />
      <WeeklyField label={words.breaks} rows={form.breaks} onChange={(breaks) => change({ breaks })} />
      <div class="field whole">
        <span>{words.comparison}</span>
        <div class="choice">
          {(['ignoreCase', 'ignoreSpaces', 'ignoreDashes'] as const).map((key) => (
            <button
              type="button"
              key={key}
              aria-pressed={form[key]}
              onClick={() => change({ [key]: !form[key] })}
            >
              {form[key] ? '✓ ' : ''}
              {words[key]}
            </button>
          ))}
          <button
            type="button"
            aria-pressed={form.feedersKnown}
            onClick={() => change({ feedersKnown: !form.feedersKnown })}
          >
            {form.feedersKnown ? '✓ ' : ''}
            {words.feeders}
          </button>
        </div>
      </div>
      <label class="field whole">
        <span>{words.suffixes}</span>
        <input
          data-typing
          value={form.suffixes}
          onInput={(event) => change({ suffixes: event.currentTarget.value })}
        />
      </label>
      <div class="whole row">
        <Button
          tone="act"
          large
          testId="rules-save"
          onPress={() => {
            const next: LineRules | null = formToRules(form, rules);
            if (!next) return setWrong(words.wrong);
            if (!climate) return setWrong(words.wrongClimate);
            const idle = formToIdle(form);
            if (idle === null) return setWrong(words.wrongIdle(longestShiftMinutes(form)));
            const costs = formToCosts(form);
            if (costs === null) return setWrong(words.wrongSplice);
            const { entered } = lineClimate(floor, line);
            const isSame = entered.celsius === climate.celsius && entered.humidity === climate.humidity;
            app
              .write([
                {
                  kind: 'line.ruled',
                  payload: { ...next, shifts: [...next.shifts], breaks: [...next.breaks] },
                },
                ...(isSame ? [] : [{ kind: 'line.climate-ruled' as const, payload: { line, ...climate } }]),
                ...(JSON.stringify(costs) === JSON.stringify(floor.spliceCosts.get(line) ?? [])
                  ? []
                  : [{ kind: 'line.splices-ruled' as const, payload: { line, costs } }]),
                ...(idle === (floor.idles.get(line) ?? IDLE_MINUTES)
                  ? []
                  : [{ kind: 'line.idle-ruled' as const, payload: { line, minutes: idle } }]),
              ])
              .then(
                () => {
                  app.notice.value = { tone: 'go', text: words.saved };
                },
                () => undefined, // shown by the fault screen
              );
          }}
        >
          {words.save}
        </Button>
        {wrong !== null && (
          <span class="chip stop" role="alert" data-testid="rules-wrong">
            {wrong}
          </span>
        )}
      </div>
    </div>
  );
}

/** What a splice itself loses, a field for each width of tape: all feeders of a width count as one type. */
function SpliceParts(props: {
  readonly widths: readonly number[];
  readonly typed: RulesForm['spliceParts'];
  readonly onChange: (typed: RulesForm['spliceParts']) => void;
}) {
  const words = say(plantWords).rules;
  const { typed } = props;
  return (
    <div class="field whole">
      <span>{words.spliceParts}</span>
      <div class="form">
        {[...props.widths.map(String), ''].map((width) => (
          <label class="field" key={width}>
            <span>{width === '' ? words.spliceOther : words.spliceOn(width)}</span>
            <input
              data-typing
              data-testid={`rule-splice-${width === '' ? 'other' : width}`}
              inputMode="decimal"
              value={typed[width] ?? ''}
              onInput={(event) => props.onChange({ ...typed, [width]: event.currentTarget.value })}
            />
          </label>
        ))}
      </div>
      <small>{words.spliceHelp}</small>
    </div>
  );
}

function PickOrderField(props: {
  readonly value: RulesForm['pickOrder'];
  readonly onChange: (order: RulesForm['pickOrder']) => void;
}) {
  const words = say(plantWords).rules;
  return (
    <div class="field whole">
      <span>{words.pickOrder}</span>
      <div class="choice">
        {pickOrders.map((order) => (
          <button
            type="button"
            key={order}
            data-testid={`rule-${order}`}
            aria-pressed={props.value === order}
            onClick={() => props.onChange(order)}
          >
            {props.value === order ? '✓ ' : ''}
            {words.pickOrders[order]}
          </button>
        ))}
      </div>
    </div>
  );
}

type Weekly = LineRules['shifts'][number];

function WeeklyField(props: {
  readonly label: string;
  readonly rows: readonly Weekly[];
  readonly onChange: (rows: Weekly[]) => void;
}) {
  const words = say(plantWords).rules;
  const { rows, onChange } = props;
  const set = (index: number, part: Partial<Weekly>) =>
    onChange(rows.map((row, at) => (at === index ? { ...row, ...part } : row)));
  return (
    <div class="field whole">
      <span>{props.label}</span>
      {rows.map((row, index) => (
        <div class="weekly" key={`${index}${rows.length}`}>
          <div class="choice">
            {words.days.map((day, at) => {
              const on = row.days.includes(at + 1);
              return (
                <button
                  type="button"
                  key={day}
                  aria-pressed={on}
                  onClick={() =>
                    set(index, {
                      days: on
                        ? row.days.filter((each) => each !== at + 1)
                        : [...row.days, at + 1].sort((a, b) => a - b),
                    })
                  }
                >
                  {day}
                </button>
              );
            })}
          </div>
          <span>{words.from}</span>
          <input
            type="time"
            aria-label={words.from}
            value={row.from}
            onInput={(event) => set(index, { from: event.currentTarget.value })}
          />
          <span>{words.to}</span>
          <input
            type="time"
            aria-label={words.to}
            value={row.to}
            onInput={(event) => set(index, { to: event.currentTarget.value })}
          />
          <Button onPress={() => onChange(rows.filter((_, at) => at !== index))}>{words.removeRow}</Button>
        </div>
      ))}
      <div>
        <Button onPress={() => onChange([...rows, { days: [1, 2, 3, 4, 5], from: '06:00', to: '14:00' }])}>
          {words.addRow}
        </Button>
      </div>
    </div>
  );
}
