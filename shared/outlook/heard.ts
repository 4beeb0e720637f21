// When was a line last heard of, who acted on it last, and when did each tablet last write? Told by entries alone: a tablet that writes nothing
// may be off, or have nothing to say, and nobody can tell which.

import type { Entry } from '../log/entry.ts';

/** When something was last heard, ms since 1970. */
export interface LastHeard {
  readonly atMs: number;
  /** Who acted; null where nobody was signed in, or no person acts. */
  readonly who: string | null;
}

/** What was heard. */
export interface HeardOf {
  /** Line -> its newest entry. */
  readonly lines: Map<string, LastHeard>;
  /** Line -> the newest act of a person on it. */
  readonly acts: Map<string, LastHeard & { readonly who: string }>;
  /** Tablet -> its newest entry. */
  readonly tablets: Map<string, number>;
}

/** Before anything was heard. */
export function nothingHeard(): HeardOf {
  return { lines: new Map(), acts: new Map(), tablets: new Map() };
}

/** Takes an entry in, in whatever order it comes. */
export function hear({ lines, acts, tablets }: HeardOf, { hlc, who, tablet, payload }: Entry): void {
  const atMs = hlc.ms;
  if (atMs > (tablets.get(tablet) ?? Number.NEGATIVE_INFINITY)) tablets.set(tablet, atMs);
  const line = payload['line'];
  if (typeof line !== 'string') return;
  if (atMs > (lines.get(line)?.atMs ?? Number.NEGATIVE_INFINITY)) lines.set(line, { atMs, who });
  if (who !== null && atMs > (acts.get(line)?.atMs ?? Number.NEGATIVE_INFINITY))
    acts.set(line, { atMs, who });
}
