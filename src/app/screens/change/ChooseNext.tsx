// What could come next, each with what it takes: first what the kept order of jobs says, then the others, the cheapest change first.

import { jobsToCome } from '../../../../shared/changeover/kept-order.ts';
import type { Setup } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { useRefusal } from '../../may.ts';
import { address } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { changeWords } from '../../words/change.ts';
import { orderWords } from '../../words/order.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, formatDay, say } from '../../words/words.ts';
import { faultText } from './fault-text.ts';
import { type ChangePlan, planChange } from './model.ts';

/** Faults said one by one; more are counted. */
const MOST_FAULTS = 6;

export function ChooseNext({ line }: { readonly line: string }) {
  const floor = useFloor();
  const words = say(changeWords);
  const newest = new Map(
    [...floor.setups.values()]
      .filter((each) => each.line === line)
      .map((each) => [`${each.product}/${each.side}`, each]),
  );
  const kept = jobsToCome(floor, line).flatMap((job) => {
    const setup = floor.setups.get(job.setup);
    return setup ? [{ job, setup, plan: planChange(floor, line, setup) }] : [];
  });
  const chosen = floor.chosen.get(line) ?? null;
  const first = kept.findIndex(({ setup }) => setup.setup !== chosen);
  const inOrder = new Set(kept.map(({ setup }) => setup.setup));
  const others = [...newest.values()]
    .filter(({ setup }) => !inOrder.has(setup))
    .map((setup) => ({ setup, plan: planChange(floor, line, setup) }))
    .sort((a, b) => moves(a.plan) - moves(b.plan));
  if (newest.size === 0) {
    return (
      <div class="stack" data-testid="next-none">
        <h2>{words.next}</h2>
        <p>{words.noSetups}</p>
        <div class="row">
          <a class="button act large" href={address('plant', 'sheet')}>
            {words.missing.bringSetup}
          </a>
        </div>
      </div>
    );
  }
  return (
    <div class="stack">
      <h2>{words.next}</h2>
      {kept.length > 0 && (
        <section data-testid="next-kept">
          <KeptBy line={line} />
          {kept.map(({ job, setup, plan }, place) => (
            <Choice
              key={job.id}
              line={line}
              setup={setup}
              plan={plan}
              place={place}
              panels={job.panels}
              isFirst={place === first}
            />
          ))}
        </section>
      )}
      {[...newest.values()].every(({ setup }) => setup === chosen) && (
        <div class="row" data-testid="next-nothing-else">
          <p class="grow">{words.nothingElse}</p>
          <a class="button large" href={address('plant', 'sheet')}>
            {words.missing.bringSetup}
          </a>
        </div>
      )}
      {others.length > 0 && (
        <section data-testid="next-others">
          {kept.length > 0 && <h3>{words.nextOthers}</h3>}
          {others.map(({ setup, plan }) => (
            <Choice
              key={setup.setup}
              line={line}
              setup={setup}
              plan={plan}
              place={null}
              panels={null}
              isFirst={false}
            />
          ))}
        </section>
      )}
    </div>
  );
}

/** Whose order it is. */
function KeptBy({ line }: { readonly line: string }) {
  const floor = useFloor();
  const words = say(orderWords);
  const plan = floor.plans.get(line);
  if (!plan) return null;
  const name = plan.by ? (floor.people.get(plan.by)?.name ?? plan.by) : words.somebody;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  return (
    <h3>
      {say(changeWords).nextKept} <span class="soft">{words.keptBy(name, formatDay(plan.atMs, zone))}</span>
    </h3>
  );
}

interface ChoiceProps {
  readonly line: string;
  readonly setup: Setup;
  readonly plan: ChangePlan;
  /** Its place in the kept order, from 0; null where it is not in it. */
  readonly place: number | null;
  readonly panels: number | null;
  /** The first of the kept order that the line is not set up for: the one to plan. */
  readonly isFirst: boolean;
}

function Choice({ line, setup, plan, place, panels, isFirst }: ChoiceProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(changeWords);
  const shell = say(shellWords);
  const refusal = useRefusal('choose-setup');
  const chosen = floor.chosen.get(line) ?? null;
  const testId = place === null ? `next-${setup.setup}` : `next-job-${place}`;
  return (
    <div class="listed" data-testid={testId} data-setup={setup.setup}>
      {place !== null && <b class="place">{place + 1}</b>}
      <span class="grow">
        <b>{setup.product}</b> · {shell.side[setup.side]} · {shell.revision(setup.revision)}
        {panels !== null && ` · ${words.panels(panels, formatCount(panels))}`}
        <br />
        <Counts plan={plan} />
      </span>
      {setup.setup === chosen ? (
        <span class="chip go">✓ {words.same}</span>
      ) : (
        <Button
          tone={isFirst ? 'act' : 'plain'}
          large={isFirst}
          disabledReason={refusal ?? (plan.fits ? null : words.cannotFit)}
          label={`${words.plan}: ${setup.product} · ${shell.side[setup.side]}`}
          testId={place === null ? `plan-${setup.setup}` : `plan-job-${place}`}
          onPress={() => {
            const payload = {
              changeover: newId(),
              line,
              from: chosen,
              setup: setup.setup,
              product: setup.product,
              lastPanel: null,
            };
            app.record([{ kind: 'changeover.began', payload }]);
          }}
        >
          {words.plan}
        </Button>
      )}
    </div>
  );
}

function moves(plan: ChangePlan): number {
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
