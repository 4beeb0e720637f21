import { describe, expect, it } from 'vitest';
import {
  createDecoder,
  type Decoder,
  type StreamReader,
  type WorkerPort,
} from '../../../../src/app/scan/decoder.ts';
import {
  DEFAULT_FORMATS,
  type DecodeReply,
  type DecodeRequest,
} from '../../../../src/worker/decode-protocol.ts';

// never drawn here
const frame = { frame: { width: 4, height: 4 } as ImageBitmap, crop: { x: 0, y: 0, width: 4, height: 4 } };
const options = { formats: DEFAULT_FORMATS, isThorough: true };
const script: StreamReader = {
  path: 'script',
  open: () => Promise.reject(new Error('nothing is opened here')),
  close() {},
};

/** A decoder in a worker, which is what starts where nothing is missing. */
async function inWorker(port: WorkerPort): Promise<Decoder> {
  const decoder = await createDecoder(() => port);
  if (decoder.path !== 'worker') throw new Error(`a decoder by ${decoder.path}`);
  return decoder;
}

function createWorker(onStart: (say: (reply: DecodeReply) => void) => void) {
  const sent: DecodeRequest[] = [];
  let isTerminated = false;
  const port: WorkerPort = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => sent.push(message),
    terminate: () => {
      isTerminated = true;
    },
  };
  const say = (reply: DecodeReply) => port.onmessage?.({ data: reply } as MessageEvent<DecodeReply>); // only `data` is read
  queueMicrotask(() => onStart(say));
  return { port, sent, say, isTerminated: () => isTerminated };
}

describe('createDecoder()', () => {
  it('answers each frame with what the worker read in it', async () => {
    const { port, sent, say } = createWorker((tell) => tell({ kind: 'ready' }));
    const decoder = await inWorker(port);
    const answer = decoder.decode(frame, options);
    say({ kind: 'read', id: sent[0]?.id ?? -1, codes: [], width: 9, height: 7, spentMs: 3 });
    expect([decoder.path, (await answer).width]).toEqual(['worker', 9]);
  });

  it('rejects a second frame while one is in flight', async () => {
    const { port } = createWorker((tell) => tell({ kind: 'ready' }));
    const decoder = await inWorker(port);
    void decoder.decode(frame, options);
    await expect(decoder.decode(frame, options)).rejects.toThrow(RangeError);
  });

  it('passes a failed frame on and reads the next', async () => {
    const { port, sent, say } = createWorker((tell) => tell({ kind: 'ready' }));
    const decoder = await inWorker(port);
    const failed = decoder.decode(frame, options);
    say({ kind: 'failed', id: sent[0]?.id ?? -1, message: 'out of memory' });
    await expect(failed).rejects.toThrow('out of memory');
    const next = decoder.decode(frame, options);
    say({ kind: 'read', id: sent[1]?.id ?? -1, codes: [], width: 4, height: 4, spentMs: 1 });
    expect((await next).width).toBe(4);
  });

  it('loads the script reader when the worker cannot run the decoder', async () => {
    const { port, isTerminated } = createWorker((tell) =>
      tell({ kind: 'unable', message: 'WebAssembly is barred' }),
    );
    const decoder = await createDecoder(
      () => port,
      async () => script,
    );
    expect([decoder.path, isTerminated()]).toEqual(['script', true]);
  });

  it('starts no worker where the page itself has no WebAssembly', async () => {
    const kept = globalThis.WebAssembly;
    Reflect.deleteProperty(globalThis, 'WebAssembly');
    try {
      const decoder = await createDecoder(
        () => {
          throw new Error('a worker was started');
        },
        async () => script,
      );
      expect(decoder).toBe(script);
    } finally {
      globalThis.WebAssembly = kept;
    }
  });

  it('loads the script reader when no worker can be started', async () => {
    const decoder = await createDecoder(
      () => {
        throw new DOMException('no workers', 'SecurityError');
      },
      async () => script,
    );
    expect(decoder.path).toBe('script');
  });

  it('rejects what is in flight when it is closed', async () => {
    const { port, isTerminated } = createWorker((tell) => tell({ kind: 'ready' }));
    const decoder = await inWorker(port);
    const open = decoder.decode(frame, options);
    decoder.close();
    await expect(open).rejects.toThrow('closed');
    expect(isTerminated()).toBe(true);
  });
});
