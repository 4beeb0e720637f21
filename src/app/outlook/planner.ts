// Plans walks off the page's thread: one question at a time, only the newest waits. Where no worker starts, the page plans itself:
// late walks beat none.

import type { WalkAnswer, WalkQuestion } from '../../../shared/forecast/walks.ts';
import { later } from '../device/later.ts';

interface Asked {
  readonly question: WalkQuestion;
  readonly take: (answer: WalkAnswer) => void;
}

/** Asks for walks; the answer comes by `take`, unless a newer question took its place before the planning began. */
export type Planner = (question: WalkQuestion, take: (answer: WalkAnswer) => void) => void;

/** A planner of its own; its worker starts with the first question. */
export function startPlanner(): Planner {
  let worker: Worker | null = null;
  let isBroken = false;
  let busy: Asked | null = null;
  let next: Asked | null = null;

  function goOn(): void {
    const done = next;
    busy = null;
    next = null;
    if (done) ask(done);
  }

  function start(): Worker {
    const started = new Worker(new URL('../../worker/walks.ts', import.meta.url), { type: 'module' });
    started.onmessage = ({ data }: MessageEvent<WalkAnswer>) => {
      const answered = busy;
      goOn();
      answered?.take(data);
    };
    started.onerror = () => {
      isBroken = true;
      started.terminate();
      const waiting = next ?? busy;
      busy = null;
      next = null;
      if (waiting) ask(waiting);
    };
    return started;
  }

  async function planHere({ question, take }: Asked): Promise<void> {
    const { answerWalks } = await import('../../../shared/forecast/walks.ts');
    const answer = answerWalks(question);
    goOn();
    take(answer);
  }

  function ask(asked: Asked): void {
    busy = asked;
    if (isBroken) {
      void planHere(asked);
      return;
    }
    later(() => {
      // Nobody walks by the list before the first screen stands; the worker is not to compete with it.
      worker ??= start();
      worker.postMessage(asked.question);
    });
  }

  return (question, take) => {
    if (busy === null) ask({ question, take });
    else next = { question, take };
  };
}
