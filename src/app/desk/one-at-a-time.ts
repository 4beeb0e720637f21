// Hands things to a task that takes a while, one after the other: what comes in the meantime waits for its turn, so that nothing
// is judged against a state that is just being written. The same thing read twice while it is in hand counts once.

export interface OneAtATime<T> {
  /** Takes a thing now, or when those before it are done. */
  readonly give: (thing: T) => void;
  /** Forgets what still waits. */
  readonly clear: () => void;
}

/** `work` answers when it is done; a failure ends that thing only and is the work's own to tell. `isSame` finds double reads. */
export function oneAtATime<T>(
  work: (thing: T) => Promise<unknown>,
  isSame: (one: T, other: T) => boolean,
): OneAtATime<T> {
  let waiting: T[] = [];
  let inHand: T | null = null;
  async function run(thing: T): Promise<void> {
    let next: T | undefined = thing;
    while (next !== undefined) {
      inHand = next;
      await work(next).catch(() => undefined);
      next = waiting.shift();
    }
    inHand = null;
  }
  return {
    give(thing) {
      if (inHand === null) void run(thing);
      else if (!isSame(waiting.at(-1) ?? inHand, thing)) waiting.push(thing);
    },
    clear() {
      waiting = [];
    },
  };
}
