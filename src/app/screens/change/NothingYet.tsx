// A plant in which nothing can be changed over yet: what is missing, and the way to it. One step is the next; the others wait in plain
// sight, so that nobody wonders what comes after it.

import { useFloor } from '../../app.ts';
import { address } from '../../router.ts';
import { Icon } from '../../ui/Icon.tsx';
import { changeWords } from '../../words/change.ts';
import { say } from '../../words/words.ts';

export function NothingYet() {
  const floor = useFloor();
  const words = say(changeWords);
  const steps = [
    {
      name: 'people',
      text: floor.people.size > 0 ? words.missing.peopleDone : words.missing.people,
      act: words.missing.addPerson,
      isDone: floor.people.size > 0,
    },
    {
      name: 'sheet',
      text: words.missing.setup,
      act: words.missing.bringSetup,
      isDone: floor.setups.size > 0,
    },
  ];
  const next = steps.find(({ isDone }) => !isDone);
  return (
    <div class="empty" data-testid="change-nothing-yet">
      <Icon name="change" size={56} />
      <h1>{words.missing.title}</h1>
      <p>{words.missing.text}</p>
      <ol class="missing">
        {steps.map((step) => (
          <li key={step.name} class={step.isDone ? 'done' : ''} data-testid={`missing-${step.name}`}>
            <b aria-hidden="true">{step.isDone ? '✓' : '○'}</b>
            <span class="grow">{step.text}</span>
            {!step.isDone && (
              <a
                class={`button large ${step === next ? 'act' : ''}`}
                href={address('plant', step.name)}
                data-testid={`missing-${step.name}-go`}
              >
                {step.act}
              </a>
            )}
            {step.isDone && <span>{words.missing.done}</span>}
          </li>
        ))}
      </ol>
    </div>
  );
}
