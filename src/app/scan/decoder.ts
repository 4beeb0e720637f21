// The page's side of the decoder: hands a frame to the worker and waits for what was in it.
// Method: one worker, one frame in flight. Where WebAssembly is barred a worker with a plain script reader is started instead; it
// is slower and reads one code a frame. Refused: a queue of frames, which would show the past.

import type { CodeFormat, DecodeReply, DecodeRequest, FoundCode } from '../../worker/decode-protocol.ts';
import type { GrabbedFrame } from './grab.ts';

export interface DecodeAnswer {
  readonly codes: readonly FoundCode[];
  readonly width: number;
  readonly height: number;
  readonly spentMs: number;
}

export interface DecodeOptions {
  readonly formats: readonly CodeFormat[];
  readonly isThorough: boolean;
}

export interface Decoder {
  readonly path: 'worker' | 'script';
  /** Reads one frame and uses it up. Rejects while another is in flight. */
  decode(grabbed: GrabbedFrame, options: DecodeOptions): Promise<DecodeAnswer>;
  close(): void;
}

/** A worker as far as this file needs one; tests give a fake. */
export interface WorkerPort {
  postMessage(message: DecodeRequest, transfer: Transferable[]): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<DecodeReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** Starts the decoder that this browser can run. */
export async function createDecoder(
  startWorker: () => WorkerPort = startDecodeWorker,
  loadScript: () => Promise<Decoder> = async () =>
    (await import('./decoder-script.ts')).createScriptDecoder(),
  startScriptWorker: () => WorkerPort = startScriptReader,
): Promise<Decoder> {
  try {
    return await openWorker(startWorker(), 'worker');
  } catch {
    // No WebAssembly here: slower, but it reads.
  }
  try {
    return await openWorker(startScriptWorker(), 'script');
  } catch {
    // No worker either.
    return loadScript();
  }
}

function startDecodeWorker(): WorkerPort {
  return new Worker(new URL('../../worker/decode.ts', import.meta.url), { type: 'module' });
}

function startScriptReader(): WorkerPort {
  return new Worker(new URL('../../worker/decode-script.ts', import.meta.url), { type: 'module' });
}

function openWorker(worker: WorkerPort, path: Decoder['path']): Promise<Decoder> {
  return new Promise((resolve, reject) => {
    let waiting: {
      readonly resolve: (answer: DecodeAnswer) => void;
      readonly reject: (reason: Error) => void;
    } | null = null;
    let id = 0;
    const giveUp = (message: string) => {
      const error = new Error(message);
      reject(error);
      waiting?.reject(error);
      waiting = null;
    };
    worker.onerror = (event) => giveUp(event.message || 'the decoder worker did not start');
    worker.onmessage = ({ data: reply }) => {
      if (reply.kind === 'ready') resolve(decoder);
      if (reply.kind === 'unable') {
        worker.terminate();
        giveUp(reply.message);
      }
      if ((reply.kind === 'read' || reply.kind === 'failed') && reply.id === id) {
        const { resolve: answer, reject: refuse } = waiting ?? {};
        waiting = null;
        if (reply.kind === 'read') answer?.(reply);
        else refuse?.(new Error(reply.message));
      }
    };
    const decoder: Decoder = {
      path,
      decode({ frame, crop }, options) {
        if (waiting !== null)
          return Promise.reject(
            new RangeError('Cannot decode as one frame must be in flight at most: current value is 1'),
          );
        id += 1;
        worker.postMessage({ id, frame, crop, ...options }, [frame]);
        return new Promise((answer, refuse) => {
          waiting = { resolve: answer, reject: refuse };
        });
      },
      close() {
        worker.terminate();
        waiting?.reject(new Error('the decoder was closed'));
        waiting = null;
      },
    };
  });
}
