// Whose keys count when an exported log is checked: those of the plant's signed list, out of the file itself or given beside it. A key
// is never taken from the file on its own word; and that the list is the plant's is for people to say, by the fingerprint.

import { z } from 'zod';
import type { Entry } from '../../shared/log/entry.ts';
import { parseExport } from '../../shared/log/export-read.ts';
import { formatNoteKey, type NoteKey, parseNote } from '../../shared/log/note.ts';
import { type ListedKey, parsePlantList, plantFingerprint } from '../../shared/log/plant-list.ts';
import { readProofRecord } from '../../shared/log/proof-record.ts';
import { readPublicKey } from '../server/keys.ts';
import { noteHolds } from '../server/plant-key.ts';
import { type CommandIo, NotUnderstood, parseJson, readText } from './command.ts';

/** The keys that count. */
export interface KnownKeys {
  /** `given`: by --keys; `export`: out of the file itself; null: none are known. */
  readonly from: 'given' | 'export' | null;
  /** Whose list it is; null where it is nobody's, or where there is none. */
  readonly plant: PlantNamed | null;
  readonly keys: readonly ListedKey[];
  /** Why a list was not taken, for people; null where nothing is wrong with it. */
  readonly fault: string | null;
}

/** The plant as its list names it. */
export interface PlantNamed {
  readonly name: string;
  readonly key: NoteKey;
  /** When the list was signed. */
  readonly listAt: string;
}

const noKeys: KnownKeys = { from: null, plant: null, keys: [], fault: null };

const jwk = z.object({ kty: z.literal('EC'), crv: z.literal('P-256'), x: z.string(), y: z.string() });
const plainSchema = z.strictObject({
  keys: z.array(
    z.strictObject({
      tablet: z.string().min(1),
      key: z.union([z.string(), jwk.transform(pointOf)]).refine((key) => readPublicKey(key) !== null, {
        message: 'expected a P-256 key: 65 bytes in base64url, or as JWK',
      }),
      since: z.string().optional(),
      until: z.string().nullable().optional(),
    }),
  ),
});

/** The point of a key as WebCrypto writes it, 65 bytes in base64url. */
export function pointOf({ x, y }: { readonly x: string; readonly y: string }): string {
  const [left, right] = [Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')];
  return Buffer.concat([Buffer.of(4), left, right]).toString('base64url');
}

/** The list in the plant's line of an export; none where the file has no such line. */
export function keysInExport(proofs: readonly Entry[]): KnownKeys {
  const [record] = proofs;
  if (!record) return noKeys;
  const proof = readProofRecord(record);
  if (!proof) return { ...noKeys, fault: "the plant's line in the file has no list of keys" };
  return keysInNote(proof.keys, 'export');
}

/** The list that was given: as the server prints it, an export that has one, or a plain list of the reader's own. */
export async function keysInFile(file: string, io: CommandIo): Promise<KnownKeys> {
  const text = await readText(file, io);
  if (!/^\s*\{/.test(text)) {
    const known = keysInNote(text, 'given');
    if (known.fault !== null) throw new NotUnderstood(`${file}: ${known.fault}`);
    return known;
  }
  const { proofs = [] } = parseExport(text);
  if (proofs.length > 0) {
    const known = keysInExport(proofs);
    if (known.fault !== null) throw new NotUnderstood(`${file}: ${known.fault}`);
    return { ...known, from: 'given' };
  }
  const { keys } = parseJson(text, plainSchema, file);
  return {
    ...noKeys,
    from: 'given',
    keys: keys.map(({ tablet, key, since, until }) => ({
      tablet,
      key,
      since: since ?? '',
      until: until ?? null,
    })),
  };
}

function keysInNote(text: string, from: 'given' | 'export'): KnownKeys {
  const note = parseNote(text);
  const list = note && parsePlantList(note.text);
  if (!note || !list)
    return { ...noKeys, fault: 'the list of keys cannot be read: expected a signed list of keys' };
  if (!noteHolds(note, list.plantKey))
    return {
      ...noKeys,
      fault: "the list of keys was changed: its signature does not hold by the plant's key",
    };
  const plant = { name: list.plant, key: list.plantKey, listAt: list.at };
  return { from, plant, keys: list.keys, fault: null };
}

/** What is told of the plant. */
export function sayPlant({ name, key, listAt }: PlantNamed) {
  return { name, key: formatNoteKey(key), fingerprint: plantFingerprint(key.key), listAt };
}

/** Reads a fingerprint as a person gives it: any case, with or without colons. */
export function readFingerprint(text: string): string {
  const hex = text.replaceAll(/[:\s]/g, '').toUpperCase();
  if (/^[0-9A-F]{64}$/.test(hex)) return (hex.match(/../g) ?? []).join(':');
  throw new NotUnderstood(`--plant: expected a fingerprint of 32 pairs of hex digits, found ${text}`);
}
