// A pushed page as it arrived, read in one walk: every entry's RFC 8785 text is cut out of the bytes instead of being parsed
// and written anew. Only what a tablet writes today is read so, key by key in its order; null for anything else, which then goes
// the long way: parsed, held against the wire's schema, written canonically. A property test holds both ways together.

import { entryBytes, pageEntries } from '../../shared/wire/limits.ts';
import { ArrivedEntry, type TextPlace } from './arrived.ts';
import { CanonicalReader } from './canonical-bytes.ts';
import { isMoment } from './envelope.ts';

/** A page whose entries were read. */
export class ReadPage {
  readonly sentMs: number;
  readonly entries: readonly ArrivedEntry[];

  constructor(sentMs: number, entries: readonly ArrivedEntry[]) {
    this.sentMs = sentMs;
    this.entries = entries;
  }
}

const NAME_LONGEST = 64;
const SIG_LONGEST = 128;
const COMMA = 0x2c;
const QUOTE = 0x22;
const CLOSE = 0x7d;

const words = {
  sent: Buffer.from('{"sentMs":'),
  entries: Buffer.from(',"entries":['),
  comma: Buffer.from(','),
  end: Buffer.from(']}'),
  at: Buffer.from('{"at":"'),
  epoch: Buffer.from(',"epoch":"'),
  ms: Buffer.from(',"hlc":{"ms":'),
  n: Buffer.from(',"n":'),
  kind: Buffer.from('},"kind":"'),
  payload: Buffer.from(',"payload":'),
  prev: Buffer.from(',"prev":"'),
  seq: Buffer.from('","seq":'),
  tablet: Buffer.from(',"tablet":"'),
  who: Buffer.from(',"v":1,"who":'),
  hash: Buffer.from('"hash":"'),
  sig: Buffer.from('","sig":'),
  null: Buffer.from('null'),
  quote: Buffer.from('"'),
  close: Buffer.from('}'),
};

/** A text that repeats from entry to entry is made once: as long as the same bytes come again, the last one is handed out. */
class Repeated {
  private readonly read: (reader: CanonicalReader) => string | null;
  private from = 0;
  private length = 0;
  private text: string | null = null;

  constructor(read: (reader: CanonicalReader) => string | null) {
    this.read = read;
  }

  /** The text at the reader's place; null where it is none. */
  take(reader: CanonicalReader): string | null {
    if (this.text !== null && reader.repeats(this.from, this.length)) return this.text;
    this.from = reader.at;
    this.text = this.read(reader);
    this.length = reader.at - this.from;
    return this.text;
  }
}

/** What repeats within a page. */
interface Repeats {
  readonly tablet: Repeated;
  readonly epoch: Repeated;
  readonly kind: Repeated;
  /** An entry's hash is the next one's `prev`. */
  readonly hash: Repeated;
}

/**
 * Reads a page of a push; null where the long way has to. `bytes` are known to be UTF-8. Where it answers null they are as
 * before; else they belong to the page, whose entries have their texts in them.
 */
export function readPage(bytes: Buffer): ReadPage | null {
  const reader = new CanonicalReader(bytes);
  if (!reader.literal(words.sent) || !reader.wholeNumber()) return null;
  const sentMs = reader.whole;
  if (!reader.literal(words.entries)) return null;
  const entries: ArrivedEntry[] = [];
  const ends: number[] = [];
  const repeats: Repeats = {
    tablet: new Repeated(readName),
    epoch: new Repeated(readName),
    kind: new Repeated(readName),
    hash: new Repeated(readHash),
  };
  do {
    const entry = readEntry(reader, repeats, ends);
    if (!entry || entries.length === pageEntries) return null;
    entries.push(entry);
  } while (reader.literal(words.comma));
  if (!reader.literal(words.end) || reader.at !== bytes.length) return null;
  for (const end of ends) bytes[end] = CLOSE;
  return new ReadPage(sentMs, entries);
}

/** Reads one entry; `ends` takes in where its draft's closing brace belongs, over the comma before its hash. */
function readEntry(reader: CanonicalReader, repeats: Repeats, ends: number[]): ArrivedEntry | null {
  const from = reader.at;
  reader.seen = 0;
  if (!reader.literal(words.at)) return null;
  const at = readText(reader, NAME_LONGEST);
  if (at === null || !isMoment(at) || !reader.literal(words.epoch)) return null;
  const epoch = repeats.epoch.take(reader);
  if (epoch === null || !reader.literal(words.ms) || !reader.wholeNumber()) return null;
  const ms = reader.whole;
  if (!reader.literal(words.n) || !reader.wholeNumber()) return null;
  const n = reader.whole;
  const kind = reader.literal(words.kind) ? repeats.kind.take(reader) : null;
  if (kind === null || !reader.literal(words.payload) || !reader.object()) return null;
  const prev = reader.literal(words.prev) ? repeats.hash.take(reader) : null;
  if (prev === null || !reader.literal(words.seq) || !reader.wholeNumber()) return null;
  const seq = reader.whole;
  const tablet = seq >= 1 && reader.literal(words.tablet) ? repeats.tablet.take(reader) : null;
  if (tablet === null || !reader.literal(words.who) || !passWho(reader)) return null;
  const place = textPlace(reader, from);
  const hash = place !== null && reader.literal(words.hash) ? repeats.hash.take(reader) : null;
  if (place === null || hash === null || !reader.literal(words.sig)) return null;
  const sig = reader.literal(words.null) ? null : readSig(reader);
  if (sig === undefined || !reader.literal(words.close)) return null;
  ends.push(place.end - 1);
  return new ArrivedEntry(
    { tablet, epoch, seq, prev, hash, sig, kind, hlc: { ms, n }, atMs: Date.parse(at) },
    place,
  );
}

/** The draft's text: what stands before the comma here, with a brace for it. */
function textPlace(reader: CanonicalReader, from: number): TextPlace | null {
  const { bytes, at, seen } = reader;
  if (bytes[at] !== COMMA || at + 1 - from > entryBytes) return null;
  reader.at = at + 1;
  return { bytes, from, end: at + 1, isAscii: seen < 0x80 };
}

/** A text of 1 to `longest` ASCII characters without escapes. */
function readText(reader: CanonicalReader, longest: number): string | null {
  const from = reader.at;
  const { bytes } = reader;
  let at = from;
  for (; at - from <= longest; at += 1) {
    const byte = bytes[at] ?? 0;
    if (byte === QUOTE) break;
    if (byte < 0x20 || byte > 0x7e || byte === 0x5c) return null;
  }
  if (at === from || at - from > longest) return null;
  reader.at = at + 1;
  return bytes.toString('latin1', from, at);
}

function readName(reader: CanonicalReader): string | null {
  const text = readText(reader, NAME_LONGEST);
  return text?.includes(' ') ? null : text;
}

function readHash(reader: CanonicalReader): string | null {
  const from = reader.at;
  return reader.hash() ? reader.bytes.toString('latin1', from, from + 64) : null;
}

function passWho(reader: CanonicalReader): boolean {
  if (reader.literal(words.null)) return true;
  return reader.literal(words.quote) && readText(reader, NAME_LONGEST) !== null;
}

/** Undefined where it is none. */
function readSig(reader: CanonicalReader): string | undefined {
  return (reader.literal(words.quote) && readText(reader, SIG_LONGEST)) || undefined;
}
