// The body of a request as it travels: JSON in UTF-8, packed where that pays, with the hash that the signature covers.

/** What may be sent. */
export interface UnpackedBody {
  /** Sent as gzip JSON. */
  readonly json?: unknown;
  /** JSON that is written already, in pieces; sent as gzip JSON. */
  readonly texts?: readonly string[];
  /** Sent as they are. */
  readonly bytes?: Uint8Array;
}

export interface PackedBody {
  readonly bytes: Uint8Array | null;
  /** SHA-256 of the bytes, lower-case hex. */
  readonly hash: string;
  readonly headers: Readonly<Record<string, string>>;
}

/** Smaller bodies do not gain from packing. */
const PACK_FROM = 1024;

const encoder = new TextEncoder();

/** Writes, packs and hashes what is to be sent. */
export async function packBody(
  { json, texts, bytes }: UnpackedBody,
  zip: (bytes: Uint8Array) => Promise<Uint8Array> = gzip,
): Promise<PackedBody> {
  if (bytes) {
    return { bytes, hash: await hexHash(bytes), headers: { 'content-type': 'application/octet-stream' } };
  }
  const pieces = texts ?? (json === undefined ? [] : [JSON.stringify(json)]);
  const plain = encodeAll(pieces);
  if (plain.length === 0) return { bytes: null, hash: await hexHash(plain), headers: {} };
  const headers = { 'content-type': 'application/json' };
  if (plain.length < PACK_FROM || (zip === gzip && typeof CompressionStream === 'undefined')) {
    return { bytes: plain, hash: await hexHash(plain), headers };
  }
  const packed = await zip(plain);
  return { bytes: packed, hash: await hexHash(packed), headers: { ...headers, 'content-encoding': 'gzip' } };
}

/** The pieces' UTF-8 bytes, one behind the other; joined first, engines would copy the long text twice. */
export function encodeAll(texts: readonly string[]): Uint8Array {
  const units = texts.reduce((sum, text) => sum + text.length, 0);
  // Enough for all of it where it is ASCII, as it mostly is.
  let bytes = new Uint8Array(units);
  let at = 0;
  for (const text of texts) {
    const { read, written } = encoder.encodeInto(text, bytes.subarray(at));
    at += written;
    if (read === text.length) continue;
    const rest = encoder.encode(text.slice(read));
    const wider = new Uint8Array(2 * bytes.length + rest.length);
    wider.set(bytes.subarray(0, at));
    wider.set(rest, at);
    bytes = wider;
    at += rest.length;
  }
  return bytes.subarray(0, at);
}

/** Packs bytes. */
export async function gzip(bytes: Uint8Array): Promise<Uint8Array> {
  const { readable, writable } = new CompressionStream('gzip');
  const writer = writable.getWriter();
  const written = writer.write(bytes as Uint8Array<ArrayBuffer>).then(() => writer.close()); // never shared memory
  const [packed] = await Promise.all([new Response(readable).arrayBuffer(), written]);
  return new Uint8Array(packed);
}

async function hexHash(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>); // never shared memory
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
