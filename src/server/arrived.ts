// An entry on its way into the log. Its text stays in the bytes that it came in until it is written down: a backlog's pages wait
// for the disk by the thousand, and as texts of their own the engine would move them about meanwhile.

import type { ClockReading } from '../../shared/log/entry.ts';
import type { EntryFault } from '../../shared/wire/codes.ts';
import { hashOf } from './keys.ts';
import type { Checked } from './stores/store.ts';

/** What is read out of an entry's text besides. */
export type EntryFacts = Omit<Checked, 'body' | 'aheadMs' | 'via' | 'fault'>;

/** Where an entry's RFC 8785 text stands. */
export interface TextPlace {
  readonly bytes: Buffer;
  readonly from: number;
  readonly end: number;
  /** Every byte is below 0x80. */
  readonly isAscii: boolean;
}

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
  private readonly bytes: Buffer;
  private readonly from: number;
  private readonly end: number;
  private readonly isAscii: boolean;

  constructor(facts: EntryFacts, { bytes, from, end, isAscii }: TextPlace) {
    this.tablet = facts.tablet;
    this.epoch = facts.epoch;
    this.seq = facts.seq;
    this.prev = facts.prev;
    this.hash = facts.hash;
    this.sig = facts.sig;
    this.kind = facts.kind;
    this.hlc = facts.hlc;
    this.atMs = facts.atMs;
    this.bytes = bytes;
    this.from = from;
    this.end = end;
    this.isAscii = isAscii;
  }

  /** The text that the hash covers. */
  get body(): string {
    return this.bytes.toString(this.isAscii ? 'latin1' : 'utf8', this.from, this.end);
  }

  /** SHA-256 over the text's bytes, lower-case hex. */
  bodyHash(): string {
    return hashOf(this.bytes.subarray(this.from, this.end));
  }
}
