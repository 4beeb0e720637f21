// The sheet worker: a file or pasted rows in, slots and problems out, one request after the other.
// Method: reading runs here, so that ten megabytes do not stop the page; the workbook's reader is loaded with the first workbook.
// Refused: a message to give up, which a busy worker would not hear; the page ends the worker instead.

import type { DecodeBytes } from '../../shared/sheet/text.ts';
import { readList } from './list-desk.ts';
import type { ListReply, ListRequest } from './list-protocol.ts';
import type { SheetTools } from './parse-source.ts';
import { createSheetDesk } from './sheet-desk.ts';
import type { SheetReply, SheetRequest } from './sheet-protocol.ts';

// The compiler sees the page's `self` where both are checked together; these two members are the same in a worker.
const port = self as unknown as {
  postMessage(reply: SheetReply | ListReply): void;
  onmessage: ((event: MessageEvent<SheetRequest | ListRequest>) => void) | null;
};

const decode: DecodeBytes = (bytes, encoding) => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    // Not of this encoding is an answer: the caller tries the next one.
    return null;
  }
};

const tools: SheetTools = {
  decode,
  readWorkbook: async (bytes) => {
    const { default: readXlsxFile } = await import('read-excel-file/universal');
    return readXlsxFile(bytes);
  },
};
const desk = createSheetDesk(tools);

let last: Promise<unknown> = Promise.resolve();

port.onmessage = ({ data: request }) => {
  last = last.then(async () =>
    port.postMessage(
      'list' in request
        ? await readList(request, tools)
        : await desk.read(request, (reply) => port.postMessage(reply)),
    ),
  );
};
