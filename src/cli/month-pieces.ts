// A month's file as packed pieces one after the other, gzip's members (RFC 1952, 2.2): each is unpacked by itself, so that one text costs little
// to read; all unpackers read them as one file. Refused: one piece, of which a text near the end costs the unpacking of all before it.

import { promisify } from 'node:util';
import { gzip, inflateRawSync } from 'node:zlib';

const pack = promisify(gzip);

/** Bytes of text in a piece, from which on it is closed. */
const PIECE_BYTES = 262_144;
/** No more than this is unpacked for one text, bytes. */
const PIECE_MOST = 8_388_608;
/** A member's head where it has no name, note or other field, and its end: check value and length. */
const HEAD_BYTES = 10;
const END_BYTES = 8;

/** Packs lots of whole lines; a piece never ends within one. */
export async function* packPieces(lots: AsyncIterable<Uint8Array>): AsyncGenerator<Buffer> {
  let some: Uint8Array[] = [];
  let bytes = 0;
  for await (const lot of lots) {
    some.push(lot);
    bytes += lot.length;
    if (bytes < PIECE_BYTES) continue;
    yield await pack(Buffer.concat(some));
    [some, bytes] = [[], 0];
  }
  if (bytes > 0) yield await pack(Buffer.concat(some));
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
    if (!found) {
      yield null;
      return;
    }
    yield { from, lines: found.text.split('\n') };
    from += HEAD_BYTES + found.packedBytes + END_BYTES;
  }
}

function unpackFirst(packed: Buffer): { readonly text: string; readonly packedBytes: number } | null {
  try {
    // With `info` the engine is told too: how much it took in says where the next piece begins.
    const { buffer, engine } = inflateRawSync(packed, {
      info: true,
      maxOutputLength: PIECE_MOST,
    }) as unknown as { readonly buffer: Buffer; readonly engine: { readonly bytesWritten: number } };
    return { text: buffer.toString('utf8'), packedBytes: engine.bytesWritten };
  } catch {
    return null;
  }
}
