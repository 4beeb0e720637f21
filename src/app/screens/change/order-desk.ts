// The list of jobs in hand on this tablet: what is shown, what a person changes, what the search finds. What a person does always
// stands: each act changes the list as it is now, and a search that runs begins again from there, with a job that was moved held in its
// place. Refused: a search that goes on from the list that it was asked with; it would put back what the hand has just moved.

import { useEffect, useRef, useState } from 'preact/hooks';
import { begunJobs } from '../../../../shared/changeover/kept-order.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import type { OrderAnswer } from '../../../../shared/order/jobs.ts';
import type { OrderProblem, OrderQuestion } from '../../../../shared/order/problem.ts';
import { type RunLeft, runLeft } from '../../../../shared/outlook/line.ts';
import type { OrderReply, OrderRequest } from '../../../worker/order-protocol.ts';
import { useApp, useFloor } from '../../app.ts';
import { keep, readKept } from '../../store/preferences.ts';
import { orderWords } from '../../words/order.ts';
import { say } from '../../words/words.ts';
import {
  changeJob,
  inOrder,
  isSameList,
  keptList,
  type LearntHandling,
  moveById,
  type OrderDraft,
  type OrderList,
  toQuestion,
  withoutBegun,
} from './order-model.ts';

const SEARCH_SECONDS = 4;

/** What the page shows and what it may do. */
export interface OrderDesk {
  /** False for the moment until this tablet's own changes are read. */
  readonly isRead: boolean;
  readonly list: OrderList;
  /** What differs from the kept order; null where the kept one is shown. */
  readonly draft: OrderDraft | null;
  /** What the search proved of the list shown; null where it proved nothing of it. */
  readonly answer: OrderAnswer | null;
  readonly found: readonly OrderProblem[];
  /** How far a search is; null where none runs. */
  readonly searching: { readonly share: number } | null;
  readonly change: (edit: (list: OrderList) => OrderList) => void;
  /** Moves a job by one place; while a search runs it is held there. */
  readonly move: (id: string, step: -1 | 1) => void;
  readonly search: () => void;
  readonly stop: () => void;
  /** Back to the kept order: the list just kept, null to drop what was changed whatever it says. */
  readonly settle: (kept: OrderList | null) => void;
}

/** The question that a list of a line is, at a moment, with what the job in hand still takes. */
export function questionOf(
  floor: FloorState,
  line: string,
  at: { readonly list: OrderList; readonly nowMs: number; readonly learnt: LearntHandling | null },
): { readonly question: OrderQuestion; readonly left: RunLeft | null } {
  const calendar = lineCalendar(floor, line, at.nowMs);
  const left = runLeft(floor, line, { nowMs: at.nowMs, calendar });
  return { question: toQuestion(floor, line, { ...at, calendar, beforeSeconds: left?.seconds ?? 0 }), left };
}

interface SearchTold {
  /** False where another search, or none, is meant by now. */
  readonly isCurrent: (run: Worker) => boolean;
  readonly onFailed: () => void;
  readonly onRefused: (problems: readonly OrderProblem[]) => void;
  readonly onFound: (answer: OrderAnswer, isDone: boolean) => void;
}

/** Starts a search in a worker of its own; the caller ends the worker. */
function searchOrder(question: OrderQuestion, told: SearchTold): Worker {
  const run = new Worker(new URL('../../../worker/order.ts', import.meta.url), { type: 'module' });
  run.onerror = told.onFailed;
  run.onmessage = ({ data }: MessageEvent<OrderReply>) => {
    if (!told.isCurrent(run)) return;
    if (data.kind === 'refused') told.onRefused(data.problems);
    else told.onFound(data.answer, data.kind === 'done');
  };
  const request: OrderRequest = { question, seed: 1, seconds: SEARCH_SECONDS };
  run.postMessage(request);
  return run;
}

