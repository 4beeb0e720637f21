// Long work in short slices: the page goes on drawing and answering between them. What is done is cut into steps, each far shorter than a frame, by
// whoever knows it; a slice takes as many as fit. A worker was refused for what the page's own memory holds: to hand it over costs more than the work.

/** A slice goes on for so long, ms: half a frame, so that what a finger does in the other half is drawn with it. */
const SLICE_MS = 8;

/** Takes steps until there is none or the slice is over; what they came to, or undefined where there are more. */
export function takeSlice<T>(steps: Iterator<undefined, T>): { readonly came: T } | undefined {
  const untilMs = performance.now() + SLICE_MS;
  do {
    const step = steps.next();
    if (step.done === true) return { came: step.value };
  } while (performance.now() < untilMs);
  return undefined;
}

/** What the steps come to: by one slice at once where that is enough, else slice after slice. Rejects with what a step throws. */
export async function bySlices<T>(steps: Iterator<undefined, T>): Promise<T> {
  for (;;) {
    const done = takeSlice(steps);
    if (done !== undefined) return done.came;
    await othersTurn();
  }
}

/** Resolves after what the browser has to do meanwhile. By a message: a timer would be held back in a row of many. */
function othersTurn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** Takes slice after slice, the first after what the browser has to do now, and tells what the steps came to. Answers with what stops it. */
export function inSlices<T>(steps: Iterator<undefined, T>, take: (came: T) => void): () => void {
  let isStopped = false;
  const goOn = async () => {
    for (;;) {
      await othersTurn();
      if (isStopped) return;
      const done = takeSlice(steps);
      if (done !== undefined) return take(done.came);
    }
  };
  void goOn(); // what a step throws is told as any fault of the page
  return () => {
    isStopped = true;
  };
}
