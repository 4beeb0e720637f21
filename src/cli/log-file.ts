// An exported log as a file: read from any of its three forms, written to any of them, its signatures checked.
// The records and their checks are in shared/log/; here are bytes, workbooks and keys.

import { constants } from 'node:buffer';
import { createGunzip } from 'node:zlib';
import { takeName } from '../../shared/floor/people.ts';
import type { Omitted } from '../../shared/log/chain.ts';
import { chainId, type Entry, entryId, signatureForm } from '../../shared/log/entry.ts';
import type { ExportItem } from '../../shared/log/export.ts';
import {
  createLineReader,
  type ExportReading,
  parseExport,
  parseExportRows,
} from '../../shared/log/export-read.ts';
import {
  csvHeader,
  entryCellsOf,
  itemToCsv,
  itemToJson,
  type PeopleNames,
  type RightOf,
  workbookText,
} from '../../shared/log/export-rows.ts';
import { compareEntries } from '../../shared/log/order.ts';
import type { ListedKey } from '../../shared/log/plant-list.ts';
import { type ExportRights, readProofRecord } from '../../shared/log/proof-record.ts';
import { writeWorkbook } from '../../shared/log/workbook.ts';
import { entryText } from '../../shared/wire/signing.ts';
import { signatureHolds } from '../server/keys.ts';
import { type CommandIo, NotUnderstood, readBytes } from './command.ts';
import { followHeads, type SignedTo } from './log-heads.ts';
import { pointOf } from './plant-keys.ts';

const PIECE_BYTES = 1 << 20;

/** The bytes of a file in pieces; one packed by gzip (RFC 1952), told by its first bytes, is unpacked. */
async function* piecesOf(bytes: Uint8Array, file: string): AsyncGenerator<Uint8Array> {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) {
    for (let at = 0; at < bytes.length; at += PIECE_BYTES) yield bytes.subarray(at, at + PIECE_BYTES);
    return;
  }
  const unpacking = createGunzip({ chunkSize: PIECE_BYTES });
  unpacking.end(bytes);
  try {
    yield* unpacking;
  } catch (error) {
    throw new NotUnderstood(
      `${file}: expected a whole packed file, found a broken one: ${(error as Error).message}`,
    );
  }
}

/** Reads an exported log: JSON lines, CSV or a workbook, packed or not, told by its first bytes. */
export async function readLogFile(file: string, io: CommandIo): Promise<ExportReading> {
  const pieces = piecesOf(await readBytes(file, io), file);
  const first = (await pieces.next()).value ?? new Uint8Array();
  try {
    if (beginsLines(first)) return await readLines(first, pieces);
    const bytes = await joined(first, pieces);
    if (bytes[0] === 0x50 && bytes[1] === 0x4b) return await readWorkbook(bytes, file);
    if (bytes.length > constants.MAX_STRING_LENGTH)
      throw new NotUnderstood(`${file}: too long for a table: export the log as JSON lines`);
    return parseExport(new TextDecoder('utf-8', { fatal: true }).decode(bytes), takeName);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw new NotUnderstood(`${file}: expected UTF-8 text or a workbook, found bytes that are neither`);
  }
}

/** True where the first sign is the brace of a JSON record. */
function beginsLines(first: Uint8Array): boolean {
  const start = first[0] === 0xef && first[1] === 0xbb && first[2] === 0xbf ? 3 : 0;
  const sign = first.subarray(start).find((byte) => byte !== 0x20 && (byte < 0x09 || byte > 0x0d));
  return sign === undefined || sign === 0x7b;
}

/** One text of all would be longer than a string can be, where a large plant's month is. */
async function readLines(first: Uint8Array, pieces: AsyncGenerator<Uint8Array>): Promise<ExportReading> {
  const [lines, decoder] = [createLineReader(), new TextDecoder('utf-8', { fatal: true })];
  lines.take(decoder.decode(first, { stream: true }));
  for await (const piece of pieces) lines.take(decoder.decode(piece, { stream: true }));
  lines.take(decoder.decode());
  return lines.end();
}

