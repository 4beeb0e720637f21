// A pushed page as it arrived, read in one walk: every entry's RFC 8785 text is cut out of the bytes instead of being parsed
// and written anew. Only what a tablet writes today is read so, key by key in its order; null for anything else, which then goes
// the long way: parsed, held against the wire's schema, written canonically. A property test holds both ways together.

import { entryBytes, pageEntries } from '../../shared/wire/limits.ts';
import { CanonicalReader } from './canonical-bytes.ts';
import { isMoment } from './envelope.ts';
import type { Checked } from './stores/store.ts';

/** What is asked of an entry on its way into the log, before it is judged. */
export type ReadEntry = Omit<Checked, 'aheadMs' | 'via' | 'fault'>;

/** A page whose entries were read. */
export class ReadPage {
  readonly sentMs: number;
  readonly entries: readonly ReadEntry[];

  constructor(sentMs: number, entries: readonly ReadEntry[]) {
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

/** Reads a page of a push; null where the long way has to. `bytes` are known to be UTF-8, and are as before afterwards. */
export function readPage(bytes: Buffer): ReadPage | null {
  const reader = new CanonicalReader(bytes);
  if (!reader.literal(words.sent) || !reader.wholeNumber()) return null;
  const sentMs = reader.whole;
  if (!reader.literal(words.entries)) return null;
  const entries: ReadEntry[] = [];
  do {
    const entry = readEntry(reader);
    if (!entry || entries.length === pageEntries) return null;
    entries.push(entry);
  } while (reader.literal(words.comma));
  if (!reader.literal(words.end) || reader.at !== bytes.length) return null;
  return new ReadPage(sentMs, entries);
}

function readEntry(reader: CanonicalReader): ReadEntry | null {
  const from = reader.at;
  reader.seen = 0;
  if (!reader.literal(words.at)) return null;
  const at = readText(reader, NAME_LONGEST);
  if (at === null || !isMoment(at) || !reader.literal(words.epoch)) return null;
  const epoch = readName(reader);
  if (epoch === null || !reader.literal(words.ms) || !reader.wholeNumber()) return null;
  const ms = reader.whole;
  if (!reader.literal(words.n) || !reader.wholeNumber()) return null;
  const n = reader.whole;
  const kind = reader.literal(words.kind) ? readName(reader) : null;
  if (kind === null || !reader.literal(words.payload) || !reader.object()) return null;
  const prev = reader.literal(words.prev) ? readHash(reader) : null;
  if (prev === null || !reader.literal(words.seq) || !reader.wholeNumber()) return null;
  const seq = reader.whole;
  const tablet = seq >= 1 && reader.literal(words.tablet) ? readName(reader) : null;
  if (tablet === null || !reader.literal(words.who) || !passWho(reader)) return null;
  const body = cutBody(reader, from);
  const hash = body !== null && reader.literal(words.hash) ? readHash(reader) : null;
  if (body === null || hash === null || !reader.literal(words.sig)) return null;
  const sig = reader.literal(words.null) ? null : readSig(reader);
  if (sig === undefined || !reader.literal(words.close)) return null;
  return { tablet, epoch, seq, prev, hash, sig, kind, hlc: { ms, n }, atMs: Date.parse(at), body };
}

/** The draft's text: what stands before the comma here, closed. */
function cutBody(reader: CanonicalReader, from: number): string | null {
  const { bytes, at, seen } = reader;
  if (bytes[at] !== COMMA || at + 1 - from > entryBytes) return null;
  bytes[at] = CLOSE;
  const body = seen < 0x80 ? bytes.toString('latin1', from, at + 1) : bytes.toString('utf8', from, at + 1);
  bytes[at] = COMMA;
  reader.at = at + 1;
  return body;
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
