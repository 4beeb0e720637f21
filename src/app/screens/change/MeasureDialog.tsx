// One part under the meter: what it should measure, what the meter shows, what that proves.

import { useEffect, useState } from 'preact/hooks';
import type { PanelCheck } from '../../../../shared/changeover/first-panel.ts';
import { judgeReading, limitsOf, uncertaintyOf } from '../../../../shared/floor/measured.ts';
import { expectedValues, type ValueUnit, valueUnits } from '../../../../shared/floor/part-value.ts';
import type { Changeover } from '../../../../shared/floor/state.ts';
import { statedValues } from '../../../../shared/floor/stated-values.ts';
import { twelveFigures } from '../../../../shared/kit/figures.ts';
import { useApp, useFloor } from '../../app.ts';
import { keep, readKept } from '../../store/preferences.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field, SelectField } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { verdictTones } from '../../ui/Shape.tsx';
import { firstPanelWords } from '../../words/first-panel.ts';
import { shellWords } from '../../words/shell.ts';
import { formatFigure, say } from '../../words/words.ts';
import { lastMeasured, readFigure } from './model.ts';

interface MeasureDialogProps {
  readonly check: PanelCheck;
  readonly changeover: Changeover;
  readonly onClose: () => void;
}

interface Form {
  readonly code: string;
  readonly nominal: string;
  readonly unit: ValueUnit;
  readonly tolerance: string;
  readonly reading: string;
  readonly percent: string;
  readonly fixed: string;
}

const plain: Form = {
  code: '',
  nominal: '',
  unit: 'Ω',
  tolerance: '',
  reading: '',
  percent: '0.5',
  fixed: '0',
};
const unitNames = Object.keys(valueUnits) as readonly ValueUnit[]; // Object.keys forgets the key type

