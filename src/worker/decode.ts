// The decoder worker: frames in, codes out, one at a time.
// Method: the wasm file is the app's own, loaded by address; nothing is fetched from elsewhere and nothing is compiled from
// text, so a strict content policy holds. Refused: decoding on the page's thread, which stalls taps and the picture.

import { prepareZXingModule } from 'zxing-wasm/reader';
import wasmUrl from 'zxing-wasm/reader/zxing_reader.wasm?url';
import { toGray } from './decode-gray.ts';
import { createFramePasses, type FramePasses } from './decode-passes.ts';
import type { DecodeReply, DecodeRequest } from './decode-protocol.ts';
import { createCodeReader, type ReaderModule } from './decode-reader.ts';

// The compiler sees the page's `self` here; these two members are the same in a worker.
const port = self as unknown as {
  postMessage(reply: DecodeReply): void;
  onmessage: ((event: MessageEvent<DecodeRequest>) => void) | null;
};

async function load(): Promise<FramePasses> {
  const module = await prepareZXingModule({
    overrides: { locateFile: () => wasmUrl },
    fireImmediately: true,
  });
  // Its declared type leaves out the memory members, which every build of it has.
  return createFramePasses(createCodeReader(module as unknown as ReaderModule), {
    nowMs: () => performance.now(),
  });
}

const loading = load();
loading.then(
  () => port.postMessage({ kind: 'ready' }),
  (reason: unknown) => port.postMessage({ kind: 'unable', message: String(reason) }),
);

port.onmessage = async ({ data: request }) => {
  const startMs = performance.now();
  try {
    const passes = await loading;
    const image = toGray(request);
    const codes = passes.read(image, request.formats, request.isThorough);
    const { width, height } = image;
    port.postMessage({
      kind: 'read',
      id: request.id,
      codes,
      width,
      height,
      spentMs: performance.now() - startMs,
    });
  } catch (reason) {
    request.frame.close();
    port.postMessage({ kind: 'failed', id: request.id, message: String(reason) });
  }
};
