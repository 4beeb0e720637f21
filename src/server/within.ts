// A limit on how long something foreign is waited for.

/** The value that the promise resolves to, or `late` where it takes longer than `ms`: what comes of it later is dropped. Rejects as it does until then. */
export async function within<T, L>(promise: Promise<T>, ms: number, late: L): Promise<T | L> {
  let timer: NodeJS.Timeout | undefined;
  const over = new Promise<L>((resolve) => {
    timer = setTimeout(() => resolve(late), ms);
  });
  promise.catch(() => undefined); // once it is late, nobody else hears its fault
  try {
    return await Promise.race([promise, over]);
  } finally {
    clearTimeout(timer);
  }
}
