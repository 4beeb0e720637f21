// An entry on its way into the log. Of its text only the pieces are kept that no other field says: what a row keeps is made of them, and the
// whole is seldom wanted again once its hash is known.

import type { ClockReading, Entry } from '../../shared/log/entry.ts';
import type { EntryFault } from '../../shared/wire/codes.ts';
import { hashOf } from './keys.ts';
import type { DraftText } from './stores/canonical.ts';
import { joinPieces, type Pieces, packedMost } from './stores/packed.ts';
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
  readonly pieces: Pieces | null;
  /** SHA-256 over the text's UTF-8 bytes, lower-case hex: what `hash` has to be. */
  readonly bodyHash: string;
  /** The whole text where it is not joined of its pieces. */
  private readonly whole: string | null;

  constructor(entry: Entry, { body, pieces }: DraftText) {
    this.tablet = entry.tablet;
    this.epoch = entry.epoch;
    this.seq = entry.seq;
    this.prev = entry.prev;
    this.hash = entry.hash;
    this.sig = entry.sig;
    this.kind = entry.kind;
    this.hlc = entry.hlc;
    this.atMs = Date.parse(entry.at);
    this.bodyHash = hashOf(body);
    this.pieces = body.length > packedMost ? null : pieces;
    this.whole = this.pieces ? null : body;
  }

  /** The text that the hash covers. */
  get body(): string {
    return this.pieces ? joinPieces(this, this.pieces) : (this.whole ?? '');
  }
}
