// From an empty tablet to the first accepted reel: the steps, which are done, which comes next. Each leads to the page that does it.

import { useApp, useFloor } from '../../../app.ts';
import { address } from '../../../router.ts';
import { Icon } from '../../../ui/Icon.tsx';
import { LanguageField } from '../../../ui/LanguageField.tsx';
import { beginWords } from '../../../words/begin.ts';
import { languageOf, say } from '../../../words/words.ts';
import { PlantForm } from '../this/PlantForm.tsx';
import { doneSteps, nextStep, placesOfSteps, type Step, steps } from './model.ts';
import './begin.css';

export function Begin() {
  const { preferences } = useApp();
  const floor = useFloor();
  const words = say(beginWords);
  const done = doneSteps(floor, preferences.value);
  const next = nextStep(done);
  return (
    <div class="stack">
      <p>{words.about}</p>
      {!done.engineer && (
        <LanguageField
          label={words.language}
          value={languageOf(preferences.value.language)}
          onChoose={(language) => {
            preferences.value = { ...preferences.value, language };
          }}
        />
      )}
      <ol class="first-steps">
        {steps.map((step, at) => (
          <StepRow key={step} step={step} number={at + 1} isDone={done[step]} isNext={step === next} />
        ))}
      </ol>
    </div>
  );
}

interface StepRowProps {
  readonly step: Step;
  readonly number: number;
  readonly isDone: boolean;
  readonly isNext: boolean;
}

function StepRow({ step, number, isDone, isNext }: StepRowProps) {
  const words = say(beginWords);
  const { title, text, act } = words.steps[step];
  const [screen, page] = placesOfSteps[step];
  return (
    <li
      class={isNext ? 'next' : ''}
      data-testid={`step-${step}`}
      data-state={isDone ? 'done' : isNext ? 'next' : 'open'}
      {...(isNext ? { 'aria-current': 'step' as const } : {})}
    >
      <span class="mark" aria-hidden="true">
        {isDone ? <Icon name="check" size={22} /> : number}
      </span>
      <span class="grow">
        <b>{title}</b>
        {isDone && <span class="chip go"> {words.done}</span>}
        <br />
        <span class="soft">{text}</span>
      </span>
      {step === 'people' && isDone && (
        <a class="button" href={address('plant', 'print')}>
          {words.badges}
        </a>
      )}
      {step === 'plant' && isNext ? (
        <div class="inside stack">
          <PlantForm isNext />
          <a href={address(screen, page ?? '')}>{words.fromFile}</a>
        </div>
      ) : (
        <a
          class={`button${isNext ? ' act large' : ''}`}
          href={address(screen, ...(page === undefined ? [] : [page]))}
          {...(isDone ? { 'aria-label': words.openOf(title) } : {})}
        >
          {isDone ? words.more : act}
        </a>
      )}
    </li>
  );
}
