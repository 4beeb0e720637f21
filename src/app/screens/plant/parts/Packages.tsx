// Packages of moisture-sensitive parts: family, pins, body. An engineer enters them; what nobody entered counts as the worst, and is said.

import { useState } from 'preact/hooks';
import { packageFamilies } from '../../../../../shared/floor/vocabulary.ts';
import { moistureLevels } from '../../../../../shared/moisture/levels.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { Field } from '../../../ui/Field.tsx';
import { moistureWords } from '../../../words/moisture.ts';
import { packagesWords } from '../../../words/packages.ts';
import { partsWords } from '../../../words/parts.ts';
import { formatNumber, say } from '../../../words/words.ts';
import { ListPage } from './ListPage.tsx';
import { matches } from './model.ts';
import {
  formToPackage,
  type ListedPackage,
  listedPackages,
  type PackageForm,
  packageForm,
} from './packages-model.ts';
import { useScans } from './shared.tsx';

export function Packages() {
  const floor = useFloor();
  const words = say(packagesWords);
  const refusal = useRefusal('describe-part');
  const [search, setSearch] = useState('');
  const [form, setForm] = useState<PackageForm | null>(null);
  useScans(({ raw, part }) => {
    if (form === null) setSearch(part ?? raw);
    else setForm({ ...form, part: part ?? raw });
  });
  const listed = listedPackages(floor);
  const found = listed.filter(({ part }) => matches(search, [part]));
  const edit = (part: string) =>
    setForm(
      packageForm(part, floor.parts.get(part), listed.find((each) => each.part === part)?.bodyMm ?? null),
    );
  return (
    <ListPage
      search={{ value: search, onChange: setSearch }}
      add={{ label: words.add, testId: 'package-add', refusal, onPress: () => edit(search.trim()) }}
      form={form && <PackageCard form={form} onChange={setForm} onClose={() => setForm(null)} />}
      count={listed.length}
      none={words.none}
      noneHelp={words.noneHelp}
      found={found}
      noMatch={words.noMatch(search)}
      keyOf={({ part }) => part}
      draw={(each) => (
        <PackageRow key={each.part} listed={each} refusal={refusal} onEdit={() => edit(each.part)} />
      )}
    />
  );
}

function PackageRow(props: {
  readonly listed: ListedPackage;
  readonly refusal: string | null;
  readonly onEdit: () => void;
}) {
  const words = say(packagesWords);
  const { families } = say(moistureWords);
  const { part, level, bodyMm, classes, package: facts } = props.listed;
  const known = [
    level && words.level(level),
    facts.family && families[facts.family],
    facts.pins && words.pinCount(facts.pins),
    bodyMm && words.thick(formatNumber(bodyMm)),
    facts.bodyMm && words.size(formatNumber(facts.bodyMm[0]), formatNumber(facts.bodyMm[1])),
  ].filter((text) => typeof text === 'string');
  const [only] = classes;
  return (
    <div class="listed" data-testid={`package-${part}`}>
      <span class="grow">
        <b class="code" translate={false}>
          {part}
        </b>{' '}
        <span class="soft">{known.join(' · ')}</span>
        <br />
        {classes.length === 1 && only ? (
          <span>{words.oneClass(only)}</span>
        ) : (
          <span class="chip care">! {words.open(classes.join(', '))}</span>
        )}
      </span>
      <Button disabledReason={props.refusal} testId={`package-edit-${part}`} onPress={props.onEdit}>
        {words.change}
      </Button>
    </div>
  );
}

/** What is chosen rather than typed. */
type ChosenKey = 'family' | 'isStacked' | 'msl';

function PackageCard(props: {
  readonly form: PackageForm;
  readonly onChange: (form: PackageForm) => void;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const words = say(packagesWords);
  const { families } = say(moistureWords);
  const { form } = props;
  const typed = formToPackage(form);
  const change = (part: Partial<PackageForm>) => props.onChange({ ...form, ...part });
  const text = (key: Exclude<keyof PackageForm, ChosenKey>, help: string | null = null) => (
    <Field
      label={words[key]}
      testId={`package-${key}`}
      autocomplete="off"
      maxLength={key === 'source' ? 200 : 64}
      inputMode={key === 'part' || key === 'source' ? 'text' : 'decimal'}
      isCode={key === 'part'}
      value={form[key]}
      onInput={(typed) => change({ [key]: typed })}
      help={help}
    />
  );
  return (
    <section class="card form">
      {text('part')}
      <Choice
        label={words.family}
        isWhole
        value={form.family}
        options={[
          { value: null, label: words.notKnown, testId: 'family-null' },
          ...packageFamilies.map((value) => ({ value, label: families[value], testId: `family-${value}` })),
        ]}
        onChoose={(family) => change({ family })}
      />
      {text('pins', words.emptyHelp)}
      {text('thickness', words.emptyHelp)}
      {text('length', words.sizeHelp)}
      {text('width')}
      <Choice
        label={words.stacked}
        value={form.isStacked}
        options={[
          { value: null, label: words.notKnown, testId: 'stacked-null' },
          { value: true, label: words.yes, testId: 'stacked-yes' },
          { value: false, label: words.no, testId: 'stacked-no' },
        ]}
        onChoose={(isStacked) => change({ isStacked })}
      />
      <Choice
        label={words.msl}
        isWhole
        value={form.msl}
        options={[
          { value: null, label: words.mslNone, testId: 'msl-null' },
          ...moistureLevels.map((value) => ({ value, label: value, testId: `msl-${value}` })),
        ]}
        onChoose={(msl) => change({ msl })}
      />
      {text('source', words.sourceHelp)}
      <div class="whole row">
        <Button
          tone="act"
          large
          testId="package-save"
          disabledReason={typeof typed === 'string' ? words[typed] : null}
          onPress={() => {
            if (typeof typed === 'string') return;
            app.record([{ kind: 'part.described', payload: typed }], {
              notice: { tone: 'go', text: words.saved(typed.part) },
              next: props.onClose,
            });
          }}
        >
          {words.save}
        </Button>
        <Button large onPress={props.onClose}>
          {say(partsWords).cancel}
        </Button>
      </div>
    </section>
  );
}

/** One fact out of a few, `null` where it is not known. */
function Choice<T>(props: {
  readonly label: string;
  readonly isWhole?: boolean;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string; readonly testId: string }[];
  readonly onChoose: (value: T) => void;
}) {
  return (
    <div class={props.isWhole ? 'field whole' : 'field'}>
      <span>{props.label}</span>
      <div class="choice">
        {props.options.map(({ value, label, testId }) => (
          <button
            type="button"
            key={testId}
            aria-pressed={props.value === value}
            data-testid={testId}
            onClick={() => props.onChoose(value)}
          >
            {label}
          </button>
        ))}
      </div>
    </div>
  );
}
