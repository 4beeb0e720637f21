// The lead's order of jobs: what each changeover takes and why, due times, places held by hand, a search that can be stopped at
// any moment with the best so far.

import { useEffect, useRef, useState } from 'preact/hooks';
import type { OrderAnswer } from '../../../../shared/changeover/order-jobs.ts';
import { explainChange, type InReason, planOrder } from '../../../../shared/changeover/order-plan.ts';
import type { OrderProblem } from '../../../../shared/changeover/order-problem.ts';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { workingMoment } from '../../../../shared/forecast/working-time.ts';
import type { OrderReply, OrderRequest } from '../../../worker/order-protocol.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { address } from '../../router.ts';
import { keep, readKept } from '../../store/preferences.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { orderWords } from '../../words/order.ts';
import { formatCount, formatDay, formatSpan, say } from '../../words/words.ts';
import { AddJob } from './AddJob.tsx';
import { HandlingForm } from './HandlingForm.tsx';
import { formatFigure } from './model.ts';
import { OrderKept } from './OrderKept.tsx';
import {
  handlingOf,
  inOrder,
  isSameList,
  keptList,
  type LearntHandling,
  type ListedJob,
  moveJob,
  type OrderDraft,
  type OrderList,
  setByHand,
  toQuestion,
} from './order-model.ts';
import { learnFromLog } from './past.ts';

const SEARCH_SECONDS = 4;

