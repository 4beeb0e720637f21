// One entry on paper: what it says, and a code that proves it where there is a proof; else since when there is none.

import { generate } from 'lean-qr';
import { recordWords } from '../words/record.ts';
import { say } from '../words/words.ts';
import { squaresPath } from './Face.tsx';
import type { NoProof, PaperProof } from './record-proof.ts';
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
  proof: PaperProof | NoProof,
  { names, since, isThere }: { names: readonly string[]; since: string | null; isThere: boolean },
  format: (count: number) => string,
): readonly string[] {
  const words = say(recordWords);
  if (proof === 'not-there') return [words.waiting, words.later];
  if (proof === 'none') {
    const why = isThere ? words.noProof : since === null ? words.never : words.since(since);
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
  const dark = Array.from({ length: code.size ** 2 }, (_, at) =>
    code.get(at % code.size, Math.floor(at / code.size)),
  );
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
      <path d={squaresPath({ side: code.size, dark })} fill="#000" />
    </svg>
  );
}
