// The sync loop of one tablet: offer, push, pull, listen; then again, after a wait where it failed. Never awaited by a
// screen, and nothing here deletes anything: what the server has acknowledged only stops being offered.

import { finalCodes, isAskedLater, longestWaitMs, waitAfter } from './backoff.ts';
import type { Caller, CallFailure } from './http.ts';
import { createCaller } from './http.ts';
import { listen } from './live.ts';
import { sayOtherPlant } from './other-plant.ts';
import { noStatus, type SyncKey, type SyncLog, type SyncStatus, type SyncWorld } from './ports.ts';
import { createSyncSteps, type SyncSteps } from './steps.ts';
import type { BroughtHead } from './witness.ts';

export interface SyncOptions {
  readonly log: SyncLog;
  readonly key: SyncKey;
  readonly world: SyncWorld;
  /** Told of every change of the status. */
  readonly onStatus: (status: SyncStatus) => void;
  /** Raised to stop for good. */
  readonly signal: AbortSignal;
}

/** A running loop. */
export interface SyncLoop {
  /** Ends the present wait: the tablet became visible, came online, or a person asked. */
  readonly now: () => void;
  /** A person took note that the server's log went back. */
  readonly tookNote: () => void;
  /** Checks a head that another tablet was shown. */
  readonly bring: (note: string) => Promise<BroughtHead>;
  readonly done: Promise<void>;
}

/** Starts the loop; the caller holds the tablet's lock, so that one window syncs. */
export function startSync(options: SyncOptions): SyncLoop {
  let wake = () => {};
  let note = () => {};
  let bring = async (_: string): Promise<BroughtHead> => 'not-checked';
  const status = createStatus(options);
  const loop = async () => {
    const memory = await options.log.readMemory();
    if (!memory.enrolled) {
      status({ phase: 'alone', reason: null, againMs: null });
      return;
    }
    status({
      rolledBackMs: memory.rolledBackMs,
      headFault: memory.headFault,
      quarantinedHere: (await options.log.quarantine?.([])) ?? 0,
    });
    const caller = createCaller(options.world, options.key, {
      clockOffMs: memory.clockOffMs,
      signal: options.signal,
      onAnswer: () => status({ lastAnswerMs: options.world.nowMs() }),
    });
    const steps = createSyncSteps({ ...options, caller, memory, status });
    note = () => void steps.tookNote().catch(() => undefined); // a log that fails tells so itself
    bring = steps.bring;
    // Counted also while the server is away: that is when people ask what waits.
    const count = () => void steps.tellBacklog().catch(() => undefined); // a log that fails tells so itself
    const unwatch = options.log.onAppend(count);
    options.signal.addEventListener('abort', unwatch);
    count();
    for (let failures = 0; !options.signal.aborted; ) {
      status({ phase: 'syncing', againMs: null });
      const met = await runOnce(options, {
        steps,
        caller,
        onLive: () => {
          failures = 0;
          status({ phase: 'live', reason: null });
        },
      });
      const readOwn = async () => (await options.log.readMemory()).enrolled;
      const failure = met && (await sayOtherPlant(met, readOwn, caller));
      status({ clockOffMs: caller.clockOffMs() });
      if (options.signal.aborted) break;
      if (failure?.code === 'tablet-revoked') await options.log.forgetPlant?.();
      const final = failure !== null && finalCodes.has(failure.code);
      const waitMs = waitFor(failure, failures, options.world.chance());
      failures += 1;
      status({
        phase: final ? 'refused' : 'waiting',
        reason: failure?.code ?? null,
        againMs: options.world.nowMs() + waitMs,
      });
      await sleepUntilWoken(options, waitMs, (stop) => {
        wake = stop;
      });
    }
  };
  return { now: () => wake(), tookNote: () => note(), bring: (text) => bring(text), done: loop() };
}

function waitFor(failure: CallFailure | null, failures: number, chance: number): number {
  // A refusal is asked about again now and then: a lead may have let the tablet in meanwhile.
  if (failure !== null && isAskedLater(failure.code)) return longestWaitMs * (0.5 + chance / 2);
  const jittered = waitAfter(failures, chance);
  return failure?.retryAfterMs == null ? jittered : Math.max(failure.retryAfterMs, jittered);
}

async function sleepUntilWoken(
  { world, signal }: SyncOptions,
  waitMs: number,
  keep: (stop: () => void) => void,
): Promise<void> {
  const woken = new AbortController();
  const stop = () => woken.abort();
  keep(stop);
  signal.addEventListener('abort', stop);
  await world.sleep(waitMs, woken.signal);
  signal.removeEventListener('abort', stop);
}

/** One go: all there is, then live until the stream ends. Null where the stream ended by itself. */
async function runOnce(
  options: SyncOptions,
  parts: { readonly steps: SyncSteps; readonly caller: Caller; readonly onLive: () => void },
): Promise<CallFailure | null> {
  const { steps, caller } = parts;
  const failure = (await steps.start()) ?? (await steps.push()) ?? (await steps.pull());
  if (failure) return failure;
  return listen({ log: options.log, signal: options.signal, steps, caller, onLive: parts.onLive });
}

function createStatus(options: SyncOptions): (change: Partial<SyncStatus>) => void {
  let now = noStatus;
  return (change) => {
    now = { ...now, ...change };
    options.onStatus(now);
  };
}
