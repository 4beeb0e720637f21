// The line's rules: what a shift lead or engineer would otherwise keep on a sheet beside the machine.

import { useState } from 'preact/hooks';
import { plantDay } from '../../../../shared/floor/plant-day.ts';
import { longestShiftMinutes } from '../../../../shared/floor/sign-out.ts';
import { pickOrders } from '../../../../shared/floor/vocabulary.ts';
import { isBeyondTable, lineClimate } from '../../../../shared/moisture/line-climate.ts';
import { useApp, useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { plantWords } from '../../words/plant.ts';
import { weekWords } from '../../words/week.ts';
import { say } from '../../words/words.ts';
import { AgeLimits } from './AgeLimits.tsx';
import { firstRules, formToClimate, type RulesForm, rulesToForm, tapeWidthsOn } from './rules-form.ts';
import { pageOf, type RulesFault, type RulesPage, rulesWishes, withWeeks } from './rules-wishes.ts';
import { WeekPlan } from './week/WeekPlan.tsx';

export function Rules() {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords).rules;
  const line = app.line.value;
  const rules = line === null ? null : (floor.rules.get(line) ?? firstRules(line));
  const [page, setPage] = useState<RulesPage | null>(
    rules
      ? pageOf(
          floor,
          rules,
          rulesToForm(
            rules,
            lineClimate(floor, line).entered,
            floor.idles.get(line ?? ''),
            floor.spliceCosts.get(line ?? ''),
          ),
        )
      : null,
  );
  const [wrong, setWrong] = useState<string | null>(null);
  if (!page || !rules || line === null) return <p class="empty">{words.noLine}</p>;
  const { form } = page;
  const climate = formToClimate(form);
  const climateHelp = climate && isBeyondTable(climate) ? words.climateBeyond : words.climateHelp;
  const turn = (next: RulesPage) => {
    setWrong(null);
    setPage(next);
  };
  const change = (part: Partial<RulesForm>) => turn({ ...page, form: { ...form, ...part } });
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
  const tape = (key: 'trailerMm' | 'leaderMm', label: string, help: string) => (
    <label class="field">
      <span>{label}</span>
      <span class="unit">
        <input
          data-typing
          data-testid={`rule-${key}`}
          inputMode="decimal"
          value={page[key]}
          onInput={(event) => turn({ ...page, [key]: event.currentTarget.value })}
        />
        mm
      </span>
      <small>{help}</small>
    </label>
  );
  return (
    <div class="form">
      {number('leadMinutes', words.minutes, words.lead)}
      {number('walkSeconds', words.seconds, words.walk)}
      {number('spliceSeconds', words.seconds, words.splice)}
      {number('hubMm', 'mm', words.hub, words.lengthHelp)}
      {number('intakeMm', 'mm', words.intake, words.lengthHelp)}
      {tape('trailerMm', words.trailer, words.trailerHelp)}
      {tape('leaderMm', words.leader, words.leaderHelp)}
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
      <WeekPlan
        weeks={page.weeks}
        today={plantDay(floor, line, app.clock.nowMs())}
        onChange={(weeks) => turn(withWeeks(page, weeks))}
      />
      <AgeLimits rows={page.ages} onChange={(ages) => turn({ ...page, ages })} />
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
            const told = rulesWishes(floor, rules, page);
            if ('fault' in told) return setWrong(faultText(told.fault));
            app.write([...told.wishes]).then(
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

/** What keeps the rules from being saved, in a sentence. */
function faultText(fault: RulesFault): string {
  const words = say(plantWords).rules;
  if (fault.code === 'week') {
    const week = say(weekWords);
    const { code, from, to } = fault.fault;
    return week.faults[code](week.span(from.replace('T', ' '), to.replace('T', ' ')));
  }
  if (fault.code === 'idle') return words.wrongIdle(fault.most);
  if (fault.code === 'climate') return words.wrongClimate;
  if (fault.code === 'splice') return words.wrongSplice;
  return fault.code === 'ages' ? words.wrongAges : words.wrong;
}
