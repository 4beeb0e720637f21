// An entry's text as its row keeps it: without what stands in the row's other columns, so that a log grows by half as much.
// Method: four lines, for no JSON text holds a line end: the time where it is not the column's, the hash before, the person, the payload.
// What would not come back as it was, to the last character, is kept whole; so are rows of before, and a whole text begins with `{`.
// Refused: to compress it, which costs each reading more than it saves, and leaves nothing that a person could read in the database.

import type { Checked } from './store.ts';
import type { EntriesTable } from './tables.ts';

/** Columns that a kept text leaves out. */
export const packedColumns = ['tablet', 'epoch', 'seq', 'kind', 'hlc_ms', 'hlc_n', 'at_ms', 'body'] as const;
/** What a whole text is made of. */
export type PackedRow = Pick<EntriesTable, (typeof packedColumns)[number]>;

/** Longer ones gain nothing, and are looked for by their length. */
const PACKED_MOST = 2_000;

/** The text as it is kept. */
export function packedBody(entry: Checked): string {
  const { body, tablet, epoch, seq, kind, hlc, atMs } = entry;
  if (body.length > PACKED_MOST) return body;
  const row = { tablet, epoch, seq, kind, hlc_ms: hlc.ms, hlc_n: hlc.n, at_ms: atMs };
  const from = body.indexOf(head(row));
  const to = body.lastIndexOf('","seq":');
  const who = body.indexOf(',"who":', to);
  const prev = body.slice(to - 64, to);
  const at = body.slice('{"at":"'.length, from);
  const payload = body.slice(from + head(row).length, to - 64 - PREV.length);
  if (from < 0 || to < 0 || who < 0 || !/^[0-9a-f]{64}$/.test(prev)) return body;
  const packed = [
    at === isoOf(atMs) ? '' : at,
    Buffer.from(prev, 'hex').toString('base64url'),
    body.slice(who + ',"who":'.length, -1),
    payload,
  ].join('\n');
  return wholeBody({ ...row, body: packed }) === body ? packed : body;
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
  return `{"at":"${at}${head(row)}${body.slice(whoEnd + 1)}${PREV}${prev}","seq":${row.seq},"tablet":${JSON.stringify(row.tablet)},"v":1,"who":${who}}`;
}

const PREV = ',"prev":"';

/** What stands between the time and the payload. */
function head({ epoch, hlc_ms, hlc_n, kind }: Omit<PackedRow, 'body'>): string {
  return `","epoch":${JSON.stringify(epoch)},"hlc":{"ms":${hlc_ms},"n":${hlc_n}},"kind":${JSON.stringify(kind)},"payload":`;
}

function isoOf(ms: number): string {
  return Number.isFinite(ms) && Math.abs(ms) <= 8.64e15 ? new Date(ms).toISOString() : '';
}
