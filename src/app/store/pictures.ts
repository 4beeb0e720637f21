// Pictures of labels: beside the log and never in it, in a database of their own that may be lost without harm to a verdict. Each lies
// under the SHA-256 that the log has of it. By the line's rule the oldest go first: when their days are over, or the room is full.

import Dexie, { type Table } from 'dexie';
import { DAY_MS } from '../../../shared/kit/moment.ts';
import { bytesToHex } from '../../../shared/log/bytes.ts';

/** A picture that is kept. */
export interface KeptPicture {
  readonly sha256: string;
  /** The entry of the verdict that was made on it. */
  readonly of: string;
  readonly atMs: number;
  /** When its days are over, ms since 1970. */
  readonly untilMs: number;
  /** The file: JPEG. */
  readonly bytes: ArrayBuffer;
  /** The life of the server that has it; empty where none has. */
  readonly sentTo: string;
}

/** How long pictures are kept, and how much room they may take. */
export interface PictureRoom {
  readonly days: number;
  readonly megabytes: number;
}

class PictureDatabase extends Dexie {
  declare pictures: Table<KeptPicture, string>;

  constructor(name: string) {
    super(name, { chromeTransactionDurability: 'relaxed', cache: 'disabled' });
    this.version(1).stores({ pictures: 'sha256, of, atMs, untilMs, sentTo' });
  }
}

/** The pictures of this tablet. */
export interface Pictures {
  /** Keeps a picture and throws away what is over; answers its SHA-256 (hex). Rejects where it could not be kept. */
  readonly keep: (
    picture: { readonly of: string; readonly bytes: ArrayBuffer },
    at: { readonly room: PictureRoom; readonly nowMs: number },
  ) => Promise<string>;
  readonly bySha: (sha256: string) => Promise<KeptPicture | null>;
  /** Those from a moment on, ms since 1970, the oldest first; and how many they are. */
  readonly since: (fromMs: number) => Promise<readonly KeptPicture[]>;
  readonly count: (fromMs: number) => Promise<number>;
  /** Some that this life of the server does not have. */
  readonly waiting: (serverEpoch: string, most: number) => Promise<readonly KeptPicture[]>;
  readonly sent: (sha256: string, serverEpoch: string) => Promise<void>;
  /** Throws away those whose days are over, also where no more are kept. */
  readonly tidy: (nowMs: number) => Promise<void>;
}

/** Opens them. */
export function openPictures(name = 'reelward-pictures'): Pictures {
  const { pictures } = new PictureDatabase(name);
  return {
    keep: async ({ of, bytes }, { room, nowMs }) => {
      const sha256 = await shaOf(bytes);
      await pictures.put({
        sha256,
        of,
        atMs: nowMs,
        untilMs: nowMs + room.days * DAY_MS,
        bytes,
        sentTo: '',
      });
      await throwAway(pictures, room, nowMs);
      return sha256;
    },
    bySha: async (sha256) => (await pictures.get(sha256)) ?? null,
    since: (fromMs) => pictures.where('atMs').aboveOrEqual(fromMs).sortBy('atMs'),
    count: (fromMs) => pictures.where('atMs').aboveOrEqual(fromMs).count(),
    waiting: (serverEpoch, most) => pictures.where('sentTo').notEqual(serverEpoch).limit(most).toArray(),
    sent: async (sha256, serverEpoch) => {
      await pictures.update(sha256, { sentTo: serverEpoch });
    },
    tidy: async (nowMs) => {
      await pictures.where('untilMs').below(nowMs).delete();
    },
  };
}

/** What is over, and the oldest beyond the room. */
async function throwAway(
  pictures: Table<KeptPicture, string>,
  { megabytes }: Pick<PictureRoom, 'megabytes'>,
  nowMs: number,
): Promise<void> {
  await pictures.where('untilMs').below(nowMs).delete();
  const sizes: { readonly sha256: string; readonly size: number }[] = [];
  await pictures.orderBy('atMs').each(({ sha256, bytes }) => sizes.push({ sha256, size: bytes.byteLength }));
  let over = sizes.reduce((sum, { size }) => sum + size, 0) - megabytes * 1_000_000;
  const gone: string[] = [];
  for (const { sha256, size } of sizes) {
    if (over <= 0) break;
    gone.push(sha256);
    over -= size;
  }
  await pictures.bulkDelete(gone);
}

/** SHA-256 of bytes, hex. */
export async function shaOf(bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return bytesToHex(hash);
}

let opened: Pictures | null = null;

/** Those of this tablet, opened when first asked for. */
export function tabletPictures(): Pictures {
  opened ??= openPictures();
  return opened;
}
