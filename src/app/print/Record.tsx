// One entry on paper: what it says, and a code that proves it where there is a proof; else since when there is none.

import { generate } from 'lean-qr';
import { recordWords } from '../words/record.ts';
import { say } from '../words/words.ts';
import type { PaperProof } from './record-proof.ts';
import './record.css';

/** What stands on the paper. */
export interface RecordPaper {
  readonly title: string;
  /** Names and what they say, in order. */
  readonly facts: readonly (readonly [name: string, text: string])[];
  readonly hash: string;
  /** What it proves, or why it does not. */
  readonly told: readonly string[];
  readonly proof: PaperProof | null;
}

/** Side of a square of the code, mm: what a phone and most scanners still read, and a code of 145 squares fits a page. */
const MODULE_MM = 0.45;
const QUIET = 4;

/** The lines about a proof. `names`: of the tablets that saw the log; `since`: when the server answered last, as text, null for never. */
export function toldOf(
  proof: PaperProof | null,
  { names, since, isThere }: { names: readonly string[]; since: string | null; isThere: boolean },
  format: (count: number) => string,
): readonly string[] {
  const words = say(recordWords);
  if (!proof) {
    const why = isThere ? words.waiting : since === null ? words.never : words.since(since);
    return [why, words.later];
  }
  const seen = names.length > 0 ? [words.seen(names.length, names.join(', '))] : [];
  return [words.proven(format(proof.place), format(proof.size)), ...seen, words.holds];
}

/** The page. */
export function Record({ title, facts, hash, told, proof }: RecordPaper) {
  return (
    <article class="record-page">
      <h1>{title}</h1>
      <table>
        <tbody>
          {facts.map(([name, text]) => (
            <tr key={name}>
              <th>{name}</th>
              <td>{text}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {told.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {proof && <RecordCode text={proof.text} />}
      <p class="record-hash" data-raw>
        {hash}
      </p>
      {proof && (
        <p class="record-hash" data-raw>
          {say(recordWords).key(proof.fingerprint)}
        </p>
      )}
    </article>
  );
}

function RecordCode({ text }: { readonly text: string }) {
  const code = generate(text);
  let path = '';
  for (let y = 0; y < code.size; y += 1)
    for (let x = 0; x < code.size; x += 1) {
      if (!code.get(x, y)) continue;
      const from = x;
      // A run of neighbours is one piece, so that no hairline shows between them.
      while (x + 1 < code.size && code.get(x + 1, y)) x += 1;
      path += `M${from} ${y}h${x + 1 - from}v1h-${x + 1 - from}z`;
    }
  const side = code.size + 2 * QUIET;
  const mm = `${(side * MODULE_MM).toFixed(1)}mm`;
  return (
    <svg
      class="record-code"
      role="presentation"
      width={mm}
      height={mm}
      viewBox={`${-QUIET} ${-QUIET} ${side} ${side}`}
      shape-rendering="crispEdges"
    >
      <path d={path} fill="#000" />
    </svg>
  );
}
