// Where the server's routes take their questions about material. Two forms of one desk: in this process, for tests and the demo's
// small log; and in a process of its own (child.ts), since a plant's state of a year weighs a few hundred megabytes and folding
// must hold up nobody who appends.

import type { TraceQuestion } from '../../../shared/trace/question.ts';
import type { Store } from '../stores/store.ts';
import { answerPanel, answerPlaces, type PanelAnswer, type TraceAnswer } from './answer.ts';
import { createTraceKeeper } from './keeper.ts';

export interface TraceDesk {
  readonly places: (question: TraceQuestion) => Promise<TraceAnswer>;
  readonly panel: (panel: string, run: string | undefined) => Promise<PanelAnswer>;
  /** Resolves when the index has caught up with the log. */
  readonly caughtUp: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

export interface DeskParts {
  readonly store: Store;
  readonly nowMs: () => number;
  readonly onFault: (error: Error) => void;
}

/** The desk in this process. */
export function createLocalDesk(parts: DeskParts): TraceDesk {
  const keeper = createTraceKeeper(parts);
  const { store } = parts;
  return {
    places: (question) => answerPlaces({ store, keeper }, question),
    panel: (panel, run) => answerPanel({ store, keeper }, panel, run),
    caughtUp: keeper.caughtUp,
    stop: keeper.stop,
  };
}
