// Has something computed off the page's thread: one question at a time, only the newest waits. Where no worker starts, the page computes
// itself: a late answer beats none.

import { later } from '../device/later.ts';

interface Asked<Q, A> {
  readonly question: Q;
  readonly take: (answer: A) => void;
}

/** Asks; the answer comes by `take`, unless a newer question took its place before the computation began. */
export type AskWorker<Q, A> = (question: Q, take: (answer: A) => void) => void;

/**
 * An asker of its own; its worker starts with the first question. `here`: fetches the same computation, for a page without workers.
 */
export function startAskWorker<Q, A>(
  startWorker: () => Worker,
  here: () => Promise<(question: Q) => A>,
): AskWorker<Q, A> {
  let worker: Worker | null = null;
  let isBroken = false;
  let busy: Asked<Q, A> | null = null;
  let next: Asked<Q, A> | null = null;

  function goOn(): void {
    const done = next;
    busy = null;
    next = null;
    if (done) ask(done);
  }

  function start(): Worker {
    const started = startWorker();
    started.onmessage = ({ data }: MessageEvent<A>) => {
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

  async function computeHere({ question, take }: Asked<Q, A>): Promise<void> {
    let answer: A;
    try {
      answer = (await here())(question);
    } finally {
      goOn();
    }
    take(answer);
  }

  function ask(asked: Asked<Q, A>): void {
    busy = asked;
    if (isBroken) {
      computeHere(asked).catch(() => undefined); // offline and not kept: the next question asks again
      return;
    }
    later(() => {
      // Nobody acts on the answer before the first screen stands; the worker is not to compete with it.
      worker ??= start();
      worker.postMessage(asked.question);
    });
  }

  return (question, take) => {
    if (busy === null) ask({ question, take });
    else next = { question, take };
  };
}
