// The head of the log's tree as a text that a plant signs: a checkpoint of a transparency log, in the open form.
// Source: C2SP tlog-checkpoint: origin, size, root in base64, a line each. It carries no time: a head is older or newer by its size.

import { fromBase64, toBase64 } from '../kit/base64.ts';
import type { TreeHead } from './tree.ts';

/** A head and whose log it is of. */
export interface SignedHead extends TreeHead {
  /** The name of the key that signs it. */
  readonly origin: string;
}

/** The text of a note. */
export function treeHeadText({ origin, size, root }: SignedHead): string {
  return `${origin}\n${size}\n${toBase64(root)}\n`;
}

/** Reads the text of a note; null where it is no head. Lines after the third are somebody else's, and are not looked at. */
export function parseTreeHead(text: string): SignedHead | null {
  const [origin = '', count = '', base64 = '', ...rest] = text.split('\n');
  const root = fromBase64(base64);
  const size = /^(0|[1-9]\d{0,15})$/.test(count) ? Number(count) : Number.NaN;
  if (origin === '' || !Number.isSafeInteger(size) || root?.length !== 32 || rest.length === 0) return null;
  return { origin, size, root };
}

/** A proof as it travels: its hashes in base64. */
export function proofToTexts(proof: readonly Uint8Array[]): string[] {
  return proof.map(toBase64);
}

/** Hashes in a proof: as many as a log of 2^63 entries takes. */
const PROOF_MOST = 63;

/** Reads a proof; null where one of its hashes is none, or where there are more than any log takes. */
export function proofFromTexts(texts: readonly string[]): readonly Uint8Array[] | null {
  if (texts.length > PROOF_MOST) return null;
  const proof: Uint8Array[] = [];
  for (const text of texts) {
    const hash = fromBase64(text);
    if (hash?.length !== 32) return null;
    proof.push(hash);
  }
  return proof;
}
