// What checks PINs on this tablet: beside the log and never in it, encrypted under a key that the browser keeps and no script can read out.

import type { LogDatabase } from './database.ts';

type Meta = Pick<LogDatabase, 'meta'>;

/** What checks a PIN: PBKDF2 with SHA-256 (`device/pin.ts`). */
export interface PinCheck {
  readonly salt: string;
  readonly hash: string;
  readonly rounds: number;
}

/** A text that only this browser reads. */
interface Box {
  readonly iv: Uint8Array<ArrayBuffer>;
  readonly bytes: ArrayBuffer;
}

interface PinRow {
  readonly pin: string;
  readonly box: Box;
  /** Set on this tablet: the server is to have it too. */
  readonly isOwn: boolean;
  /** Which life of the server has it; null where none does. */
  readonly handedTo: string | null;
}

const KEY = 'secret-key';
const PINS = 'pin:';
const IV_BYTES = 12;

async function secretKey({ meta }: Meta): Promise<CryptoKey> {
  const there = (await meta.get(KEY))?.value as CryptoKey | undefined; // written below only
  if (there) return there;
  const made = await crypto.subtle.generateKey({ name: 'AES-GCM', length: 256 }, false, [
    'encrypt',
    'decrypt',
  ]);
  // Another window may have been first.
  await meta.add({ key: KEY, value: made }).catch(() => undefined);
  return ((await meta.get(KEY))?.value as CryptoKey | undefined) ?? made;
}

async function close(db: Meta, value: unknown): Promise<Box> {
  const iv = crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const text = new TextEncoder().encode(JSON.stringify(value));
  return { iv, bytes: await crypto.subtle.encrypt({ name: 'AES-GCM', iv }, await secretKey(db), text) };
}

/** Null where it cannot be read any more: as if it had never been here. */
async function open<T>(db: Meta, { iv, bytes }: Box): Promise<T | null> {
  try {
    const text = await crypto.subtle.decrypt({ name: 'AES-GCM', iv }, await secretKey(db), bytes);
    return JSON.parse(new TextDecoder().decode(text)) as T; // closed above only
  } catch {
    return null;
  }
}

/** Keeps what checks a PIN, durably. `isOwn`: it was set here, and no server has it. */
export async function keepPin(
  db: Meta,
  { pin, check, isOwn }: { readonly pin: string; readonly check: PinCheck; readonly isOwn: boolean },
): Promise<void> {
  const row: PinRow = { pin, box: await close(db, check), isOwn, handedTo: null };
  await db.meta.put({ key: PINS + pin, value: row });
}

/** What checks the PIN of this name; null where this tablet does not have it. */
export async function readPin(db: Meta, pin: string): Promise<PinCheck | null> {
  const row = (await db.meta.get(PINS + pin))?.value as PinRow | undefined; // written above only
  return row ? open<PinCheck>(db, row.box) : null;
}

async function pinRows({ meta }: Meta): Promise<readonly PinRow[]> {
  const rows = await meta.where('key').startsWith(PINS).toArray();
  return rows.map(({ value }) => value as PinRow); // written above only
}

/** PINs set here that this life of the server does not have. */
export async function pinsToHand(
  db: Meta,
  serverEpoch: string,
): Promise<readonly (PinCheck & { readonly pin: string })[]> {
  const found: (PinCheck & { readonly pin: string })[] = [];
  for (const { pin, box, isOwn, handedTo } of await pinRows(db)) {
    if (!isOwn || handedTo === serverEpoch) continue;
    const check = await open<PinCheck>(db, box);
    if (check) found.push({ pin, salt: check.salt, hash: check.hash, rounds: check.rounds });
  }
  return found;
}

/** The server has these. */
export async function notePinsHanded(db: Meta, pins: readonly string[], serverEpoch: string): Promise<void> {
  for (const row of await pinRows(db))
    if (pins.includes(row.pin))
      await db.meta.put({ key: PINS + row.pin, value: { ...row, handedTo: serverEpoch } });
}

/** Forgets all of it. */
export async function forgetSecrets({ meta }: Meta): Promise<void> {
  await meta.where('key').startsWith(PINS).delete();
  await meta.bulkDelete([KEY]);
}
