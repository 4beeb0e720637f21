// One step: what is asked, the caution where hands go, and the way to answer it.

import { useId, useRef, useState } from 'preact/hooks';
import type { OpenItem } from '../../../../shared/changeover/open-work.ts';
import type { StepView } from '../../../../shared/checklist/answers.ts';
import type { Checklist } from '../../../../shared/floor/state.ts';
import { useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { Field } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { checklistWords } from '../../words/checklist.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { formatTime, say } from '../../words/words.ts';
import { OpenList } from './OpenList.tsx';
import { shrinkPicture } from './picture.ts';
import { SignStep } from './SignStep.tsx';
import type { StepScans } from './step-scans.ts';

interface StepCardProps {
  readonly list: Checklist;
  readonly view: StepView;
  readonly locked: boolean;
  /** The first of the list that is open: its act is the one to do now. */
  readonly isNow: boolean;
  /** True where a signature may still be taken back. */
  readonly mayTakeBack: boolean;
  /** What is open of a step that is known. */
  readonly left: readonly OpenItem[];
  readonly scans: StepScans;
  readonly refusal: string | null;
  readonly onAnswer: (value: string | number) => void;
  readonly onReopen: () => void;
  readonly onSkip: () => void;
}

const marks = { open: '○', waiting: '◌', done: '✓', short: '✕', skipped: '⇥', 'not-asked': '' } as const;

export function StepCard(props: StepCardProps) {
  const floor = useFloor();
  const words = say(checklistWords);
  const { view, locked } = props;
  const { step, state, answer } = view;
  const isOpen = state === 'open' || state === 'short';
  const signed = answer?.signed ?? [];
  const asked = useId();
  const isGiven = step.kind === 'sign' || step.kind === 'known'; // neither is undone by a tap
  const mayReopen = answer !== null && (answer.skipped !== null || !isGiven);
  const names = answer?.by
    .filter((who) => !signed.some(({ person }) => person === who))
    .map((who) => floor.people.get(who)?.name ?? who)
    .join(', ');
  return (
    // A group under what it asks: each of its controls is read with that, as "Done" and "Skip" stand under every step.
    <fieldset
      aria-labelledby={asked}
      class={`step ${state}`}
      data-testid={`step-${step.step}`}
      data-state={state}
    >
      <span class="mark" aria-hidden="true">
        {marks[state]}
      </span>
      <div class="asked">
        <p id={asked}>{sayText(step.text)}</p>
        <p class="soft">
          {words.states[state]}
          {state !== 'waiting' && ` · ${words.times[step.time]}`}
          {!step.mandatory && ` · ${words.optional}`}
          {names && ` · ${names}`}
          {answer &&
            signed.length === 0 &&
            ` · ${formatTime(answer.atMs, Intl.DateTimeFormat().resolvedOptions().timeZone)}`}
          {answer?.skipped && ` · ${answer.skipped.reason}`}
        </p>
        {answer &&
          step.kind !== 'tick' &&
          step.kind !== 'sign' &&
          step.kind !== 'photo' &&
          step.kind !== 'known' &&
          answer.value !== null && (
            <p class="code">
              {answer.value} {step.unit}
            </p>
          )}
        {answer && step.kind === 'photo' && typeof answer.value === 'string' && (
          <img src={answer.value} alt={sayText(step.text)} />
        )}{' '}
        {step.caution && isOpen && (
          <p class="watch">
            <Icon name="warn" size={18} />
            {sayText(step.caution)}
          </p>
        )}
        {step.kind === 'sign' && (
          <SignStep
            list={props.list}
            step={step}
            isOpen={isOpen && !locked}
            mayTakeBack={props.mayTakeBack}
          />
        )}
        {step.kind === 'known' && isOpen && !locked && <Known left={props.left} />}
      </div>
      {isOpen && !locked && step.kind !== 'sign' && step.kind !== 'known' && (
        <div class="answer">
          <Answer {...props} />
        </div>
      )}
      {!locked && mayReopen && (
        <Button tone="quiet" onPress={props.onReopen}>
          {words.reopen}
        </Button>
      )}
      {!locked && isOpen && step.mandatory && (
        <Button tone="quiet" onPress={props.onSkip} testId={`skip-${step.step}`}>
          {words.skip}
        </Button>
      )}
    </fieldset>
  );
}

function Answer(props: StepCardProps) {
  const words = say(checklistWords);
  const { step } = props.view;
  switch (step.kind) {
    case 'tick':
      return (
        <Button
          tone={props.isNow ? 'act' : 'plain'}
          disabledReason={props.refusal}
          onPress={() => props.onAnswer('done')}
          testId={`tick-${step.step}`}
        >
          ✓ {words.tick}
        </Button>
      );
    case 'sign':
    case 'known':
      return null; // stand among what is asked
    case 'choice':
      return (
        <div class="choice">
          {step.options.map((option) => (
            <Button key={option} disabledReason={props.refusal} onPress={() => props.onAnswer(option)}>
              {option in words.choices ? words.choices[option as keyof typeof words.choices] : option}
            </Button>
          ))}
        </div>
      );
    case 'photo':
      return <Photo onAnswer={props.onAnswer} refusal={props.refusal} />;
    case 'measure':
      return <Typed {...props} isNumber />;
    case 'scan':
    case 'note':
      return <Typed {...props} isNumber={false} />;
  }
}

/** What is open of a thing that the floor itself knows. */
function Known({ left }: { readonly left: readonly OpenItem[] }) {
  const words = say(checklistWords);
  return left.length > 0 ? (
    <OpenList items={left} template={null} />
  ) : (
    <p class="chip care">? {words.notKnown}</p>
  );
}

/** A value, a note or a code: while the field has the focus, whatever is scanned is for its step. */
function Typed(props: StepCardProps & { readonly isNumber: boolean }) {
  const words = say(checklistWords);
  const { scans } = props;
  const { step } = props.view;
  const isScan = step.kind === 'scan';
  const [text, setText] = useState('');
  const [isNoNumber, setNoNumber] = useState(false);
  const wrong = isNoNumber ? words.notNumber : scans.wrongOf(step.step);
  function keep(): void {
    const trimmed = text.trim();
    const value = props.isNumber ? Number(trimmed.replace(',', '.')) : trimmed;
    if (trimmed === '') return;
    if (isScan) scans.typed(step, trimmed);
    else if (typeof value === 'number' && !Number.isFinite(value)) setNoNumber(true);
    else props.onAnswer(value);
  }
  const hint = isScan
    ? step.expects === null
      ? words.scanWants[step.wants ?? 'other']
      : words.expects(step.expects)
    : step.least !== null && step.most !== null
      ? words.limits(String(step.least), String(step.most))
      : step.least !== null
        ? words.atLeast(String(step.least))
        : step.most !== null
          ? words.atMost(String(step.most))
          : '';
  return (
    <div class="typed">
      <Field
        label={step.kind === 'measure' ? words.value(step.unit ?? '') : isScan ? words.scan : words.note}
        testId={`value-${step.step}`}
        inputMode={props.isNumber ? 'decimal' : 'text'}
        maxLength={400}
        value={text}
        onFocus={() => isScan && scans.focus(step.step)}
        onBlur={() => isScan && scans.focus(null)}
        onInput={(typed) => {
          setNoNumber(false);
          scans.forget();
          setText(typed);
        }}
      >
        {wrong !== null ? (
          <span class="wrong" role="alert" data-testid={`wrong-${step.step}`}>
            ✕ {wrong}
          </span>
        ) : (
          hint !== '' && <small class="hint">{hint}</small>
        )}
        {scans.next === step.step && (
          <small class="next-scan" data-testid={`next-scan-${step.step}`}>
            <Icon name="right" size={20} /> {words.nextScan}
          </small>
        )}
      </Field>
      <Button
        tone={props.isNow ? 'act' : 'plain'}
        testId={`keep-${step.step}`}
        disabledReason={props.refusal}
        onPress={keep}
      >
        {words.keep}
      </Button>
    </div>
  );
}

function Photo(props: { readonly onAnswer: (value: string) => void; readonly refusal: string | null }) {
  const words = say(checklistWords);
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        hidden
        type="file"
        accept="image/*"
        capture="environment"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file) shrinkPicture(file).then(props.onAnswer, () => undefined); // no picture, no answer: the step stays open
        }}
      />
      <Button disabledReason={props.refusal} onPress={() => input.current?.click()}>
        <Icon name="camera" size={22} /> {words.photo}
      </Button>
    </>
  );
}
