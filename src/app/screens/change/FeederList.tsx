// The moves still to do, machine by machine in walking order, and those done in this changeover with their ticks. While the line runs they
// are shown as what waits for the stop; once it stands, the caution stands where the hand goes: at the next one.

import type { ChangeStep } from '../../../../shared/changeover/steps.ts';
import { parseSlot } from '../../../../shared/floor/address.ts';
import { setupProgress } from '../../../../shared/floor/progress.ts';
import { type SlotAnswer, slotRight } from '../../../../shared/floor/slot-right.ts';
import type { Changeover, SlotState } from '../../../../shared/floor/state.ts';
import { useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { changeWords } from '../../words/change.ts';
import { formatCount, formatTime, say } from '../../words/words.ts';
import { Counts } from './ChooseNext.tsx';
import { doneSlots, planChange } from './model.ts';

const marks = { takeOut: '↥', park: '⇤', move: '⇄', unpark: '⇥', putIn: '↧' } as const;

interface FeederListProps {
  readonly changeover: Changeover;
  /** The last panel is built: hands may go in once the machine is stopped. */
  readonly isStanding: boolean;
  /** Leads to the checklist; null where it has nothing open. */
  readonly onChecklist: (() => void) | null;
}

export function FeederList({ changeover, isStanding, onChecklist }: FeederListProps) {
  const floor = useFloor();
  const words = say(changeWords);
  const setup = floor.setups.get(changeover.setup);
  if (!setup) return null;
  const { line } = changeover;
  const plan = planChange(floor, line, setup);
  if (!plan.fits) return <Counts plan={plan} />;
  const { steps } = plan.steps;
  const { verified, slots } = setupProgress(floor, line, setup.setup);
  const done = floor.chosen.get(line) === changeover.setup ? doneSlots(floor, changeover) : [];
  return (
    <section class="stack" data-testid="feeder-list">
      <div class="row">
        <h2 data-testid="moves-left">
          {steps.length === 0
            ? `✓ ${words.stepsDone}`
            : isStanding
              ? words.stepsLeft(steps.length)
              : words.stepsWait(steps.length)}
        </h2>
        <span class={`chip ${verified === slots.length ? 'go' : ''}`} data-testid="slots-right">
          {words.slotsRight(formatCount(verified), formatCount(slots.length))}
        </span>
      </div>
      {steps.length > 0 && (
        <p class="caution" data-testid="moves-caution">
          <Icon name={isStanding ? 'warn' : 'pause'} />
          {isStanding ? words.caution : words.lineRuns}
        </p>
      )}
      {steps.length > 0 && isStanding && <p class="soft">{words.scanSlot}</p>}
      {steps.length === 0 && <p>{isStanding ? words.stepsDoneNext : words.stepsNone}</p>}
      {steps.length === 0 && isStanding && onChecklist !== null && (
        <div>
          <Button tone="act" large onPress={onChecklist} testId="moves-checklist">
            {words.tabs.checklist}
          </Button>
        </div>
      )}
      {plan.twice.map(({ part, slots: where }) => (
        <p key={part} class="soft">
          {words.twice(part, where.join(', '))}
        </p>
      ))}
      <ol class={`handlings${isStanding ? '' : ' waits'}`}>
        {steps.map((step, at) => (
          <StepRow
            key={`${step.act}${step.slot}`}
            step={step}
            isNext={isStanding && at === 0}
            is={slotRight(floor, line, setup.setup, step.slot)}
          />
        ))}
      </ol>
      {steps.length > 0 && <Counts plan={plan} />}
      {done.length > 0 && <DoneRows done={done} zone={floor.lines.get(line)?.zone ?? 'UTC'} />}
    </section>
  );
}

interface StepRowProps {
  readonly step: ChangeStep;
  readonly isNext: boolean;
  /** How its slot stands; null where the next product wants nothing there. */
  readonly is: SlotAnswer | null;
}

function StepRow({ step, isNext, is }: StepRowProps) {
  const words = say(changeWords);
  const lanes = step.lanes ?? [];
  const parts = [step, ...lanes].map(({ part }) => part).join(' + ');
  const why = is === 'held' || is === 'wrong-feeder' || is === 'blocked' ? words.whys[is] : null;
  return (
    <li
      class={isNext ? 'next' : ''}
      data-testid={`handling-${step.slot}`}
      data-act={step.act}
      data-machine={parseSlot(step.slot)?.machine}
    >
      <span class="mark" aria-hidden="true">
        {marks[step.act]}
      </span>
      <b class="code">{[step, ...lanes].map(({ slot }) => slot).join(' · ')}</b>
      <span class="grow">
        {step.laneOnly
          ? words.onLane[step.act === 'takeOut' ? 'off' : 'on'](parts)
          : words.acts[step.act](parts, step.to ?? '')}
      </span>
      {why !== null && <span class="chip care">? {why}</span>}
    </li>
  );
}

function DoneRows({ done, zone }: { readonly done: readonly SlotState[]; readonly zone: string }) {
  return (
    <>
      <h3>{say(changeWords).doneNow}</h3>
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
  );
}
