// The decoder worker for browsers where WebAssembly is barred: the same messages, read by plain script.
// Refused: this reader on the page's thread, which would stall taps and the picture at each look.

import { toGray } from './decode-gray.ts';
import type { DecodeReply, DecodeRequest } from './decode-protocol.ts';
import { readWithScript } from './decode-script-reader.ts';

// The compiler sees the page's `self` here; these two members are the same in a worker.
const port = self as unknown as {
  postMessage(reply: DecodeReply): void;
  onmessage: ((event: MessageEvent<DecodeRequest>) => void) | null;
};

port.onmessage = ({ data: request }) => {
  const startMs = performance.now();
  try {
    const image = toGray(request);
    const codes = readWithScript(image, request.formats);
    const { width, height } = image;
    const spentMs = performance.now() - startMs;
    port.postMessage({ kind: 'read', id: request.id, codes, width, height, spentMs });
  } catch (reason) {
    request.frame.close();
    port.postMessage({ kind: 'failed', id: request.id, message: String(reason) });
  }
};

port.postMessage({ kind: 'ready' });
