// An exported log as a file: read from any of its three forms, written to any of them, its signatures checked.
// The records and their checks are in shared/log/; here are bytes, workbooks and the key of each chain.

import { webcrypto } from 'node:crypto';
import { takeName } from '../../shared/floor/people.ts';
import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import type { ExportItem } from '../../shared/log/export.ts';
import { type ExportReading, parseExport, parseExportRows } from '../../shared/log/export-read.ts';
import {
  csvHeader,
  entryCellsOf,
  itemToCsv,
  itemToJson,
  type PeopleNames,
  workbookText,
} from '../../shared/log/export-rows.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { writeWorkbook } from '../../shared/log/workbook.ts';
import { type CommandIo, NotUnderstood, readBytes } from './command.ts';

/** Forms of an export. */
export const logFormats = ['csv', 'xlsx', 'json'] as const;
/** One form. */
export type LogFormat = (typeof logFormats)[number];

/** Reads an exported log: JSON lines, CSV or a workbook, told by its first bytes. */
export async function readLogFile(file: string, io: CommandIo): Promise<ExportReading> {
  const bytes = await readBytes(file, io);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return readWorkbook(bytes, file);
  try {
    return parseExport(new TextDecoder('utf-8', { fatal: true }).decode(bytes), takeName);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw new NotUnderstood(`${file}: expected UTF-8 text or a workbook, found bytes that are neither`);
  }
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

/** The lines of a text export, header included where the form has one. */
export function exportLines(
  items: readonly ExportItem[],
  format: 'csv' | 'json',
  namesOf: (item: ExportItem) => PeopleNames,
): readonly string[] {
  if (format === 'json') return items.map((item) => `${itemToJson(item)}\n`);
  return [csvHeader(), ...items.map((item) => itemToCsv(item, namesOf(item)))];
}

/** A workbook: moments and counts as such, all else as texts, so that nothing is rounded, computed or turned into a date. */
export async function exportWorkbook(
  items: readonly ExportItem[],
  namesOf: (item: ExportItem) => PeopleNames,
): Promise<Uint8Array> {
  const entryCells = items.reduce((most, item) => Math.max(most, entryCellsOf(item)), 1);
  const parts: Uint8Array[] = [];
  for await (const part of writeWorkbook([items], { entryCells, namesOf })) parts.push(part);
  return Buffer.concat(parts);
}

/** What checking the signatures found. */
export interface SignatureCheck {
  readonly checked: number;
  /** Entries of chains whose first entry is not in the file or carries no key. */
  readonly withoutKey: number;
  readonly hasKey: (entry: Entry) => boolean;
  readonly holds: (entry: Entry) => boolean;
}

/** Checks every signature against the key that the chain's first entry names: ECDSA P-256 over the hash's hexadecimal text. */
export async function checkSignatures(entries: readonly Entry[]): Promise<SignatureCheck> {
  const keyByChain = new Map<string, webcrypto.CryptoKey | null>();
  for (const entry of entries) {
    const key = entry.seq === 1 && entry.kind === 'tablet.opened' ? entry.payload['key'] : null;
    if (key !== null && key !== undefined) keyByChain.set(chainId(entry), await importKey(key));
  }
  const failed = new Set<string>();
  let checked = 0;
  let withoutKey = 0;
  for (const entry of entries) {
    const key = keyByChain.get(chainId(entry));
    if (key === undefined) withoutKey += 1;
    else if (entry.sig !== null) {
      checked += 1;
      if (key === null || !(await isSignature(key, entry.sig, entry.hash))) {
        failed.add(`${entryId(entry)} ${entry.hash}`);
      }
    }
  }
  return {
    checked,
    withoutKey,
    hasKey: (entry) => keyByChain.has(chainId(entry)),
    holds: (entry) => !failed.has(`${entryId(entry)} ${entry.hash}`),
  };
}

async function importKey(key: unknown): Promise<webcrypto.CryptoKey | null> {
  try {
    const kind = { name: 'ECDSA', namedCurve: 'P-256' };
    return await webcrypto.subtle.importKey('jwk', key as webcrypto.JsonWebKey, kind, false, ['verify']);
  } catch {
    return null; // a key that is none: no signature can hold
  }
}

async function isSignature(key: webcrypto.CryptoKey, signature: string, hash: string): Promise<boolean> {
  const bytes = Buffer.from(signature, 'base64url');
  // The reader of base64 forgives stray characters; a signature that was altered there is altered all the same.
  if (bytes.toString('base64url') !== signature) return false;
  const kind = { name: 'ECDSA', hash: 'SHA-256' };
  return webcrypto.subtle.verify(kind, key, bytes, new TextEncoder().encode(hash));
}
