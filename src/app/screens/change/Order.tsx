// The lead's order of jobs: what each changeover takes and why, due times, places held by hand, a search that can be stopped at
// any moment with the best so far.

import { useEffect, useState } from 'preact/hooks';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { workingMoment } from '../../../../shared/forecast/working-time.ts';
import type { OrderAnswer } from '../../../../shared/order/jobs.ts';
import { explainChange, type InReason, type OrderPlan, planOrder } from '../../../../shared/order/plan.ts';
import type { OrderProblem } from '../../../../shared/order/problem.ts';
import type { RunLeft } from '../../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { address } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { orderWords } from '../../words/order.ts';
import { formatCount, formatDay, formatFigure, formatSpan, say } from '../../words/words.ts';
import { AddJob } from './AddJob.tsx';
import { HandlingForm } from './HandlingForm.tsx';
import { OrderKept } from './OrderKept.tsx';
import { type OrderDesk, questionOf, useOrderDesk } from './order-desk.ts';
import {
  changeJob,
  handlingOf,
  type LearntHandling,
  type ListedJob,
  type OrderList,
  setByHand,
} from './order-model.ts';
import { learnFromLog } from './past.ts';

export function Order({ line }: { readonly line: string }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(orderWords);
  const [learnt, setLearnt] = useState<LearntHandling | null>(null);
  const desk = useOrderDesk(line, learnt);
  const released = [...floor.changeovers.values()].filter((each) => each.releasedMs !== null).length;
  useEffect(() => {
    const nothing = { putIn: null, takeOut: null };
    learnFromLog(app.store, app.store.floor(), line).then(setLearnt, () => setLearnt(nothing)); // a failed read is shown by the fault screen
  }, [line, released]);
  const { list, draft, answer, searching } = desk;
  const nowMs = Math.floor(app.nowMs.value / 60_000) * 60_000;
  const { question, left } = questionOf(floor, line, { list, nowMs, learnt });
  const planned = planOrder(
    question,
    list.jobs.map((_, place) => place),
  );
  const plan = planned.ok ? planned.value : null;
  return (
    <div class="stack page" data-testid="order">
      <header class="row">
        <a class="button quiet" href={address('change')}>
          <Icon name="left" /> {words.back}
        </a>
        <h1>{words.title}</h1>
      </header>
      <p>{words.help}</p>
      {/* Until this tablet's own changes are read there is nothing to change. */}
      {desk.isRead && (
        <>
          <Problems problems={planned.ok ? desk.found : planned.error} list={list} />
          {list.jobs.length === 0 ? (
            <p class="soft">{words.empty}</p>
          ) : (
            <SearchRow desk={desk} plan={plan} answer={answer} />
          )}
          <OrderKept
            line={line}
            list={list}
            draft={draft}
            onSettle={desk.settle}
            isSearching={searching !== null}
            isFound={answer !== null}
          />
          <Jobs line={line} desk={desk} plan={plan} left={left} nowMs={nowMs} />
          <AddJob line={line} onAdd={(job) => desk.change((now) => ({ ...now, jobs: [...now.jobs, job] }))} />
          {/* What is learnt changes the fields: they come when it is known, not under somebody's fingers. */}
          {learnt !== null && (
            <HandlingForm
              handling={handlingOf(list, learnt)}
              onSet={(name, minutes) => desk.change((now) => setByHand(now, name, minutes))}
            />
          )}
        </>
      )}
    </div>
  );
}

interface SearchRowProps {
  readonly desk: OrderDesk;
  readonly plan: OrderPlan | null;
  readonly answer: OrderAnswer | null;
}

/** The search, how far it is, and what the order shown costs. */
function SearchRow({ desk, plan, answer }: SearchRowProps) {
  const words = say(orderWords);
  const refusal = useRefusal('choose-setup');
  const { searching } = desk;
  return (
    <div class="row">
      {searching === null ? (
        <Button
          tone={answer === null ? 'act' : 'plain'}
          large
          testId="order-find"
          disabledReason={refusal}
          onPress={desk.search}
        >
          <Icon name="search" /> {words.find}
        </Button>
      ) : (
        <>
          <progress max={1} value={searching.share} aria-label={words.title} />
          <span>{words.searching(formatCount(searching.share * 100))}</span>
          <Button large onPress={desk.stop} testId="order-stop">
            {words.stop}
          </Button>
        </>
      )}
      {plan && (
        <p class="grow" role="status" data-testid="order-total">
          <b>{words.total(plan.changes)}</b> · {words.minutes(formatSpan(plan.minutes * 60))}
          <br />
          <span class="soft">{answer === null ? words.manual : sayProof(answer)}</span>
        </p>
      )}
    </div>
  );
}

interface JobsProps {
  readonly line: string;
  readonly desk: OrderDesk;
  readonly plan: OrderPlan | null;
  /** What the job in hand still takes; the first of the list begins after it. */
  readonly left: RunLeft | null;
  readonly nowMs: number;
}

