// The page's side of the sheet worker: asks, hears the steps, gives up by ending the worker.
// Method: one request at a time; a newer one takes the place of an older one. A worker that was ended is started again with the next request.

import type { FirstTable } from '../../../../../shared/sheet/first-table.ts';
import type {
  SheetFault,
  SheetReply,
  SheetRequest,
  SheetRole,
  SheetStep,
  SheetSummary,
} from '../../../../worker/sheet-protocol.ts';

/** A worker as far as this file needs one; tests give a fake. */
export interface SheetPort {
  postMessage(request: SheetRequest): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<SheetReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** What a request led to; `given-up` where the person or a newer request ended it. */
export type SheetAnswer =
  | { readonly is: 'read'; readonly summary: SheetSummary }
  /** The sheet asked for is one of the board's own files. */
  | { readonly is: 'other'; readonly as: FirstTable }
  | {
      readonly is: 'refused';
      readonly role: SheetRole;
      readonly fault: SheetFault;
      readonly detail: string;
    }
  | { readonly is: 'given-up' };

/** Reads sheets away from the page's thread. */
export interface SheetReader {
  ask(
    request: Omit<SheetRequest, 'id'>,
    onStep: (role: SheetRole, step: SheetStep) => void,
  ): Promise<SheetAnswer>;
  giveUp(): void;
}

function startWorker(): SheetPort {
  return new Worker(new URL('../../../../worker/sheet.ts', import.meta.url), { type: 'module' });
}

/** Makes a reader; nothing is started before the first request. */
export function createSheetReader(start: () => SheetPort = startWorker): SheetReader {
  let port: SheetPort | null = null;
  let id = 0;
  let waiting: {
    readonly answer: (answer: SheetAnswer) => void;
    readonly onStep: (role: SheetRole, step: SheetStep) => void;
  } | null = null;

  function settle(answer: SheetAnswer): void {
    const { answer: resolve } = waiting ?? {};
    waiting = null;
    resolve?.(answer);
  }

  function giveUp(): void {
    if (!waiting) return; // an idle worker keeps what it has parsed
    port?.terminate();
    port = null;
    settle({ is: 'given-up' });
  }

  function open(): SheetPort {
    const opened = start();
    opened.onmessage = ({ data: reply }) => {
      if (reply.id !== id || !waiting) return;
      if (reply.kind === 'step') waiting.onStep(reply.role, reply.step);
      else if (reply.kind === 'read') settle({ is: 'read', summary: reply.summary });
      else if (reply.kind === 'other') settle({ is: 'other', as: reply.as });
      else settle({ is: 'refused', role: reply.role, fault: reply.fault, detail: reply.detail });
    };
    opened.onerror = (event) => {
      port = null;
      opened.terminate();
      settle({ is: 'refused', role: 'sheet', fault: 'failed', detail: event.message ?? '' });
    };
    return opened;
  }

  return {
    ask(request, onStep) {
      giveUp();
      id += 1;
      port ??= open();
      const answer = new Promise<SheetAnswer>((resolve) => {
        waiting = { answer: resolve, onStep };
      });
      port.postMessage({ id, ...request });
      return answer;
    },
    giveUp,
  };
}
