// The page's side of reading a list: one question to the sheet worker, which ends with the answer.

import type { ListReply, ListRequest } from '../../../../worker/list-protocol.ts';

/** Reads a list away from the page's thread. Never rejects. */
export function readList(request: ListRequest): Promise<ListReply> {
  const worker = new Worker(new URL('../../../../worker/sheet.ts', import.meta.url), { type: 'module' });
  return new Promise<ListReply>((resolve) => {
    const end = (reply: ListReply) => {
      worker.terminate();
      resolve(reply);
    };
    worker.onmessage = ({ data }: MessageEvent<ListReply>) => end(data);
    worker.onerror = () => end({ kind: 'refused', fault: 'failed' });
    worker.postMessage(request);
  });
}
