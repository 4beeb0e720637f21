// A head of the log's tree with the proof that it begins with an earlier one: what a witness is handed.
// Source: C2SP tlog-witness, the body of add-checkpoint: `old` and the earlier size, the proof's hashes, a blank line, the checkpoint.

import { proofFromTexts, proofToTexts } from './tree-head.ts';

/** The head as a signed note, and the proof from the size before. */
export interface HeadGrowth {
  /** Leaves of the earlier head; 0 where there was none, which needs no proof. */
  readonly old: number;
  readonly proof: readonly Uint8Array[];
  readonly note: string;
}

/** Writes it. */
export function formatGrowth({ old, proof, note }: HeadGrowth): string {
  return `old ${old}\n${proofToTexts(proof)
    .map((line) => `${line}\n`)
    .join('')}\n${note}`;
}

/** Reads it; null where it is none. A note alone is a head without a proof. */
export function parseGrowth(text: string): HeadGrowth | null {
  if (!text.startsWith('old ')) return { old: 0, proof: [], note: text };
  const cut = text.indexOf('\n\n');
  if (cut < 0) return null;
  const [first = '', ...lines] = text.slice(0, cut).split('\n');
  const [, count] = /^old (0|[1-9]\d{0,15})$/.exec(first) ?? [];
  const proof = proofFromTexts(lines);
  const old = Number(count);
  if (count === undefined || !Number.isSafeInteger(old) || !proof) return null;
  return { old, proof, note: text.slice(cut + 2) };
}
