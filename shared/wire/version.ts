// Do tablet and server speak the same words? One whole number, its history, and the oldest number still answered.
// A number rather than a date or a package version: it changes only when a message changes, and a test over the
// messages' schemas fails until it does.

/** One step of the wire: what changed, so that a reader of an old tablet's log knows what it could say. */
export interface WireStep {
  readonly version: number;
  readonly change: string;
}

/** Every version there has been, oldest first. */
export const wireHistory: readonly WireStep[] = [
  {
    version: 1,
    change: 'first messages: enrol, offer, push, pull, live, checkpoint, snapshot, people, export',
  },
  { version: 2, change: 'the server answers a trace; what version 1 says is unchanged' },
  {
    version: 3,
    change:
      'a traced panel has all its runs, and an answer says what is guessed; a header tells the hash of the body before it comes, and must where a snapshot is given; signatures are 64 bytes, clocks bounded; clocks that are off are told; a code may name the tablet that it replaces',
  },
  {
    version: 4,
    change:
      "a push is answered with a receipt, and the server proves the log's tree; an answer to a trace may rest on a guess of which boards of a panel a slot serves",
  },
  {
    version: 5,
    change:
      'a person who was checked with a PIN gets a ticket that entries can be proven by, and the list of keys brings from where on the plant gives them; what version 4 says is unchanged',
  },
  {
    version: 6,
    change:
      'who brings the chain of another tablet signs that it did, and must where the server never let that tablet in; what checks a PIN is handed to the server apart from the log; what version 5 says is unchanged',
  },
  {
    version: 7,
    change:
      'of a page the last entry of a chain is signed for those before it, which need no signature of their own; a pulled page ends at such an entry where it is cut; tablets sign heads of the log that they checked, and the server says where an entry lies in it, for paper; what version 6 says is unchanged',
  },
  {
    version: 8,
    change:
      'an answer to a trace by reel follows cuts and joins: it says which other reels have parts in what it names, and where parts of the reel asked for came from and went; what version 7 says is unchanged',
  },
  {
    version: 9,
    change:
      'a code may be for a wall screen, which reads and sends nothing, and joining says whether the tablet wrote anything yet; a tablet may be told of what waits by Web Push; what version 8 says is unchanged',
  },
  {
    version: 10,
    change:
      "an offer is answered with how much of its room the plant's state takes, and a tablet whose state is too large to be handed over tells its size; what version 9 says is unchanged",
  },
];

/** The version spoken by this code. */
export const wireVersion = 10;

/** The version in which receipts and the log's tree were added. */
export const treeSince = 4;

/** The version in which tickets were added. */
export const ticketsSince = 5;

/** The oldest version that a server with this code still answers. */
export const wireFloor = 1;

/** Request header that carries the tablet's version. */
export const wireHeader = 'reelward-wire';

/** Request header that tells the body's SHA-256 as it travels, lower-case hex: the signature can be checked before a byte of it came. */
export const bodyHeader = 'reelward-body';

/** How a version stands to this code. */
export type WireVerdict = 'spoken' | 'too-old' | 'too-new' | 'unreadable';

/** Judges the header's text; a missing header is unreadable. */
export function judgeWire(text: string | undefined): WireVerdict {
  if (text === undefined || !/^[1-9]\d{0,5}$/.test(text)) return 'unreadable';
  const version = Number(text);
  if (version < wireFloor) return 'too-old';
  return version > wireVersion ? 'too-new' : 'spoken';
}