/** This tablet's list of one line as it is held: drawn, remembered, and at hand between two drawings. */
function useDraft(line: string) {
  const app = useApp();
  const [draft, setDraft] = useState<OrderDraft | null | undefined>(undefined);
  const draftNow = useRef(draft);
  const key = `order-${line}`;
  useEffect(() => {
    readKept<OrderDraft>(app.store.cache, key).then((read) => {
      // Whoever was quicker than the reading has a list of their own by now.
      if (draftNow.current !== undefined) return;
      draftNow.current = read;
      setDraft(read);
    });
  }, []);
  const hold = (next: OrderDraft | null) => {
    draftNow.current = next;
    setDraft(next);
    void keep(app.store.cache, key, next);
  };

  /** The list as it is now, whatever was drawn: a tap may come before the next drawing. */
  function listNow(): OrderList {
    const floor = app.store.floor();
    return withoutBegun(draftNow.current ?? keptList(floor.plans.get(line)), begunJobs(floor, line));
  }

  /** Shows a list that differs from the kept one until somebody keeps it; this tablet remembers it. */
  function show(next: OrderList): void {
    const floor = app.store.floor();
    const plan = floor.plans.get(line);
    const from = draftNow.current;
    const changed: OrderDraft = { ...next, sinceMs: from ? from.sinceMs : (plan?.atMs ?? null) };
    hold(isSameList(changed, withoutBegun(keptList(plan), begunJobs(floor, line))) ? null : changed);
  }

  return { draft, draftNow, hold, listNow, show };
}

interface SearchedList {
  readonly listNow: () => OrderList;
  readonly show: (next: OrderList) => void;
}

/** The search for a better order of the list in hand, and what it found. */
function useSearch(line: string, learnt: LearntHandling | null, { listNow, show }: SearchedList) {
  const app = useApp();
  const [best, setBest] = useState<{ readonly list: OrderList; readonly answer: OrderAnswer } | null>(null);
  const [searching, setSearching] = useState<{ readonly share: number } | null>(null);
  const [found, setFound] = useState<readonly OrderProblem[]>([]);
  const worker = useRef<Worker | null>(null);
  useEffect(() => () => worker.current?.terminate(), []);

  function stop(): void {
    worker.current?.terminate();
    worker.current = null;
    setSearching(null);
  }

  function tell(text: string): void {
    app.notice.value = { tone: 'care', text };
  }

  function search(): void {
    stop();
    const words = say(orderWords);
    const asked = listNow();
    const nowMs = app.clock.nowMs();
    const { question } = questionOf(app.store.floor(), line, { list: asked, nowMs, learnt });
    let shown = asked;
    setSearching({ share: 0 });
    worker.current = searchOrder(question, {
      isCurrent: (run) => worker.current === run,
      onFailed: () => {
        stop();
        tell(words.failed);
      },
      onRefused: (problems) => {
        setFound(problems);
        stop();
      },
      onFound: (answer, isDone) => {
        // Another tablet kept another order, or a job was begun: the search is about a list that is no more.
        if (!isSameList(listNow(), shown)) {
          stop();
          return tell(words.listChanged);
        }
        shown = inOrder(asked, answer.order);
        setBest({ list: shown, answer });
        show(shown);
        if (isDone) stop();
        else setSearching({ share: answer.share });
      },
    });
  }

  /** Ends the search and drops what it found wrong: the list is another one. */
  function forget(): void {
    stop();
    setFound([]);
  }

  return { best, searching, found, isSearching: () => worker.current !== null, stop, search, forget };
}

/** The desk of one line's order. */
export function useOrderDesk(line: string, learnt: LearntHandling | null): OrderDesk {
  const app = useApp();
  useFloor();
  const { draft, draftNow, hold, listNow, show } = useDraft(line);
  const { best, searching, found, isSearching, stop, search, forget } = useSearch(line, learnt, {
    listNow,
    show,
  });

  function change(edit: (list: OrderList) => OrderList): void {
    const wasSearching = isSearching();
    forget();
    show(edit(listNow()));
    if (wasSearching) search();
  }

  const list = listNow();
  return {
    list,
    found,
    searching,
    change,
    search,
    stop,
    isRead: draft !== undefined,
    draft: draft ?? null,
    // Another tablet may keep another order at any time: what was proven holds for its own list only.
    answer: best && isSameList(best.list, list) ? best.answer : null,
    move: (id, step) => {
      const holds = isSearching();
      change((now) => {
        const moved = moveById(now, id, step);
        return holds ? changeJob(moved, id, (job) => ({ ...job, isHeld: true })) : moved;
      });
      if (holds) app.notice.value = { tone: 'plain', text: say(orderWords).heldByHand };
    },
    settle: (kept) => {
      const now = draftNow.current;
      // What was changed while the order was being kept stays.
      if (kept !== null && now && !isSameList(now, kept)) return;
      forget();
      hold(null);
    },
  };
}
