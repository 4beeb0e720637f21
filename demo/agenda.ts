// What the simulated hands will have finished, and when. Method: a short list kept in order of time; whoever moves the clock
// on runs what falls due before it, so that entries are always written in the order of their moments.

/** A list of things that fall due. */
export interface Agenda {
  /** Puts a thing on the list; it is told the moment when it is done. */
  readonly at: (dueMs: number, act: (dueMs: number) => void) => void;
  /** Does all that falls due up to a moment, in order of time, then of entry. */
  readonly advance: (toMs: number) => void;
}

/** An empty agenda. */
export function createAgenda(): Agenda {
  const waiting: { readonly dueMs: number; readonly act: (dueMs: number) => void }[] = [];
  return {
    at: (dueMs, act) => {
      let index = waiting.length;
      while (index > 0 && (waiting[index - 1]?.dueMs ?? 0) > dueMs) index -= 1;
      waiting.splice(index, 0, { dueMs, act });
    },
    advance: (toMs) => {
      for (let next = waiting[0]; next && next.dueMs <= toMs; next = waiting[0]) {
        waiting.shift();
        next.act(next.dueMs);
      }
    },
  };
}