async function joined(first: Uint8Array, pieces: AsyncGenerator<Uint8Array>): Promise<Uint8Array> {
  const all = [first];
  for await (const piece of pieces) all.push(piece);
  return all.length === 1 ? first : Buffer.concat(all);
}

async function readWorkbook(bytes: Uint8Array, file: string): Promise<ExportReading> {
  const { default: readXlsxFile } = await import('read-excel-file/node');
  try {
    const [sheet] = await readXlsxFile(Buffer.from(bytes), { trim: false });
    const rows = (sheet?.data ?? []).map((row) => row.map(toText));
    return parseExportRows(rows, { takeName });
  } catch (error) {
    throw new NotUnderstood(`${file}: expected a workbook, found a broken one: ${(error as Error).message}`);
  }
}

/** A cell as the check of an export compares it. */
function toText(cell: unknown): string {
  if (cell === null) return '';
  return cell instanceof Date ? workbookText({ wallMs: cell.getTime() }) : String(cell);
}

/** Answers the names known when an entry was written: those that earlier entries of the file gave, whatever a filter leaves out. */
export function namesAt(entries: readonly Entry[]): (item: ExportItem) => PeopleNames {
  const names = new Map<string, string>();
  const known = new Map<ExportItem, PeopleNames>();
  for (const entry of [...entries].sort(compareEntries)) {
    takeName(names, entry);
    const name = names.get(entry.who ?? '');
    if (entry.who !== null && name !== undefined) known.set(entry, new Map([[entry.who, name]]));
  }
  const none: PeopleNames = new Map();
  return (item) => known.get(item) ?? none;
}

/** The marks of rights in a JSON export: which entries its writer found unproven, and what a lead said of them. */
export function rightsIn({ proofs = [] }: ExportReading): ExportRights | null {
  const [record] = proofs;
  return (record && readProofRecord(record)?.rights) ?? null;
}

/** What these marks say of an entry; of the others nothing is known here. */
export function rightsFrom(rights: ExportRights | null): RightOf {
  const marks = new Map<string, string>();
  for (const [mark, ids] of Object.entries(rights ?? {}))
    for (const id of ids as readonly string[]) marks.set(id, mark);
  return (entry) => marks.get(entryId(entry)) ?? '';
}

/** The lines of a text export, header included where the form has one. */
export function exportLines(
  items: readonly ExportItem[],
  format: 'csv' | 'json',
  namesOf: (item: ExportItem) => PeopleNames,
  rightOf: RightOf,
): readonly string[] {
  if (format === 'json') return items.map((item) => `${itemToJson(item)}\n`);
  return [csvHeader(), ...items.map((item) => itemToCsv(item, namesOf(item), rightOf))];
}

/** A workbook: moments and counts as such, all else as texts, so that nothing is rounded, computed or turned into a date. */
export async function exportWorkbook(
  items: readonly ExportItem[],
  namesOf: (item: ExportItem) => PeopleNames,
  rightOf: RightOf,
): Promise<Uint8Array> {
  const entryCells = items.reduce((most, item) => Math.max(most, entryCellsOf(item)), 1);
  const parts: Uint8Array[] = [];
  for await (const part of writeWorkbook([items], { entryCells, namesOf, rightOf })) parts.push(part);
  return Buffer.concat(parts);
}

/** Why an entry is only claimed. */
export type ClaimReason =
  | 'tablet-not-listed'
  | 'own-word-for-its-key'
  | 'not-signed'
  | 'shut-out-before'
  | 'text-left-out'
  | 'does-not-hold';

