// The handlings still to do, machine by machine in walking order, and those done in this changeover with their ticks.

import type { ChangeStep } from '../../../../shared/changeover/steps.ts';
import { parseSlot } from '../../../../shared/setup/address.ts';
import type { Changeover } from '../../../../shared/setup/state.ts';
import { useFloor } from '../../app.ts';
import { changeWords } from '../../words/change.ts';
import { formatTime, say } from '../../words/words.ts';
import { Counts } from './ChooseNext.tsx';
import { doneSlots, planChange } from './model.ts';

const marks = { takeOut: '↥', park: '⇤', move: '⇄', unpark: '↧', putIn: '↧' } as const;

export function FeederList({ changeover }: { readonly changeover: Changeover }) {
  const floor = useFloor();
  const words = say(changeWords);
  const setup = floor.setups.get(changeover.setup);
  if (!setup) return null;
  const plan = planChange(floor, changeover.line, setup);
  if (!plan.fits) return <Counts plan={plan} />;
  const zone = floor.lines.get(changeover.line)?.zone ?? 'UTC';
  const done = floor.chosen.get(changeover.line) === changeover.setup ? doneSlots(floor, changeover) : [];
  const next = plan.steps.steps[0];
  return (
    <section class="stack" data-testid="feeder-list">
      <div class="row">
        <h2 data-testid="handlings-left">
          {plan.steps.steps.length === 0 ? `✓ ${words.stepsDone}` : words.stepsLeft(plan.steps.steps.length)}
        </h2>
        <Counts plan={plan} />
      </div>
      {plan.steps.steps.length > 0 && <p class="soft">{words.scanSlot}</p>}
      {plan.twice.map(({ part, slots }) => (
        <p key={part} class="soft">
          {words.twice(part, slots.join(', '))}
        </p>
      ))}
      <ol class="handlings">
        {plan.steps.steps.map((step) => (
          <li
            key={`${step.act}${step.slot}`}
            class={step === next ? 'next' : ''}
            data-testid={`handling-${step.slot}`}
            data-machine={parseSlot(step.slot)?.machine}
          >
            <span class="mark" aria-hidden="true">
              {marks[step.act]}
            </span>
            <b class="code">{step.slot}</b>
            <span class="grow">{stepText(step, words)}</span>
          </li>
        ))}
      </ol>
      {done.length > 0 && (
        <>
          <h3>{words.doneNow}</h3>
          <ol class="handlings">
            {done.map((slot) => (
              <li key={slot.slot} class="done">
                <span class="mark" aria-hidden="true">
                  ✓
                </span>
                <b class="code">{slot.slot}</b>
                <span class="grow code">{slot.tapes.at(-1)?.part}</span>
                <span class="soft">{formatTime(slot.atMs, zone)}</span>
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

function stepText(step: ChangeStep, words: typeof changeWords.en): string {
  return words.acts[step.act](step.part, step.to ?? '');
}
