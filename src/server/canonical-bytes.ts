// Is this stretch of bytes the RFC 8785 text of a JSON value? Asked of pages as they arrived, so that what is canonical already
// is neither parsed into objects nor written anew. Method: one walk over the bytes, refusing whatever the canonical writer would
// not have written; the numbers are left to the engine. A "no" is no verdict: the caller then goes the long way.

const QUOTE = 0x22;
const COMMA = 0x2c;
const MINUS = 0x2d;
const ZERO = 0x30;
const NINE = 0x39;
const COLON = 0x3a;
const BACKSLASH = 0x5c;
const OPEN_LIST = 0x5b;
const CLOSE_LIST = 0x5d;
const OPEN_OBJECT = 0x7b;
const CLOSE_OBJECT = 0x7d;

/** Deeper nesting goes the long way, which knows the stack's end. */
const DEEPEST = 64;
/** Digits of a whole number that no double rounds. */
const EXACT_DIGITS = 15;
/** Longest text of a number by the engine's writer, e.g. `-1.2345678901234567e-300`. */
const NUMBER_LONGEST = 25;

/** 1 for a byte that a number may hold after its first digits. */
const inNumber = byteTable('0123456789+-.e');
const isHex = byteTable('0123456789abcdef');
/** What may follow a backslash, `u` aside: the writer never escapes a slash. */
const isEscape = byteTable('"\\bfnrt');

function byteTable(chars: string): Uint8Array {
  const table = new Uint8Array(256);
  for (const char of chars) table[char.charCodeAt(0)] = 1;
  return table;
}

/** A place in bytes that are known to be UTF-8, and moves from there; each move says whether it could be made. */
export class CanonicalReader {
  readonly bytes: Buffer;
  at = 0;
  /** Bits of all bytes of texts passed: over 127 where one was not ASCII. */
  seen = 0;
  /** The whole number passed last. */
  whole = 0;

  constructor(bytes: Buffer) {
    this.bytes = bytes;
  }

  /** Over exactly these bytes. */
  literal(wanted: Uint8Array): boolean {
    const { bytes, at } = this;
    for (let i = 0; i < wanted.length; i += 1) if (bytes[at + i] !== wanted[i]) return false;
    this.at = at + wanted.length;
    return true;
  }

  /** Over the same bytes as the `length` ones that begin at `from`. */
  repeats(from: number, length: number): boolean {
    const { bytes, at } = this;
    for (let i = 0; i < length; i += 1) if (bytes[at + i] !== bytes[from + i]) return false;
    this.at = at + length;
    return true;
  }

  /** Over a text's characters and its closing quote, from behind its opening one. */
  text(): boolean {
    const { bytes } = this;
    let { at, seen } = this;
    for (;;) {
      const byte = bytes[at] ?? 0;
      at += 1;
      if (byte === QUOTE) break;
      if (byte < 0x20) return false;
      if (byte === BACKSLASH) {
        const step = escapeLength(bytes, at);
        if (step === 0) return false;
        at += step;
      }
      seen |= byte;
    }
    this.at = at;
    this.seen = seen;
    return true;
  }

  /** Over a whole number without a sign, of at most fifteen digits; `whole` is its value. */
  wholeNumber(): boolean {
    const { bytes, at: from } = this;
    let at = from;
    let value = 0;
    for (; at - from <= EXACT_DIGITS; at += 1) {
      const byte = bytes[at] ?? 0;
      if (byte < ZERO || byte > NINE) break;
      value = value * 10 + (byte - ZERO);
    }
    const digits = at - from;
    if (digits === 0 || digits > EXACT_DIGITS || (digits > 1 && bytes[from] === ZERO)) return false;
    this.at = at;
    this.whole = value;
    return true;
  }

  /** Over 64 lower-case hex digits. */
  hash(): boolean {
    const { bytes, at } = this;
    for (let i = at; i < at + 64; i += 1) if (isHex[bytes[i] ?? 0] !== 1) return false;
    this.at = at + 64;
    return true;
  }

  /** Over an object. */
  object(depth = 0): boolean {
    if (this.bytes[this.at] !== OPEN_OBJECT || depth > DEEPEST) return false;
    this.at += 1;
    if (this.skip(CLOSE_OBJECT)) return true;
    let keyBefore = -1;
    do {
      if (!this.skip(QUOTE)) return false;
      const key = this.at;
      if (!this.text() || !this.isNextKey(keyBefore, key) || !this.skip(COLON)) return false;
      keyBefore = key;
      if (!this.value(depth)) return false;
    } while (this.skip(COMMA));
    return this.skip(CLOSE_OBJECT);
  }

  private value(depth: number): boolean {
    const byte = this.bytes[this.at] ?? 0;
    if (byte === QUOTE) {
      this.at += 1;
      return this.text();
    }
    if (byte === OPEN_OBJECT) return this.object(depth + 1);
    if (byte === OPEN_LIST) return this.list(depth + 1);
    if (byte === MINUS || (byte >= ZERO && byte <= NINE)) return this.number();
    return this.literal(TRUE) || this.literal(FALSE) || this.literal(NULL);
  }

  private list(depth: number): boolean {
    if (depth > DEEPEST) return false;
    this.at += 1;
    if (this.skip(CLOSE_LIST)) return true;
    do if (!this.value(depth)) return false;
    while (this.skip(COMMA));
    return this.skip(CLOSE_LIST);
  }

  private number(): boolean {
    const { bytes, at: from } = this;
    if (this.wholeNumber() && inNumber[bytes[this.at] ?? 0] !== 1) return true;
    let at = from;
    while (inNumber[bytes[at] ?? 0] === 1) at += 1;
    if (at - from > NUMBER_LONGEST) return false;
    this.at = at;
    const text = bytes.toString('latin1', from, at);
    return String(Number(text)) === text; // RFC 8785 writes numbers as the engine does
  }

  private skip(byte: number): boolean {
    if (this.bytes[this.at] !== byte) return false;
    this.at += 1;
    return true;
  }

  /** Keys rise strictly, by UTF-16 units: of plain ASCII that is by bytes. Others, and the one that is no key at all, go the long way. */
  private isNextKey(before: number, key: number): boolean {
    const { bytes, at } = this;
    for (let i = key; i < at; i += 1) {
      const byte = bytes[i] ?? 0;
      if (byte > 126 || byte === BACKSLASH) return false;
    }
    if (bytes[key] === 0x5f && bytes.toString('latin1', key, at - 1) === '__proto__') return false;
    if (before < 0) return true;
    for (let i = 0; ; i += 1) {
      const [old, fresh] = [bytes[before + i] ?? 0, bytes[key + i] ?? 0];
      // A quote ends a key: what ends first is first.
      if (old === QUOTE) return fresh !== QUOTE;
      if (fresh === QUOTE || fresh < old) return false;
      if (fresh > old) return true;
    }
  }
}

const TRUE = Buffer.from('true');
const FALSE = Buffer.from('false');
const NULL = Buffer.from('null');

/** Bytes of the escape behind a backslash at `at`; 0 where the canonical writer would not escape, or not so. */
function escapeLength(bytes: Buffer, at: number): number {
  const byte = bytes[at] ?? 0;
  if (isEscape[byte] === 1) return 1;
  if (byte !== 0x75) return 0;
  const code = bytes.toString('latin1', at + 1, at + 5);
  // Control characters without a short form of their own.
  return /^00(0[0-7bef]|1[0-9a-f])$/.test(code) ? 5 : 0;
}
