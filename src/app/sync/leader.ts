// One window of a tablet syncs; when it closes, the next takes over. The browser's lock manager decides, and lets go of a
// crashed window's lock by itself; a lock row in the database would not.

const LOCK = 'reelward-sync';

/** The part of the browser's lock manager that is needed. */
export interface Locks {
  readonly request: (
    name: string,
    options: { readonly signal: AbortSignal },
    run: () => Promise<void>,
  ) => Promise<unknown>;
}

/**
 * Runs `run` while this window is the one that syncs. Without a lock manager (an insecure page) it runs at once: the names of
 * entries keep two windows that both sync from harming anything.
 */
export async function asLeader(
  locks: Locks | null,
  signal: AbortSignal,
  run: () => Promise<void>,
): Promise<void> {
  if (!locks) return run();
  try {
    await locks.request(LOCK, { signal }, run);
  } catch (error) {
    if (!signal.aborted) throw error;
  }
}
