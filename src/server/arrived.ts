// An entry on its way into the log. Its text stays in bytes until it is written down: a backlog's pages wait for the disk by the
// thousand, and as texts the engine would move them about meanwhile.

import type { ClockReading, Entry } from '../../shared/log/entry.ts';
import type { EntryFault } from '../../shared/wire/codes.ts';
import { hashOf } from './keys.ts';
import type { Checked } from './stores/store.ts';

/** Read first, judged after: the last three fields are set once by whoever checks it. */
export class ArrivedEntry implements Checked {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly prev: string;
  readonly hash: string;
  readonly sig: string | null;
  readonly kind: string;
  readonly hlc: ClockReading;
  readonly atMs: number;
  aheadMs = 0;
  via: string | null = null;
  fault: EntryFault | null = null;
  /** RFC 8785 text in UTF-8. */
  private readonly bytes: Buffer;

  constructor(entry: Entry, bytes: Buffer) {
    this.tablet = entry.tablet;
    this.epoch = entry.epoch;
    this.seq = entry.seq;
    this.prev = entry.prev;
    this.hash = entry.hash;
    this.sig = entry.sig;
    this.kind = entry.kind;
    this.hlc = entry.hlc;
    this.atMs = Date.parse(entry.at);
    this.bytes = bytes;
  }

  /** The text that the hash covers. */
  get body(): string {
    return this.bytes.toString('utf8');
  }

  /** SHA-256 over the text's bytes, lower-case hex. */
  bodyHash(): string {
    return hashOf(this.bytes);
  }
}
