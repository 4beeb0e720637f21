// What could come next, each with what it takes: the cheapest change is seen at a glance.

import { useApp, useFloor } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { changeWords } from '../../words/change.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { faultText } from './fault-text.ts';
import { type ChangePlan, planChange } from './model.ts';

/** Faults said one by one; more are counted. */
const MOST_FAULTS = 6;

export function ChooseNext({ line }: { readonly line: string }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(changeWords);
  const shell = say(shellWords);
  const refusal = useRefusal('choose-setup');
  const chosen = floor.chosen.get(line) ?? null;
  const newest = new Map(
    [...floor.setups.values()]
      .filter((each) => each.line === line)
      .map((each) => [`${each.product}/${each.side}`, each]),
  );
  const plans = [...newest.values()]
    .map((setup) => ({ setup, plan: planChange(floor, line, setup) }))
    .sort((a, b) => handlings(a.plan) - handlings(b.plan));
  return (
    <div>
      <h2>{words.next}</h2>
      {plans.map(({ setup, plan }) => (
        <div class="listed" key={setup.setup} data-testid={`next-${setup.setup}`}>
          <span class="grow">
            <b>{setup.product}</b> · {shell.side[setup.side]} · {shell.revision(setup.revision)}
            <br />
            <Counts plan={plan} />
          </span>
          {setup.setup === chosen ? (
            <span class="chip go">✓ {words.same}</span>
          ) : (
            <Button
              disabledReason={refusal ?? (plan.fits ? null : words.cannotFit)}
              testId={`plan-${setup.setup}`}
              onPress={() => {
                const payload = {
                  ...{ changeover: newId(), line, from: chosen, setup: setup.setup, product: setup.product },
                  lastPanel: null,
                };
                app.write([{ kind: 'changeover.began', payload }]).catch(() => undefined); // shown by the fault screen
              }}
            >
              {words.plan}
            </Button>
          )}
        </div>
      ))}
    </div>
  );
}

function handlings(plan: ChangePlan): number {
  if (!plan.fits) return Number.POSITIVE_INFINITY;
  return plan.diff.move.length + plan.diff.takeOut.length + plan.diff.putIn.length;
}

/** What a change takes, as counts; or what is wrong with it. */
export function Counts({ plan }: { readonly plan: ChangePlan }) {
  const words = say(changeWords);
  if (!plan.fits) {
    return (
      <span class="stack">
        {plan.faults.slice(0, MOST_FAULTS).map((fault) => (
          <span class="chip stop" key={`${fault.code}${fault.slot}${fault.part}`}>
            ✕ {faultText(fault)}
          </span>
        ))}
        {plan.faults.length > MOST_FAULTS && (
          <span>{words.moreFaults(plan.faults.length - MOST_FAULTS)}</span>
        )}
      </span>
    );
  }
  const { diff, steps } = plan;
  return (
    <span class="soft counts">
      <span>{words.keep(diff.keep.length)}</span>
      <span>{words.move(diff.move.length)}</span>
      <span>{words.takeOut(diff.takeOut.length)}</span>
      <span>{words.putIn(diff.putIn.length)}</span>
      {steps.parked > 0 && <span>{words.parked(steps.parked)}</span>}
    </span>
  );
}
