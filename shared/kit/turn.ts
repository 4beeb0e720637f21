// One after the other, where two at once would write over what the other read.

/** Opens a queue: each piece of work begins when the one before it is over, failed or not, and its outcome goes to whoever asked. */
export function openTurn(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const done = last.then(work);
    last = done.catch(() => undefined); // told to whoever asked
    return done;
  };
}