/** What checking the signatures found. */
export interface SignatureCheck {
  readonly checked: number;
  /** Entries of chains whose first entry is not in the file or carries no key. */
  readonly withoutKey: number;
  /** True for an entry at the end of a chain with a key that nobody vouches for, though nothing is left out of the file after it. */
  readonly lacksHead: (entry: Entry) => boolean;
  readonly holds: (entry: Entry) => boolean;
  /** The listed key by which the entry's signature holds, or why there is none. */
  readonly keyOf: (
    entry: Entry,
  ) => ListedKey | Exclude<ClaimReason, 'does-not-hold' | 'text-left-out'> | null;
  /** For each chain with a key, in the order of names: up to where a signature vouches for it. */
  readonly signedTo: readonly SignedTo[];
}

/**
 * Checks every signature: ECDSA P-256 over the hash's hexadecimal text, by the keys that the plant's list names for the tablet and by
 * the key that the chain's first entry names. One that holds by none of them does not hold. An entry without one is vouched for by the next
 * signed entry of its chain, as far as the file holds all that lies between with its text. `omitted`: what the file leaves out.
 */
export function checkSignatures(
  entries: readonly Entry[],
  listed: readonly ListedKey[] = [],
  omitted: readonly Omitted[] = [],
): SignatureCheck {
  const ownByChain = new Map<string, string>();
  for (const entry of entries) {
    const key = entry.seq === 1 && entry.kind === 'tablet.opened' ? entry.payload['key'] : null;
    if (key !== null && key !== undefined) ownByChain.set(chainId(entry), readJwk(key));
  }
  const byTablet = new Map<string, ListedKey[]>();
  for (const key of listed) byTablet.set(key.tablet, [...(byTablet.get(key.tablet) ?? []), key]);
  const found = new Map<string, ListedKey | 'own' | 'none'>();
  let [checked, withoutKey] = [0, 0];
  for (const entry of entries) {
    const own = ownByChain.get(chainId(entry));
    const keys = byTablet.get(entry.tablet) ?? [];
    if (own === undefined && keys.length === 0) withoutKey += 1;
    else if (entry.sig !== null) {
      checked += 1;
      found.set(nameOf(entry), keyThatHolds(entry, own, keys));
    }
  }
  const holds = (entry: Entry) => (found.get(nameOf(entry)) ?? 'none') !== 'none';
  const { vouchers, lacking, signedTo } = followHeads(entries, {
    holds,
    omitted,
    hasKey: (id) => ownByChain.has(id),
  });
  return {
    checked,
    withoutKey,
    signedTo,
    lacksHead: (entry) => lacking.has(entry),
    holds: (entry) => found.get(nameOf(entry)) !== 'none',
    keyOf: (entry) => {
      const head = vouchers.get(entry) ?? entry;
      const key = found.get(nameOf(head));
      if (key === 'none') return null;
      if (key !== undefined && key !== 'own') {
        return key.until !== null && head.hlc.ms > Date.parse(key.until) ? 'shut-out-before' : key;
      }
      if (key === 'own') return 'own-word-for-its-key';
      return byTablet.has(entry.tablet) ? 'not-signed' : 'tablet-not-listed';
    },
  };
}

function nameOf(entry: Entry): string {
  return `${entryId(entry)} ${entry.hash} ${entry.sig}`;
}

function keyThatHolds(
  { hash, sig }: Entry,
  own: string | undefined,
  keys: readonly ListedKey[],
): ListedKey | 'own' | 'none' {
  // The reader of base64 forgives stray characters; a signature that was altered there is altered all the same.
  if (sig === null || !signatureForm.test(sig)) return 'none';
  const text = entryText(hash);
  const listed = keys.find(({ key }) => signatureHolds(key, text, sig));
  if (listed) return listed;
  return own !== undefined && signatureHolds(own, text, sig) ? 'own' : 'none';
}

/** The point in a JWK; a text that is no key where it is none: no signature holds by it. */
function readJwk(key: unknown): string {
  const { kty, crv, x, y } = key as Readonly<Record<string, unknown>>; // looked at on the next line
  const isKey = kty === 'EC' && crv === 'P-256' && typeof x === 'string' && typeof y === 'string';
  return isKey ? pointOf({ x, y }) : 'none';
}