export function MeasureDialog({ check, changeover, onClose }: MeasureDialogProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(firstPanelWords);
  const { wanted } = check;
  const known = lastMeasured(floor, wanted.part);
  const stated = statedValues(floor, wanted);
  const [form, setForm] = useState<Form>(() => firstForm(known, stated));
  const set = (part: Partial<Form>) => setForm((old) => ({ ...old, ...part }));
  useEffect(() => {
    readKept<Pick<Form, 'percent' | 'fixed'>>(app.store.cache, 'meter').then((meter) => {
      if (meter) set({ percent: meter.percent });
    });
  }, []);
  const options = form.code.trim() === '' ? stated : expectedValues(form.code);
  const outcome = judgeForm(form);
  return (
    <Dialog title={words.title(wanted.part)} onClose={onClose} wide>
      <div class="stack">
        {wanted.polarity !== undefined && <p>↻ {wanted.polarity}</p>}
        <h3>{words.wanted}</h3>
        <div class="form">
          <MeasureField
            label={words.code}
            help={known ? words.known : words.codeHelp}
            value={form.code}
            onInput={(code) => set({ code })}
            testId="measure-code"
            isText
          />
          <Readings options={options} form={form} onChoose={set} />
          <MeasureField
            label={words.nominal}
            value={form.nominal}
            onInput={(nominal) => set({ nominal })}
            testId="measure-nominal"
          />
          <UnitField unit={form.unit} onChoose={(unit) => set({ unit })} />
          <MeasureField
            label={words.tolerance}
            value={form.tolerance}
            onInput={(tolerance) => set({ tolerance })}
            testId="measure-tolerance"
          />
          <MeasureField
            label={words.reading(form.unit)}
            value={form.reading}
            onInput={(reading) => set({ reading })}
            testId="measure-reading"
          />
          <MeasureField
            label={words.percent}
            help={words.meterHelp}
            value={form.percent}
            onInput={(percent) => set({ percent })}
            testId="measure-percent"
          />
          <MeasureField
            label={words.fixed(form.unit)}
            value={form.fixed}
            onInput={(fixed) => set({ fixed })}
            testId="measure-fixed"
          />
        </div>
        {outcome && <Outcome outcome={outcome} unit={form.unit} />}
        <p class="caution">
          <Icon name="warn" />
          {words.caution}
        </p>
        <div class="row">
          <Button
            tone="act"
            large
            testId="measure-keep"
            disabledReason={outcome === null ? words.numbers : null}
            onPress={() => {
              if (!outcome) return;
              const { changeover: name, line, setup } = changeover;
              const { quantity, uncertainty, least, most, verdict } = outcome;
              const payload = {
                changeover: name,
                line,
                setup,
                slot: wanted.slot,
                part: wanted.part,
                quantity,
                unit: form.unit,
                uncertainty,
                least,
                most,
                verdict,
              };
              void keep(app.store.cache, 'meter', { percent: form.percent });
              app.record([{ kind: 'panel.measured', payload }], { next: onClose });
            }}
          >
            {words.keep}
          </Button>
          <Button large onPress={onClose}>
            {say(shellWords).cancel}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}

type Expected = ReturnType<typeof expectedValues>[number];

/** The form as it opens: by what was measured of this part before, else by the one value that its note names. */
function firstForm(known: ReturnType<typeof lastMeasured>, stated: readonly Expected[]): Form {
  if (known) {
    const nominal = twelveFigures((known.least + known.most) / 2);
    const tolerance = nominal === 0 ? 0 : ((known.most - known.least) / 2 / Math.abs(nominal)) * 100;
    return { ...plain, nominal: String(nominal), unit: known.unit, tolerance: figure(tolerance) };
  }
  const only = stated.length === 1 ? stated[0] : undefined;
  return only ? { ...plain, ...fromExpected(only) } : plain;
}

interface ReadingsProps {
  readonly options: readonly Expected[];
  readonly form: Form;
  readonly onChoose: (part: Partial<Form>) => void;
}

/** The values that a code may stand for. */
function Readings({ options, form, onChoose }: ReadingsProps) {
  if (options.length === 0) return null;
  return (
    <div class="choice measure-readings">
      {options.map((each) => (
        <button
          type="button"
          key={`${each.nominal}${each.unit}${each.plusPercent}`}
          aria-pressed={form.nominal === String(each.nominal) && form.unit === each.unit}
          onClick={() => onChoose(fromExpected(each))}
        >
          {formatFigure(each.nominal)} {each.unit}
          {each.plusPercent !== null && ` ± ${formatFigure(each.plusPercent)} %`}
        </button>
      ))}
    </div>
  );
}

interface UnitFieldProps {
  readonly unit: ValueUnit;
  readonly onChoose: (unit: ValueUnit) => void;
}

function UnitField({ unit, onChoose }: UnitFieldProps) {
  return (
    <SelectField
      label={say(firstPanelWords).unit}
      testId="measure-unit"
      value={unit}
      onChoose={(text) => onChoose(text as ValueUnit)} // one of the options below
    >
      {unitNames.map((each) => (
        <option key={each} value={each}>
          {each}
        </option>
      ))}
    </SelectField>
  );
}

type Judged = NonNullable<ReturnType<typeof judgeForm>>;

/** What the form says so far; null while a number is missing. */
function judgeForm(form: Form) {
  const nominal = readFigure(form.nominal);
  const tolerance = readFigure(form.tolerance);
  const quantity = readFigure(form.reading);
  const percent = readFigure(form.percent);
  const fixed = readFigure(form.fixed);
  if (nominal === null || tolerance === null || quantity === null || percent === null || fixed === null)
    return null;
  if (tolerance < 0 || percent < 0 || fixed < 0) return null;
  const limits = limitsOf(nominal, { plus: tolerance, minus: tolerance });
  const uncertainty = uncertaintyOf(quantity, { percent, fixed });
  const verdict = judgeReading({ value: quantity, uncertainty }, limits);
  return { quantity, uncertainty, ...limits, verdict };
}

const marks = { accepted: '✓', held: '?', refused: '✕' } as const;

function Outcome({ outcome, unit }: { readonly outcome: Judged; readonly unit: string }) {
  const words = say(firstPanelWords);
  const { verdict, quantity, uncertainty, least, most } = outcome;
  return (
    <div
      class={`outcome ${verdictTones[verdict]}`}
      role="status"
      data-testid="measure-outcome"
      data-verdict={verdict}
    >
      <b>
        {marks[verdict]} {words.states[verdict]}
      </b>
      <span>{words.result(formatFigure(quantity), formatFigure(uncertainty), unit)}</span>
      <span>{words.limits(formatFigure(least), formatFigure(most), unit)}</span>
      <span>{words.why[verdict]}</span>
    </div>
  );
}

interface MeasureFieldProps {
  readonly label: string;
  readonly help?: string;
  readonly value: string;
  readonly onInput: (value: string) => void;
  readonly testId: string;
  readonly isText?: boolean;
}

function MeasureField({ label, help, value, onInput, testId, isText = false }: MeasureFieldProps) {
  return (
    <Field
      label={label}
      testId={testId}
      inputMode={isText ? 'text' : 'decimal'}
      autocomplete="off"
      maxLength={40}
      value={value}
      onInput={onInput}
      help={help ?? null}
    />
  );
}

function fromExpected(expected: Expected): Partial<Form> {
  const { nominal, unit, plusPercent, minusPercent } = expected;
  const widest = Math.max(plusPercent ?? 0, minusPercent ?? 0);
  return {
    nominal: String(nominal),
    unit,
    ...(plusPercent === null ? {} : { tolerance: figure(widest) }),
  };
}

const figure = (value: number) => String(Number(value.toPrecision(6)));
