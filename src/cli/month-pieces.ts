// A month's file as packed pieces one after the other, gzip's members (RFC 1952, 2.2): each is unpacked by itself, so that one text costs little
// to read; all unpackers read them as one file. Refused: one piece, of which a text near the end costs the unpacking of all before it.

import { promisify } from 'node:util';
import { gzip, inflateRawSync } from 'node:zlib';
import { pieceMost } from '../server/stores/month-store.ts';

const pack = promisify(gzip);

const LINE_END = 0x0a;
/** Bytes of text in a piece. */
const PIECE_BYTES = 262_144;
/** A piece of one line that is no entry, as the proof at the end, may be longer than others; no text is read out of it. Bytes. */
const LINE_MOST = 67_108_864;
/** A member's head where it has no name, note or other field, and its end: check value and length. */
const HEAD_BYTES = 10;
const END_BYTES = 8;

/** Packs lots of whole lines; a piece ends with a line, and only one line alone makes it longer than the rule. */
export async function* packPieces(lots: AsyncIterable<Uint8Array>): AsyncGenerator<Buffer> {
  let some: Uint8Array[] = [];
  let bytes = 0;
  for await (const lot of lots) {
    for (const line of linesOf(lot)) {
      if (bytes > 0 && bytes + line.length > PIECE_BYTES) {
        yield await pack(Buffer.concat(some));
        [some, bytes] = [[], 0];
      }
      some.push(line);
      bytes += line.length;
    }
  }
  if (bytes > 0) yield await pack(Buffer.concat(some));
}

/** Each with its end. */
function* linesOf(lot: Uint8Array): Generator<Uint8Array> {
  for (let from = 0; from < lot.length; ) {
    const end = lot.indexOf(LINE_END, from);
    const to = end < 0 ? lot.length : end + 1;
    yield lot.subarray(from, to);
    from = to;
  }
}

/** A piece of a file. */
export interface Piece {
  /** Where it begins, bytes. */
  readonly from: number;
  readonly lines: readonly string[];
}

/** The pieces of a file; null where it is not made of pieces that are short enough. */
export function* piecesIn(file: Buffer): Generator<Piece | null> {
  for (let from = 0; from < file.length; ) {
    const isPlain = file[from] === 0x1f && file[from + 1] === 0x8b && file[from + 3] === 0;
    const found = isPlain ? unpackFirst(file.subarray(from + HEAD_BYTES)) : null;
    const lines = found?.text.toString('utf8').split('\n') ?? [];
    const isShort = found !== null && (found.text.length <= pieceMost || lines.length <= 2);
    if (!isShort) {
      yield null;
      return;
    }
    yield { from, lines };
    from += HEAD_BYTES + found.packedBytes + END_BYTES;
  }
}

function unpackFirst(packed: Buffer): { readonly text: Buffer; readonly packedBytes: number } | null {
  try {
    // With `info` the engine is told too: how much it took in says where the next piece begins.
    const { buffer, engine } = inflateRawSync(packed, {
      info: true,
      maxOutputLength: LINE_MOST,
    }) as unknown as { readonly buffer: Buffer; readonly engine: { readonly bytesWritten: number } };
    return { text: buffer, packedBytes: engine.bytesWritten };
  } catch {
    return null;
  }
}
