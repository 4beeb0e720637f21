// The page's side of the decoder: hands a frame to the worker and waits for what was in it.
// Method: one worker, one frame in flight. Where WebAssembly is barred `stream-reader.ts` takes the lens's whole stream instead; it
// is slower and reads one code a frame. Refused: a queue of frames, which would show the past.

import type {
  CodeFormat,
  Crop,
  DecodeReply,
  DecodeRequest,
  FoundCode,
} from '../../worker/decode-protocol.ts';
import { type GrabbedFrame, grabFrame } from './grab.ts';

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

/** Reads frames that the camera session takes. */
export interface Decoder {
  readonly path: 'worker';
  /** Reads one frame and uses it up. Rejects while another is in flight. */
  decode(grabbed: GrabbedFrame, options: DecodeOptions): Promise<DecodeAnswer>;
  close(): void;
}

export interface StreamParts {
  readonly stream: MediaStream;
  readonly video: HTMLVideoElement;
  /** What is to be read of the picture that is looked at now, in its pixels. */
  readonly crop: () => Crop;
  readonly formats: readonly CodeFormat[];
  /** Told of each picture before it is read and used up. */
  readonly onFrame?: (frame: GrabbedFrame['frame']) => void;
}

/** A stream that is shown and read; whoever opened it stops it. */
export interface OpenStream {
  /** What is in the picture now; null when there is none yet. Rejects when the stream came to an end. */
  look(): Promise<DecodeAnswer | null>;
  stop(): void;
}

/** Shows a lens's stream itself and takes its own pictures of it. */
export interface StreamReader {
  readonly path: 'script';
  /** Rejects where the video would not play. */
  open(parts: StreamParts): Promise<OpenStream>;
  close(): void;
}

/** A worker as far as this file needs one; tests give a fake. */
export interface WorkerPort {
  postMessage(message: DecodeRequest, transfer: Transferable[]): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<DecodeReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** Starts what this browser can read with. */
export async function createDecoder(
  startWorker: () => WorkerPort = startDecodeWorker,
  loadScript: () => Promise<StreamReader> = async () => (await import('./stream-reader.ts')).streamReader,
): Promise<Decoder | StreamReader> {
  if (!('WebAssembly' in globalThis)) return loadScript();
  try {
    return await openWorker(startWorker());
  } catch {
    // The page has it and a worker may not use it, or there is no worker: slower, but it reads.
    return loadScript();
  }
}

/** Shows a lens's stream in its video and reads it with what this browser has. Rejects where the video would not play. */
export async function showStream(decoder: Decoder | StreamReader, parts: StreamParts): Promise<OpenStream> {
  if (decoder.path === 'script') return decoder.open(parts);
  const { stream, video, crop, formats, onFrame } = parts;
  video.srcObject = stream;
  // A browser that will not play by itself shows the first picture only; the next tap plays it.
  await video.play().catch(() => {});
  return {
    async look() {
      if (video.readyState < HTMLMediaElement.HAVE_CURRENT_DATA || video.videoWidth === 0) return null;
      const grabbed = await grabFrame(video, crop());
      onFrame?.(grabbed.frame);
      return decoder.decode(grabbed, { formats, isThorough: true });
    },
    stop() {},
  };
}

function startDecodeWorker(): WorkerPort {
  return new Worker(new URL('../../worker/decode.ts', import.meta.url), { type: 'module' });
}

function openWorker(worker: WorkerPort): Promise<Decoder> {
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
      path: 'worker',
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
