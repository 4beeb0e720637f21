// The slots of the board in hand: what was proposed, what a person said, and the worker that looks for more. It lives as long as the sheet in hand.
// Method: a worker for each question, ended with the answer or by whoever gives up; what a person says meanwhile stands in the answer.

import { type Signal, signal } from '@preact/signals';
import type { ProposalQuestion, ProposedPart, WantedPart } from '../../../../../shared/assign/propose.ts';
import type { AssignReply, AssignRequest } from '../../../../worker/assign-protocol.ts';
import type { SlotPlan } from './board-model.ts';
import { partKey, type SaidWidths } from './part-width.ts';

/** A worker as far as this file needs one; tests give a fake. */
export interface AssignPort {
  postMessage(request: AssignRequest): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<AssignReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** The slots in hand. */
export interface SlotDesk {
  readonly plan: Signal<SlotPlan | null>;
  readonly widths: Signal<SaidWidths>;
  readonly isBusy: Signal<boolean>;
  readonly isFailed: Signal<boolean>;
  /** Asks for a proposal; `take` makes a plan of it once it is there. `others`: parts of boards that are built before and proposed with it. */
  readonly propose: (
    question: ProposalQuestion,
    take: (parts: readonly ProposedPart[], others: readonly (readonly ProposedPart[])[]) => SlotPlan,
    others?: readonly (readonly WantedPart[])[],
  ) => void;
  readonly giveUp: () => void;
  /** Says how wide a part's tape is, or that it comes on trays; null = as it is known without a word. */
  readonly sayWidth: (part: string, width: number | 'tray' | null) => void;
  readonly clear: () => void;
}

function startAssignWorker(): AssignPort {
  return new Worker(new URL('../../../../worker/assign.ts', import.meta.url), { type: 'module' });
}

/** Makes a desk; nothing is started before the first question. */
export function createSlotDesk(start: () => AssignPort = startAssignWorker): SlotDesk {
  const plan = signal<SlotPlan | null>(null);
  const widths = signal<SaidWidths>(new Map());
  const isBusy = signal(false);
  const isFailed = signal(false);
  let port: AssignPort | null = null;
  let id = 0;

  function giveUp(): void {
    port?.terminate();
    port = null;
    isBusy.value = false;
  }

  return {
    plan,
    widths,
    isBusy,
    isFailed,
    giveUp,
    propose(question, take, others = []) {
      giveUp();
      id += 1;
      const mine = id;
      const opened = start();
      port = opened;
      isBusy.value = true;
      isFailed.value = false;
      opened.onmessage = ({ data }) => {
        if (port !== opened || data.id !== mine) return;
        giveUp();
        plan.value = take(data.parts, data.others);
      };
      opened.onerror = () => {
        if (port !== opened) return;
        giveUp();
        isFailed.value = true;
      };
      opened.postMessage({ id: mine, question, others });
    },
    sayWidth(part, width) {
      const next = new Map(widths.value);
      if (width === null) next.delete(partKey(part));
      else next.set(partKey(part), width);
      widths.value = next;
    },
    clear() {
      giveUp();
      plan.value = null;
      widths.value = new Map();
      isFailed.value = false;
    },
  };
}
