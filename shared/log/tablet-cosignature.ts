// What a tablet of the plant says under a head that it checked: that the log grew from the one it saw before, and when. A line more in the
// signed note, by the very key that signs the tablet's entries, so that the plant's signed list says whose it is.
// Source: C2SP signed-note: signature types without a number of their own are 0xff and a name that nobody else has. The form of C2SP
// tlog-cosignature was refused: it takes Ed25519, which a tablet of some years ago has not, and a second key would have to be tied to the
// tablet by something that is on no paper. Others' tools pass over such a line, as the form asks of them.

import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { fromBase64Url, toBase64Url } from '../kit/base64.ts';
import { bytesToHex } from './bytes.ts';
import { type Cosignature, cosignatureBytes, readCosignature } from './cosignature.ts';
import { type Note, signatureLine } from './note.ts';
import type { ListedKey } from './plant-list.ts';

/** A tablet and its P-256 point, 65 bytes, base64url. */
export interface TabletKey {
  readonly tablet: string;
  readonly key: string;
}

const OWN_TYPE = 0xff;
const TYPE_NAME = 'reelward tablet cosignature v1';

/** Cosignatures in one note: with the plant's two as many signatures as every reader of the form takes. */
export const cosignaturesMost = 14;

/** True where a tablet's name can stand in a note. */
export function canWitness(tablet: string): boolean {
  return /^[^\s+]+$/u.test(tablet);
}

/** The four bytes that name a tablet's key beside its name, lower-case hex. */
export function tabletKeyId({ tablet, key }: TabletKey): string {
  const point = fromBase64Url(key) ?? new Uint8Array();
  const name = utf8ToBytes(`${tablet}\n`);
  return bytesToHex(
    sha256(Uint8Array.of(...name, OWN_TYPE, ...utf8ToBytes(TYPE_NAME), ...point)).subarray(0, 4),
  );
}

/** The text whose UTF-8 bytes a tablet signs (ECDSA, SHA-256). `note`: the text of the note, `seconds`: since 1970. */
export function tabletCosignedText(note: string, seconds: number): string {
  return `${TYPE_NAME}\ntime ${seconds}\n${note}`;
}

/** The note with the cosignature below its other lines. `sig`: 64 bytes, base64url. */
export function addTabletCosignature(
  note: string,
  key: TabletKey,
  { seconds, sig }: { readonly seconds: number; readonly sig: string },
): string {
  const bytes = fromBase64Url(sig) ?? new Uint8Array();
  return note + signatureLine(key.tablet, tabletKeyId(key), cosignatureBytes({ seconds, bytes }));
}

/** A cosignature that says it is by a listed key: the caller checks `sig` over `text`. */
export interface TabletSaid extends Pick<Cosignature, 'seconds'> {
  readonly listed: ListedKey;
  readonly text: string;
  /** 64 bytes, base64url. */
  readonly sig: string;
}

/** Cosignatures that say they are by a key of the list; those of anybody else count for nothing and are left out. */
export function tabletsSaid(note: Note, listed: readonly ListedKey[]): readonly TabletSaid[] {
  return note.signatures.flatMap(({ name, id, bytes }) => {
    const key = listed.find((one) => one.tablet === name && tabletKeyId(one) === id);
    if (!key) return [];
    return readCosignature(bytes).map(({ seconds, bytes: signature }) => ({
      listed: key,
      seconds,
      text: tabletCosignedText(note.text, seconds),
      sig: toBase64Url(signature),
    }));
  });
}

/** True where the tablet was no longer the plant's when it says that it signed. */
export function wasShutOut({ listed: { until }, seconds }: TabletSaid): boolean {
  return until !== null && seconds * 1000 >= Date.parse(until);
}
