// The fields of one step; which of them stand depends on how it is answered.

import {
  type ChecklistStep,
  knownFacts,
  scanWants,
  signingRoles,
  stepConditions,
  stepKinds,
  stepTimes,
} from '../../../../../shared/floor/checklist.ts';
import { type Role, roles } from '../../../../../shared/floor/vocabulary.ts';
import { Field, SelectField } from '../../../ui/Field.tsx';
import { shellWords } from '../../../words/shell.ts';
import { templateWords } from '../../../words/template.ts';
import { type Language, say } from '../../../words/words.ts';
import { ofKind, setSigner, setText, splitOptions, withRoles } from './model.ts';
import { Texts } from './Texts.tsx';

interface StepFormProps {
  readonly step: ChecklistStep;
  /** Languages in which its texts are asked. */
  readonly codes: readonly Language[];
  readonly onChange: (step: ChecklistStep) => void;
}

export function StepForm({ step, codes, onChange }: StepFormProps) {
  const words = say(templateWords);
  const set = (part: Partial<ChecklistStep>) => onChange({ ...step, ...part });
  const setCaution = (name: string, text: string) => {
    const caution = setText(step.caution, name, text);
    set({ caution: Object.values(caution).every((each) => each.trim() === '') ? null : caution });
  };
  const number = (text: string): number | null => {
    const value = Number(text.replace(',', '.'));
    return text.trim() === '' || !Number.isFinite(value) ? null : value;
  };
  const field = (label: string, value: string, onText: (text: string) => void) => (
    <Field key={label} label={label} maxLength={500} value={value} onLeave={onText} />
  );
  const inEach = (
    label: string,
    texts: Readonly<Record<string, string>>,
    onText: (code: string, text: string) => void,
  ) => <Texts label={label} texts={texts} codes={codes} maxLength={500} onText={onText} />;
  const pick = <T extends string>(
    label: string,
    all: readonly T[],
    more: {
      readonly value: T;
      readonly names: Readonly<Record<T, string>>;
      readonly onPick: (value: T) => void;
    },
  ) => (
    <SelectField
      key={label}
      label={label}
      value={more.value}
      onChoose={(text) => more.onPick(text as T)} // one of the options below
    >
      {all.map((each) => (
        <option key={each} value={each}>
          {more.names[each]}
        </option>
      ))}
    </SelectField>
  );
  return (
    <div class="form step-form" data-testid="step-form">
      {inEach(words.text, step.text, (code, text) => set({ text: setText(step.text, code, text) }))}
      {inEach(words.group, step.group, (code, text) => set({ group: setText(step.group, code, text) }))}
      {inEach(words.caution, step.caution ?? {}, setCaution)}
      {pick(words.kind, stepKinds, {
        value: step.kind,
        names: words.kinds,
        onPick: (kind) => onChange(ofKind(step, kind)),
      })}
      {pick(words.time, stepTimes, {
        value: step.time,
        names: words.times,
        onPick: (time) => set({ time }),
      })}
      {pick(words.condition, stepConditions, {
        value: step.condition,
        names: words.conditions,
        onPick: (condition) => set({ condition }),
      })}
      <label class="row">
        <input
          type="checkbox"
          checked={step.mandatory}
          onChange={(event) => set({ mandatory: event.currentTarget.checked })}
        />
        {words.mandatory}
      </label>
      {step.kind === 'measure' && (
        <>
          {field(words.least, String(step.least ?? ''), (text) => set({ least: number(text) }))}
          {field(words.most, String(step.most ?? ''), (text) => set({ most: number(text) }))}
          {field(words.unit, step.unit ?? '', (text) => set({ unit: text.trim().slice(0, 20) || null }))}
        </>
      )}
      {step.kind === 'scan' &&
        field(words.expects, step.expects ?? '', (text) => set({ expects: text.trim() || null }))}
      {step.kind === 'choice' && (
        <>
          {field(words.options, step.options.join(', '), (text) => set({ options: splitOptions(text) }))}
          {field(words.right, step.right.join(', '), (text) => set({ right: splitOptions(text) }))}
        </>
      )}
      {step.kind === 'scan' &&
        pick(words.wants, scanWants, {
          value: step.wants ?? 'other',
          names: words.wantNames,
          onPick: (wants) => set({ wants }),
        })}
      {step.kind === 'known' &&
        pick(words.knows, knownFacts, {
          value: step.knows ?? 'moves',
          names: words.factNames,
          onPick: (knows) => set({ knows }),
        })}
      {step.kind === 'sign' && <SignRoles step={step} onRoles={(signers) => set(withRoles(signers))} />}
    </div>
  );
}

/** Who signs: up to three people, each with the least role. */
function SignRoles(props: {
  readonly step: ChecklistStep;
  readonly onRoles: (roles: readonly Role[]) => void;
}) {
  const words = say(templateWords);
  const names = say(shellWords).roles;
  const signers = signingRoles(props.step);
  const places = Math.min(3, signers.length + 1);
  return (
    <>
      {Array.from({ length: places }, (_, at) => (
        <SelectField
          key={words.signature(at + 1)}
          label={words.signature(at + 1)}
          testId={`signer-${at}`}
          value={signers[at] ?? ''}
          onChoose={(text) => props.onRoles(setSigner(signers, at, text))}
        >
          {at > 0 && <option value="">{words.noSignature}</option>}
          {roles.map((role) => (
            <option key={role} value={role}>
              {names[role]}
            </option>
          ))}
        </SelectField>
      ))}
    </>
  );
}