function Jobs({ line, desk, plan, left, nowMs }: JobsProps) {
  const floor = useFloor();
  const words = say(orderWords);
  const calendar = lineCalendar(floor, line, nowMs);
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const { jobs } = desk.list;
  const beginsMs = workingMoment(calendar, nowMs, left?.seconds ?? 0);
  return (
    <ol class="jobs">
      {left && left.panels > 0 && (
        <li class="listed" data-testid="order-running">
          <b class="place">▸</b>
          <span class="grow checked-part">
            <b>{words.runningNow(left.run.product)}</b>
            <span>
              {words.panelsLeft(left.panels, formatCount(left.panels))} ·{' '}
              {words.ends(formatDay(beginsMs, zone))}
            </span>
            <span class="soft">{words.runningFirst}</span>
          </span>
        </li>
      )}
      {jobs.map((job, place) => {
        const load = plan?.loads[place];
        const endMs = load ? workingMoment(calendar, beginsMs, load.endMinutes * 60) : null;
        return (
          <li key={job.id} class="listed" data-testid={`job-${place}`} data-setup={job.setup}>
            <b class="place">{place + 1}</b>
            <span class="grow checked-part">
              <b>{floor.setups.get(job.setup)?.product ?? job.setup}</b>
              <span class="soft">
                {formatCount(job.panels)} × {formatFigure(job.panelSeconds)} s
                {job.dueMs !== null && ` · ${words.due} ${formatDay(job.dueMs, zone)}`}
              </span>
              {load && endMs !== null && (
                <span data-testid={`ends-${place}`}>
                  {words.puts(load.in.length, load.out.length)} · {words.ends(formatDay(endMs, zone))}
                </span>
              )}
              {load && load.in.length > 0 && (
                <details>
                  <summary>{words.drives}</summary>
                  <Drivers reasons={plan ? explainChange(plan, place) : []} />
                </details>
              )}
            </span>
            {load && job.dueMs !== null && (
              <span class={`chip ${load.lateMinutes > 0 ? 'stop' : 'go'}`} data-testid={`late-${place}`}>
                {load.lateMinutes > 0
                  ? `✕ ${words.late(formatSpan(load.lateMinutes * 60))}`
                  : `✓ ${words.inTime}`}
              </span>
            )}
            <JobButtons job={job} place={place} count={jobs.length} desk={desk} />
          </li>
        );
      })}
    </ol>
  );
}

/** Feeders that go in for the first time, and those that come back since room was short. */
function Drivers({ reasons }: { readonly reasons: readonly InReason[] }) {
  const words = say(orderWords);
  return (
    <>
      {(['first', 'back'] as const).map((why) => {
        const parts = reasons.filter((reason) => reason.why === why).map((reason) => reason.part);
        return (
          parts.length > 0 && (
            <span key={why} class="block">
              {words.why[why]}{' '}
              <span class="code" translate={false}>
                {parts.join(', ')}
              </span>
            </span>
          )
        );
      })}
    </>
  );
}

function sayProof(answer: OrderAnswer): string {
  const words = say(orderWords);
  return answer.isProven || answer.gap === 0
    ? words.proven
    : words.gap(formatCount(answer.lowest), formatFigure(Math.ceil(answer.gap * 1000) / 10));
}

interface JobButtonsProps {
  readonly job: ListedJob;
  readonly place: number;
  readonly count: number;
  readonly desk: OrderDesk;
}

function JobButtons({ job, place, count, desk }: JobButtonsProps) {
  const words = say(orderWords);
  const edit = (how: (job: ListedJob) => ListedJob | null) =>
    desk.change((now) => changeJob(now, job.id, how));
  return (
    <span class="row">
      {place > 0 && (
        <Button label={words.up} onPress={() => desk.move(job.id, -1)} testId={`up-${place}`}>
          ↑
        </Button>
      )}
      {place < count - 1 && (
        <Button label={words.down} onPress={() => desk.move(job.id, 1)} testId={`down-${place}`}>
          ↓
        </Button>
      )}
      <Button onPress={() => edit((now) => ({ ...now, isHeld: !now.isHeld }))} testId={`hold-${place}`}>
        {job.isHeld ? `▣ ${words.unlock}` : `▢ ${words.lock}`}
      </Button>
      <Button tone="quiet" label={words.remove} onPress={() => edit(() => null)}>
        ✕
      </Button>
    </span>
  );
}

function Problems(props: { readonly problems: readonly OrderProblem[]; readonly list: OrderList }) {
  const floor = useFloor();
  const words = say(orderWords);
  return (
    <>
      {props.problems.map((problem) => {
        const job = props.list.jobs.find((each) => each.id === problem.job);
        const product = floor.setups.get(job?.setup ?? '')?.product ?? '';
        return (
          <p key={`${problem.code}${problem.job}`} class="chip stop" role="alert">
            ✕{' '}
            {problem.code === 'job-too-wide'
              ? `${words.tooWide(product, problem.over ?? 0)} ${words.widest((problem.parts ?? []).slice(0, 6).join(', '))}`
              : problem.code === 'loaded-too-wide'
                ? words.loadedTooWide
                : words.lockProblem}
          </p>
        );
      })}
    </>
  );
}
