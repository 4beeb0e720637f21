// The line's rules: what a shift lead or engineer would otherwise keep on a sheet beside the machine.

import { useState } from 'preact/hooks';
import { plantDay } from '../../../../shared/floor/plant-day.ts';
import { longestShiftMinutes } from '../../../../shared/floor/sign-out.ts';
import type { FloorState, LineRules } from '../../../../shared/floor/state.ts';
import { pickOrders } from '../../../../shared/floor/vocabulary.ts';
import { isBeyondTable, lineClimate } from '../../../../shared/moisture/line-climate.ts';
import { useApp, useFloor } from '../../app.ts';
import { recordOwn } from '../../frame/signed.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField, Field, GroupField } from '../../ui/Field.tsx';
import { picturesWords } from '../../words/pictures.ts';
import { plantWords } from '../../words/plant.ts';
import { valueWords } from '../../words/values.ts';
import { weekWords } from '../../words/week.ts';
import { say } from '../../words/words.ts';
import { AgeLimits } from './AgeLimits.tsx';
import { PictureRule } from './PictureRule.tsx';
import { pageOf, type RulesFault, type RulesPage, rulesDrafts, withWeeks } from './rules-drafts.ts';
import { firstRules, formToClimate, type RulesForm, rulesToForm, tapeWidthsOn } from './rules-form.ts';
import { ValueRules } from './ValueRules.tsx';
import { WeekPlan } from './week/WeekPlan.tsx';

/** Rules that are one figure each. */
type FigureKey =
  | 'leadMinutes'
  | 'walkSeconds'
  | 'spliceSeconds'
  | 'hubMm'
  | 'intakeMm'
  | 'lossPercent'
  | 'labelPercent'
  | 'floorCelsius'
  | 'floorHumidity'
  | 'idleMinutes';

