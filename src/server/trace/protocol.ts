// What the server and its trace process say to each other. The address of a database holds a password: it goes by message, never
// on a command line that others can list.

import type { TraceQuestion } from '../../../shared/trace/question.ts';
import type { PanelAnswer, TraceAnswer } from './answer.ts';
import type { FaultTold } from './faults.ts';

/** First argument of a process that keeps the trace. */
export const traceRole = 'trace-process';

export type ToChild =
  | {
      readonly say: 'open';
      readonly folder: string;
      readonly database: string | null;
      readonly months: string | null;
    }
  | { readonly say: 'appended' }
  | { readonly say: 'places'; readonly id: number; readonly question: TraceQuestion }
  | { readonly say: 'panel'; readonly id: number; readonly panel: string; readonly run: string | null }
  | { readonly say: 'caught-up'; readonly id: number };

export type FromChild =
  | { readonly id: number; readonly answer: TraceAnswer | PanelAnswer | null }
  | { readonly id: number; readonly fault: FaultTold }
  | { readonly id: null; readonly fault: FaultTold };
