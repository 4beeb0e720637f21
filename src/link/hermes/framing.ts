// Where does one message end in the bytes of an IPC-HERMES-9852 connection, and where does the next begin? Nothing says its length: a
// message goes from `<Hermes` to `</Hermes>`, at most 65,536 bytes of UTF-8, however the network cut or joined them.
// Method: byte by byte, each looked at once, in a buffer of fixed size; a start within a message ends the half one before it, since `<`
// stands in no text of XML. Refused: to search the text again with each piece that comes, which a slow sender could make endless.
// Source of the bounds: hermes-org/lib_cpp f7cf267d, src/Hermes/MessageDispatcher.cpp and src/include/HermesData.hpp.

/** Most bytes of a message. */
export const MESSAGE_MOST = 65_536;

const START = [...Buffer.from('<Hermes')];
const END = [...Buffer.from('</Hermes')];
const [LESS = 60] = START;
const GREATER = 62;
const SLASH = 47;

/** What a piece of the stream held: a message whole, or why something was passed over. */
export type Frame =
  | { readonly is: 'message'; readonly bytes: Buffer }
  | { readonly is: 'passed-over'; readonly why: string; readonly bytes: number };

/** Cuts one connection's stream into messages. */
export interface Framer {
  /** Takes the next bytes; gives what they end. Never throws. */
  readonly push: (chunk: Uint8Array) => readonly Frame[];
  /** The connection is over: what is left is a half message, or none. */
  readonly end: () => readonly Frame[];
}

const isBlank = (byte: number) => byte === 32 || (byte >= 9 && byte <= 13);

/** Between messages may stand blanks, a mark of byte order and an XML declaration; all else is told. */
const nothing = /^\uFEFF?\s*(?:<\?xml[^>]{0,200}\?>)?\s*$/;

interface Work {
  readonly message: Buffer;
  /** Bytes of the message so far; 0 = between messages. */
  length: number;
  /** How much of a start, or of an end, the newest bytes are. */
  starts: number;
  ends: number;
  /** The first bytes between messages, and how many there are. */
  readonly between: number[];
  strays: number;
  readonly frames: Frame[];
}

/** Opens a framer for one connection. */
export function openFramer(): Framer {
  const work: Work = {
    message: Buffer.alloc(MESSAGE_MOST),
    length: 0,
    starts: 0,
    ends: 0,
    between: [],
    strays: 0,
    frames: [],
  };
  return {
    push: (chunk) => {
      for (const byte of chunk) {
        if (work.length === 0) outside(work, byte);
        else inside(work, byte);
      }
      return work.frames.splice(0);
    },
    end: () => {
      if (work.length > 0) drop(work, 'a message was cut off by the end of the connection');
      else tellBetween(work);
      return work.frames.splice(0);
    },
  };
}

function outside(work: Work, byte: number): void {
  if (isStart(work, byte)) {
    work.strays = Math.max(0, work.strays - START.length);
    work.between.length = Math.min(work.between.length, work.strays);
    tellBetween(work);
    begin(work, byte);
    return;
  }
  work.strays += 1;
  if (work.between.length < 300) work.between.push(byte);
  if (work.strays >= MESSAGE_MOST) tellBetween(work);
}

function inside(work: Work, byte: number): void {
  if (isStart(work, byte)) {
    work.length -= START.length;
    drop(work, 'half a message, and then another');
    begin(work, byte);
    return;
  }
  if (work.length === MESSAGE_MOST) {
    drop(work, `a message of more than ${MESSAGE_MOST} bytes`);
    work.starts = byte === LESS ? 1 : 0;
    work.strays = work.starts;
    return;
  }
  work.message[work.length] = byte;
  work.length += 1;
  if (!isEnd(work, byte)) return;
  work.frames.push({ is: 'message', bytes: Buffer.from(work.message.subarray(0, work.length)) });
  reset(work);
}

/** True with the byte behind `<Hermes` that ends that name. */
function isStart(work: Work, byte: number): boolean {
  if (work.starts === START.length) {
    work.starts = byte === LESS ? 1 : 0;
    return isBlank(byte) || byte === GREATER || byte === SLASH;
  }
  if (byte === START[work.starts]) work.starts += 1;
  else work.starts = byte === LESS ? 1 : 0;
  return false;
}

/** True with the `>` of `</Hermes>`. */
function isEnd(work: Work, byte: number): boolean {
  if (work.ends === END.length) {
    if (byte === GREATER) return true;
    if (isBlank(byte)) return false;
  } else if (byte === END[work.ends]) {
    work.ends += 1;
    return false;
  }
  work.ends = byte === LESS ? 1 : 0;
  return false;
}

function begin(work: Work, byte: number): void {
  Buffer.from(START).copy(work.message);
  work.message[START.length] = byte;
  work.length = START.length + 1;
  [work.starts, work.ends] = [0, 0];
}

function reset(work: Work): void {
  [work.length, work.starts, work.ends, work.strays] = [0, 0, 0, 0];
  work.between.length = 0;
}

function drop(work: Work, why: string): void {
  work.frames.push({ is: 'passed-over', why, bytes: work.length });
  reset(work);
}

function tellBetween(work: Work): void {
  const bytes = work.strays;
  const text = Buffer.from(work.between).toString('utf8');
  [work.strays, work.between.length] = [0, 0];
  if (bytes > 0 && (bytes > 300 || !nothing.test(text)))
    work.frames.push({ is: 'passed-over', why: 'bytes that are no message', bytes });
}