export function Rules() {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords).rules;
  const line = app.line.value;
  const rules = line === null ? null : (floor.rules.get(line) ?? firstRules(line));
  const [page, setPage] = useState<RulesPage | null>(rules ? pageBefore(floor, rules) : null);
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
  const figure = (key: FigureKey, unit: string, label: string, help?: string) => (
    <Figure
      name={key}
      label={label}
      unit={unit}
      value={form[key]}
      onInput={(typed) => change({ [key]: typed })}
      help={help ?? null}
    />
  );
  const tape = (key: 'trailerMm' | 'leaderMm', label: string, help: string) => (
    <Figure
      name={key}
      label={label}
      unit="mm"
      value={page[key]}
      onInput={(typed) => turn({ ...page, [key]: typed })}
      help={help}
    />
  );
  const save = () => {
    const told = rulesDrafts(floor, rules, page);
    if ('fault' in told) return setWrong(faultText(told.fault));
    recordOwn(app, [...told.drafts], { notice: { tone: 'go', text: words.saved } });
  };
  return (
    <div class="form">
      {figure('leadMinutes', words.minutes, words.lead)}
      {figure('walkSeconds', words.seconds, words.walk)}
      {figure('spliceSeconds', words.seconds, words.splice)}
      {figure('hubMm', 'mm', words.hub, words.lengthHelp)}
      {figure('intakeMm', 'mm', words.intake, words.lengthHelp)}
      {tape('trailerMm', words.trailer, words.trailerHelp)}
      {tape('leaderMm', words.leader, words.leaderHelp)}
      {figure('lossPercent', '%', words.loss)}
      {figure('labelPercent', '%', words.label, words.labelHelp)}
      <SpliceParts
        widths={tapeWidthsOn(floor, line)}
        typed={form.spliceParts}
        onChange={(spliceParts) => change({ spliceParts })}
      />
      <PickOrderField value={form.pickOrder} onChange={(pickOrder) => change({ pickOrder })} />
      {figure('floorCelsius', '°C', words.floorCelsius)}
      {figure('floorHumidity', '%', words.floorHumidity, climateHelp)}
      {figure('idleMinutes', words.minutes, words.idle, words.idleHelp(longestShiftMinutes(form)))}
      <WeekPlan
        weeks={page.weeks}
        today={plantDay(floor, line, app.clock.nowMs())}
        onChange={(weeks) => turn(withWeeks(page, weeks))}
      />
      <AgeLimits rows={page.ages} onChange={(ages) => turn({ ...page, ages })} />
      <ValueRules form={page.values} onChange={(values) => turn({ ...page, values })} />
      <PictureRule form={page.pictures} onChange={(pictures) => turn({ ...page, pictures })} />
      <Comparison form={form} onChange={change} />
      <Field
        label={words.suffixes}
        isWhole
        value={form.suffixes}
        onInput={(suffixes) => change({ suffixes })}
      />
      {(['code93', 'itf'] as const).map((key) => (
        <Field
          key={key}
          label={words[key]}
          testId={`rule-${key}`}
          inputMode="numeric"
          value={form[key]}
          onInput={(typed) => change({ [key]: typed })}
          help={words.lengthsHelp}
        />
      ))}
      <div class="whole row">
        <Button tone="act" large testId="rules-save" onPress={save}>
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

/** The line's rules as they stand, as a page to change. */
function pageBefore(floor: FloorState, rules: LineRules): RulesPage {
  const { line } = rules;
  const { entered } = lineClimate(floor, line);
  return pageOf(
    floor,
    rules,
    rulesToForm(rules, entered, floor.idles.get(line), floor.spliceCosts.get(line)),
  );
}

/** A figure with its unit behind it. */
function Figure(props: {
  readonly name: FigureKey | 'trailerMm' | 'leaderMm';
  readonly label: string;
  readonly unit: string;
  readonly value: string;
  readonly onInput: (typed: string) => void;
  readonly help: string | null;
}) {
  return (
    <Field
      label={props.label}
      unit={props.unit}
      testId={`rule-${props.name}`}
      inputMode="decimal"
      value={props.value}
      onInput={props.onInput}
      help={props.help}
    />
  );
}

/** What two numbers may differ in and still count as the same, and whether feeders must be known. */
function Comparison(props: {
  readonly form: RulesForm;
  readonly onChange: (part: Partial<RulesForm>) => void;
}) {
  const words = say(plantWords).rules;
  const { form, onChange } = props;
  return (
    <GroupField label={words.comparison} isWhole>
      <div class="choice">
        {(['ignoreCase', 'ignoreSpaces', 'ignoreDashes'] as const).map((key) => (
          <button
            type="button"
            key={key}
            aria-pressed={form[key]}
            onClick={() => onChange({ [key]: !form[key] })}
          >
            {form[key] ? '✓ ' : ''}
            {words[key]}
          </button>
        ))}
        <button
          type="button"
          aria-pressed={form.feedersKnown}
          onClick={() => onChange({ feedersKnown: !form.feedersKnown })}
        >
          {form.feedersKnown ? '✓ ' : ''}
          {words.feeders}
        </button>
      </div>
    </GroupField>
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
    <GroupField label={words.spliceParts} isWhole help={words.spliceHelp}>
      <div class="form">
        {[...props.widths.map(String), ''].map((width) => (
          <Field
            key={width}
            label={width === '' ? words.spliceOther : words.spliceOn(width)}
            testId={`rule-splice-${width === '' ? 'other' : width}`}
            inputMode="decimal"
            value={typed[width] ?? ''}
            onInput={(parts) => props.onChange({ ...typed, [width]: parts })}
          />
        ))}
      </div>
    </GroupField>
  );
}

function PickOrderField(props: {
  readonly value: RulesForm['pickOrder'];
  readonly onChange: (order: RulesForm['pickOrder']) => void;
}) {
  const words = say(plantWords).rules;
  return (
    <ChoiceField
      label={words.pickOrder}
      isWhole
      isTicked
      value={props.value}
      choices={pickOrders.map((order) => ({
        value: order,
        text: words.pickOrders[order],
        testId: `rule-${order}`,
      }))}
      onChoose={props.onChange}
    />
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
  if (fault.code === 'values') return say(valueWords).rule.wrong;
  if (fault.code === 'pictures') return say(picturesWords).fault;
  return fault.code === 'ages' ? words.wrongAges : words.wrong;
}
