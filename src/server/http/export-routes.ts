// An export as a download: a ticket that a lead or an engineer got is used up, then the log streams to the disk.

import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { utcDate } from '../../../shared/kit/moment.ts';
import { chainId } from '../../../shared/log/entry.ts';
import type { ExportItem } from '../../../shared/log/export.ts';
import { csvHeader, itemToCsv, itemToJson } from '../../../shared/log/export-rows.ts';
import { type ExportRights, makeProofRecord } from '../../../shared/log/proof-record.ts';
import {
  coverRanges,
  createRunBook,
  formatRuns,
  leavesOf,
  type RunBook,
} from '../../../shared/log/tree-cover.ts';
import { writeWorkbook } from '../../../shared/log/workbook.ts';
import { type ExportRequest, exportSchema } from '../../../shared/wire/messages.ts';
import type { ServerContext } from '../context.ts';
import { entryCellsOfLog } from '../exports/entry-cells.ts';
import { readItems, requestToFilter } from '../exports/items.ts';
import { hashOf } from '../keys.ts';
import { readRights } from '../people/rights.ts';
import { signedKeys } from '../plant-key.ts';
import type { LogStretch } from '../stores/months.ts';
import type { TreeState } from '../stores/tree.ts';
import { Refused } from './refuse.ts';

/** Adds the route. The ticket is the permission: a plain link can carry no signature. */
export function addExportRoutes(app: FastifyInstance, context: ServerContext): void {
  app.get('/export/:ticket/:file', (request, reply) => download(request, reply, context));
}

async function download(
  request: FastifyRequest,
  reply: FastifyReply,
  context: ServerContext,
): Promise<FastifyReply> {
  const { ticket } = request.params as { ticket: string }; // named in the route
  const taken = await context.store.takeOneTime(hashOf(ticket), 'export', context.nowMs());
  if (!taken)
    throw new Refused('not-found', 'this link is used or over a minute old: ask for the export again');
  const asked = exportSchema.parse(JSON.parse(taken.detail));
  const bytes = await exportBytes(asked, context);
  const ending = asked.format === 'json' ? 'ndjson' : asked.format;
  const day = utcDate(context.nowMs());
  return reply
    .type(types[asked.format])
    .header('content-disposition', `attachment; filename="reelward-log-${day}.${ending}"`)
    .header('cache-control', 'no-store')
    .send(Readable.from(bytes, { objectMode: false }));
}

const types: Readonly<Record<ExportRequest['format'], string>> = {
  csv: 'text/csv; charset=utf-8',
  json: 'application/x-ndjson; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

/** What an export is made of. */
export type ExportContext = Pick<
  ServerContext,
  'store' | 'key' | 'heads' | 'witnesses' | 'plant' | 'serverEpoch' | 'nowMs' | 'tickets'
>;

/** The bytes of an export of the log as it is now, or of a stretch of it, as they are read. */
export async function exportBytes(
  asked: ExportRequest,
  context: ExportContext,
  stretch?: LogStretch,
): Promise<AsyncGenerator<Uint8Array>> {
  // Said before the first byte: a download that breaks off says nothing.
  const [away] = stretch ? [] : await context.store.monthFaults();
  if (away) throw away;
  // A log with a hole has no head, and is given all the same.
  const tree = await context.store.tree();
  const names = new Map<string, string>();
  const book = createRunBook();
  const endPos = tree?.size ?? (await context.store.head()).pos;
  const untilPos = Math.min(endPos, stretch?.untilPos ?? endPos);
  const lots = readItems(context.store, requestToFilter(asked), untilPos, {
    names,
    ...(stretch ? { afterPos: stretch.afterPos } : {}),
    onEntry: (entry, pos) => book.note(chainId(entry), entry.seq, pos - 1),
  });
  const { rightOf, marks } = await readRights(context.store, context.tickets);
  if (asked.format === 'xlsx') {
    return writeWorkbook(lots, {
      entryCells: await entryCellsOfLog(context.store, untilPos),
      namesOf: () => names,
      rightOf,
    });
  }
  if (asked.format === 'csv') return textBytes(lots, csvHeader(), (item) => itemToCsv(item, names, rightOf));
  return textBytes(withProof(lots, context, { book, tree, marks }), '', (item) => `${itemToJson(item)}\n`);
}

/** The records, and what the plant says of them. */
async function* withProof(
  lots: AsyncIterable<readonly ExportItem[]>,
  context: ExportContext,
  {
    book,
    tree,
    marks: rights,
  }: { readonly book: RunBook; readonly tree: TreeState | null; readonly marks: ExportRights },
): AsyncGenerator<readonly ExportItem[]> {
  yield* lots;
  const { store, key, heads, witnesses, plant, serverEpoch } = context;
  const nowMs = context.nowMs();
  const keys = await signedKeys(store, key.plant, { plant, nowMs });
  const line = { epoch: serverEpoch, atMs: nowMs };
  const words = (await store.allBrought()).map(({ atMs: _, ...word }) => word);
  const brought = words.filter((word) => book.runs().has(chainId(word)));
  if (!tree) {
    yield [makeProofRecord({ keys, rights, brought }, line)];
    return;
  }
  const runs = book.runs();
  const cover = await store.treeHashes(coverRanges(tree.size, leavesOf(runs.values()) ?? []));
  const proof = {
    head: heads.sign(tree),
    at: Object.fromEntries([...runs].map(([chain, some]) => [chain, formatRuns(some)])),
    cover: cover.map((hash) => Buffer.from(hash, 'hex').toString('base64')).join(' '),
  };
  const witnessed = (await witnesses.held(tree)).map((one) => ({
    head: one.note,
    proof: one.proof.join(' '),
  }));
  yield [makeProofRecord({ keys, tree: proof, rights, brought, witnessed }, line)];
}

async function* textBytes(
  lots: AsyncIterable<readonly ExportItem[]>,
  head: string,
  write: (item: ExportItem) => string,
): AsyncGenerator<Uint8Array> {
  if (head !== '') yield Buffer.from(head);
  for await (const items of lots) if (items.length > 0) yield Buffer.from(items.map(write).join(''));
}
