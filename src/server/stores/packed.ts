// An entry's text as its row keeps it: without what stands in the row's other columns, so that a log grows by half as much.
// Method: four lines, for no JSON text holds a line end: the time where it is not the column's, the hash before, the person, the payload.
// What would not come back as it was, to the last character, is kept whole; so are rows of before, and a whole text begins with `{`.
// Of a text that left for a month's file its place there is kept, which is neither: it has no line end.
// Refused: to compress it, which costs each reading more than it saves, and leaves nothing that a person could read in the database.

import type { Checked } from './store.ts';
import type { EntriesTable } from './tables.ts';

/** Columns that a kept text leaves out. */
export const packedColumns = ['tablet', 'epoch', 'seq', 'kind', 'hlc_ms', 'hlc_n', 'at_ms', 'body'] as const;
/** What a whole text is made of. */
export type PackedRow = Pick<EntriesTable, (typeof packedColumns)[number]>;

/** Longer texts gain nothing by it, never leave for a month's file, and are looked for by their length; UTF-16 units. */
export const packedMost = 2_000;

/** What stands in an entry's text and in no other column of its row. */
export interface Pieces {
  readonly at: string;
  readonly prev: string;
  /** JSON. */
  readonly who: string;
  /** RFC 8785 text. */
  readonly payload: string;
}

/** What may be known of how a text was made. */
export interface Joined {
  /** What it was joined of (`joinPieces`), where it was and is no longer than `packedMost`. */
  readonly pieces?: Pieces | null;
}

/** The text that the entry's hash covers, where it is as servers and tablets write it. */
export function joinPieces(
  { tablet, epoch, seq, kind, hlc }: Pick<Checked, 'tablet' | 'epoch' | 'seq' | 'kind' | 'hlc'>,
  { at, prev, who, payload }: Pieces,
): string {
  const start = head({ epoch, kind, hlc_ms: hlc.ms, hlc_n: hlc.n });
  return `${OPENING}${at}${start}${payload}${PREV}${prev}${tail(seq, tablet)}${who}}`;
}

/** What of an entry its kept text is made of. */
export type Packable = Pick<
  Checked,
  'body' | 'tablet' | 'epoch' | 'seq' | 'kind' | 'hlc' | 'atMs' | 'pieces'
>;

/**
 * The text as it is kept. Each piece that is left out is compared where it stands, in order and without a gap, so that what is kept comes
 * back as it was: to put it together again for the comparison cost half of all this. A text that was made of its pieces need not be looked through.
 */
export function packedBody(entry: Packable): string {
  const { pieces } = entry;
  if (pieces) return keptOf(pieces, isoOf(entry.atMs));
  const { body, tablet, epoch, seq, kind, hlc, atMs } = entry;
  if (body.length > packedMost) return body;
  const start = head({ epoch, kind, hlc_ms: hlc.ms, hlc_n: hlc.n });
  const from = body.indexOf(start);
  const to = body.lastIndexOf('","seq":');
  const payloadFrom = from + start.length;
  const payloadTo = to - 64 - PREV.length;
  const end = tail(seq, tablet);
  const prev = body.slice(to - 64, to);
  const isWhole =
    from >= OPENING.length &&
    payloadTo >= payloadFrom &&
    body.startsWith(OPENING) &&
    body.startsWith(PREV, payloadTo) &&
    HASH.test(prev) &&
    body.startsWith(end, to) &&
    body.endsWith('}') &&
    !body.includes('\n');
  if (!isWhole) return body;
  const at = body.slice(OPENING.length, from);
  const known = isoOf(atMs);
  // An empty time stands for the column's, and `{` for a whole text.
  if (at !== known && (at === '' || at.startsWith('{'))) return body;
  const who = body.slice(to + end.length, -1);
  return keptOf({ at, prev, who, payload: body.slice(payloadFrom, payloadTo) }, known);
}

/** Written over for each. */
const hashBytes = Buffer.alloc(32);

function keptOf({ at, prev, who, payload }: Pieces, known: string): string {
  hashBytes.write(prev, 'hex');
  return `${at === known ? '' : at}\n${hashBytes.toString('base64url')}\n${who}\n${payload}`;
}

/** The text that the entry's hash covers. */
export function wholeBody(row: PackedRow): string {
  const { body } = row;
  if (body.startsWith('{')) return body;
  const atEnd = body.indexOf('\n');
  const prevEnd = body.indexOf('\n', atEnd + 1);
  const whoEnd = body.indexOf('\n', prevEnd + 1);
  const at = atEnd === 0 ? isoOf(row.at_ms) : body.slice(0, atEnd);
  const prev = Buffer.from(body.slice(atEnd + 1, prevEnd), 'base64url').toString('hex');
  const who = body.slice(prevEnd + 1, whoEnd);
  return `${OPENING}${at}${head(row)}${body.slice(whoEnd + 1)}${PREV}${prev}${tail(row.seq, row.tablet)}${who}}`;
}

/** What stands in place of a text that left: which piece of its month's file, and which line of that, from 0. */
export function placeInFile({ piece, line }: { readonly piece: number; readonly line: number }): string {
  return `@${piece} ${line}`;
}

/** The place; null where the text is here. */
export function readPlaceInFile(body: string): { readonly piece: number; readonly line: number } | null {
  const [, piece, line] = PLACE.exec(body) ?? [];
  return piece === undefined ? null : { piece: Number(piece), line: Number(line) };
}

/** The row with what its other columns say in place of a text that left, for whoever wants no text. */
export function withoutText<R extends PackedRow>(row: R): R {
  if (readPlaceInFile(row.body) === null) return row;
  const nothing = `\n${'A'.repeat(43)}\nnull\n{}`;
  return { ...row, body: nothing };
}

const PLACE = /^@(\d+) (\d+)$/;
const OPENING = '{"at":"';
const PREV = ',"prev":"';
const HASH = /^[0-9a-f]{64}$/;

/** What stands between the time and the payload. */
function head({
  epoch,
  hlc_ms,
  hlc_n,
  kind,
}: Pick<PackedRow, 'epoch' | 'hlc_ms' | 'hlc_n' | 'kind'>): string {
  return `","epoch":${quoted(epoch)},"hlc":{"ms":${hlc_ms},"n":${hlc_n}},"kind":${quoted(kind)},"payload":`;
}

/** What stands between the hash before and the person. */
function tail(seq: number, tablet: string): string {
  return `","seq":${seq},"tablet":${quoted(tablet)},"v":1,"who":`;
}

function isoOf(ms: number): string {
  return Number.isFinite(ms) && Math.abs(ms) <= 8.64e15 ? new Date(ms).toISOString() : '';
}

/** Names as JSON: a log has few of them, and each stands in every entry. */
const quotes = new Map<string, string>();
const QUOTES_MOST = 1_000;

function quoted(name: string): string {
  let text = quotes.get(name);
  if (text === undefined) {
    if (quotes.size >= QUOTES_MOST) quotes.clear();
    text = JSON.stringify(name);
    quotes.set(name, text);
  }
  return text;
}