export function Order({ line }: { readonly line: string }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(orderWords);
  const refusal = useRefusal('choose-setup');
  const [draft, setDraft] = useState<OrderDraft | null>(null);
  const plan = floor.plans.get(line);
  const [best, setBest] = useState<{ readonly list: OrderList; readonly answer: OrderAnswer } | null>(null);
  const draftNow = useRef(draft);
  draftNow.current = draft;
  const list: OrderList = draft ?? keptList(plan);
  // Another tablet may keep another order at any time: what was proven holds for its own list only.
  const answer = best && isSameList(best.list, list) ? best.answer : null;
  const [learnt, setLearnt] = useState<LearntHandling | null>(null);
  const [searching, setSearching] = useState<{ readonly share: number } | null>(null);
  const [found, setFound] = useState<readonly OrderProblem[]>([]);
  const worker = useRef<Worker | null>(null);
  const key = `order-${line}`;
  useEffect(() => {
    readKept<OrderDraft>(app.store.cache, key).then(setDraft);
    return () => worker.current?.terminate();
  }, []);
  const released = [...floor.changeovers.values()].filter((each) => each.releasedMs !== null).length;
  useEffect(() => {
    learnFromLog(app.store, app.store.floor(), line).then(setLearnt, () => undefined); // a failed read is shown by the fault screen
  }, [line, released]);
  const nowMs = Math.floor(app.nowMs.value / 60_000) * 60_000;
  const calendar = lineCalendar(floor, line, nowMs);
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const question = toQuestion(floor, line, { list, calendar, nowMs, learnt });
  const planned = planOrder(
    question,
    list.jobs.map((_, place) => place),
  );
  const problems = planned.ok ? found : planned.error;

  function change(next: OrderList): void {
    stop();
    setFound([]);
    show(next);
  }

  /** Shows a list that differs from the kept one until somebody keeps it; this tablet remembers it. */
  function show(next: OrderList): void {
    const now = app.store.floor().plans.get(line);
    const from = draftNow.current;
    const changed: OrderDraft = { ...next, sinceMs: from ? from.sinceMs : (now?.atMs ?? null) };
    hold(isSameList(changed, keptList(now)) ? null : changed);
  }

  function hold(next: OrderDraft | null): void {
    draftNow.current = next;
    setDraft(next);
    void keep(app.store.cache, key, next);
  }

  /** Back to the kept order; what was changed while it was being kept stays. */
  function settle(kept: OrderList | null): void {
    const now = draftNow.current;
    if (kept !== null && now !== null && !isSameList(now, kept)) return;
    stop();
    setFound([]);
    hold(null);
  }

  function stop(): void {
    worker.current?.terminate();
    worker.current = null;
    setSearching(null);
  }

  function search(): void {
    stop();
    const asked = list;
    const run = new Worker(new URL('../../../worker/order.ts', import.meta.url), { type: 'module' });
    worker.current = run;
    setSearching({ share: 0 });
    run.onerror = () => {
      stop();
      app.notice.value = { tone: 'care', text: words.failed };
    };
    run.onmessage = ({ data }: MessageEvent<OrderReply>) => {
      if (worker.current !== run) return;
      if (data.kind === 'refused') {
        setFound(data.problems);
        return stop();
      }
      const ordered = inOrder(asked, data.answer.order);
      setBest({ list: ordered, answer: data.answer });
      show(ordered);
      if (data.kind === 'done') stop();
      else setSearching({ share: data.answer.share });
    };
    const request: OrderRequest = { question, seed: 1, seconds: SEARCH_SECONDS };
    run.postMessage(request);
  }

  return (
    <div class="stack page" data-testid="order">
      <header class="row">
        <a class="button quiet" href={address('change')}>
          <Icon name="left" /> {words.back}
        </a>
        <h1>{words.title}</h1>
      </header>
      <p>{words.help}</p>
      <Problems problems={problems} list={list} />
      {list.jobs.length === 0 ? (
        <p class="soft">{words.empty}</p>
      ) : (
        <div class="row">
          {searching === null ? (
            <Button tone="act" large testId="order-find" disabledReason={refusal} onPress={search}>
              <Icon name="search" /> {words.find}
            </Button>
          ) : (
            <>
              <progress max={1} value={searching.share} aria-label={words.title} />
              <span>{words.searching(formatCount(searching.share * 100))}</span>
              <Button large onPress={stop} testId="order-stop">
                {words.stop}
              </Button>
            </>
          )}
          {planned.ok && (
            <p class="grow" role="status" data-testid="order-total">
              <b>{words.total(planned.value.changes)}</b> ·{' '}
              {words.minutes(formatSpan(planned.value.minutes * 60))}
              <br />
              <span class="soft">{answer === null ? words.manual : sayProof(answer)}</span>
            </p>
          )}
        </div>
      )}
      <OrderKept line={line} list={list} draft={draft} onSettle={settle} isSearching={searching !== null} />
      <ol class="jobs">
        {list.jobs.map((job, place) => {
          const load = planned.ok ? planned.value.loads[place] : undefined;
          const endMs = load ? workingMoment(calendar, nowMs, load.endMinutes * 60) : null;
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
                  <span>
                    {words.puts(load.in.length, load.out.length)} · {words.ends(formatDay(endMs, zone))}
                  </span>
                )}
                {load && load.in.length > 0 && (
                  <details>
                    <summary>{words.drives}</summary>
                    <Drivers reasons={planned.ok ? explainChange(planned.value, place) : []} />
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
              <JobButtons
                job={job}
                place={place}
                count={list.jobs.length}
                onMove={(step) => change(moveJob(list, place, step))}
                onChange={(next) =>
                  change({
                    ...list,
                    jobs: list.jobs.flatMap((each) => (each.id === job.id ? (next ?? []) : each)),
                  })
                }
              />
            </li>
          );
        })}
      </ol>
      <AddJob line={line} onAdd={(job) => change({ ...list, jobs: [...list.jobs, job] })} />
      <HandlingForm
        handling={handlingOf(list, learnt)}
        onSet={(name, minutes) => change(setByHand(list, name, minutes))}
      />
    </div>
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
  return answer.isProven
    ? words.proven
    : words.gap(formatCount(answer.lowest), formatFigure(Math.ceil(answer.gap * 1000) / 10));
}

interface JobButtonsProps {
  readonly job: ListedJob;
  readonly place: number;
  readonly count: number;
  readonly onMove: (step: -1 | 1) => void;
  /** Null takes it off the list. */
  readonly onChange: (next: ListedJob | null) => void;
}

function JobButtons({ job, place, count, onMove, onChange }: JobButtonsProps) {
  const words = say(orderWords);
  return (
    <span class="row">
      {place > 0 && (
        <Button label={words.up} onPress={() => onMove(-1)} testId={`up-${place}`}>
          ↑
        </Button>
      )}
      {place < count - 1 && (
        <Button label={words.down} onPress={() => onMove(1)} testId={`down-${place}`}>
          ↓
        </Button>
      )}
      <Button onPress={() => onChange({ ...job, isHeld: !job.isHeld })} testId={`hold-${place}`}>
        {job.isHeld ? `▣ ${words.unlock}` : `▢ ${words.lock}`}
      </Button>
      <Button tone="quiet" label={words.remove} onPress={() => onChange(null)}>
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
