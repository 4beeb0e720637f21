// Work that follows from many small events: it begins when nothing more has come for a pause, after so long at the latest, and
// never twice at the same time. What is asked for while it works waits for its end.

export interface Paced {
  /** Something has come that the work has to see. */
  readonly ask: () => void;
  /** Works without a pause, once more where it works already; resolves at the end, with what broke that off. Nothing after a stop. */
  readonly now: () => Promise<Error | null>;
  readonly isStopped: () => boolean;
  /** Nothing begins any more; resolves when the work in hand is over. */
  readonly stop: () => Promise<void>;
}

export interface PacedParts {
  readonly work: () => Promise<void>;
  /** Told of what broke the work off, except after a stop. */
  readonly onFault: (error: Error) => void;
  /** The work begins when nothing was asked for so long, ms. */
  readonly pauseMs: number;
  /** It begins so long after the first that was asked, ms, though more comes. */
  readonly latestMs: number;
  /** Least time from one beginning to the next, ms. */
  readonly apartMs?: number;
}

/** A runner that begins nothing by itself. */
export function createPaced({ work, onFault, pauseMs, latestMs, apartMs = 0 }: PacedParts): Paced {
  let timer: NodeJS.Timeout | null = null;
  /** When the oldest was asked that no work has seen. */
  let firstMs: number | null = null;
  let begunMs = Number.NEGATIVE_INFINITY;
  let running: Promise<Error | null> | null = null;
  let isOnceMore = false;
  let isStopped = false;

  const once = async (): Promise<Error | null> => {
    isOnceMore = false;
    firstMs = null;
    begunMs = performance.now();
    try {
      await work();
      return null;
    } catch (error) {
      if (!isStopped) onFault(error as Error);
      return error as Error;
    }
  };
  const run = async (): Promise<Error | null> => {
    let fault = await once();
    while (isOnceMore && !isStopped) fault = await once();
    running = null;
    if (firstMs !== null) schedule();
    return fault;
  };
  const begin = (): Promise<Error | null> => {
    if (timer) clearTimeout(timer);
    timer = null;
    if (running) isOnceMore = true;
    else if (!isStopped) running = run();
    return running ?? Promise.resolve(null);
  };
  const schedule = () => {
    if (isStopped) return;
    const nowMs = performance.now();
    firstMs ??= nowMs;
    if (running) return;
    if (timer) clearTimeout(timer);
    const waitMs = Math.max(0, Math.min(pauseMs, firstMs + latestMs - nowMs), begunMs + apartMs - nowMs);
    timer = setTimeout(() => void begin(), waitMs);
    timer.unref();
  };

  return {
    ask: schedule,
    now: begin,
    isStopped: () => isStopped,
    stop: async () => {
      isStopped = true;
      if (timer) clearTimeout(timer);
      await running;
    },
  };
}
