// What time is it? The one answer for forecasts, warnings and entries: the tablet's clock as a person reads it, as long as it runs on
// evenly; where it jumps, the last reading goes on by time elapsed, and the jump is told. The clock alone was refused: set back an
// hour it takes every warning with it. Elapsed time alone was refused: it stands still while a tablet sleeps.

import { type ReadonlySignal, signal } from '@preact/signals';

/** Tells the time. */
export interface Clock {
  /** Milliseconds since 1970. */
  readonly nowMs: () => number;
  /** The tablet's clock as it stands, right or wrong; absent where it is the same. */
  readonly wallMs?: () => number;
  /** True once the server told its time; absent where nobody does. */
  readonly isSure?: () => boolean;
}

/** The real clock. */
export const deviceClock: Clock = { nowMs: () => Date.now() };

/** What is wrong with the tablet's clock. `log`: behind the newest entry known; `server`: unlike the server's. */
export interface ClockSlip {
  readonly kind: 'back' | 'ahead' | 'behind-log' | 'behind-server' | 'ahead-of-server';
  readonly byMs: number;
  /** The reading when it was noticed. */
  readonly atMs: number;
}

/** A reading, and what the next one goes on from. */
export interface Reading {
  readonly nowMs: number;
  /** Elapsed time when it was taken. */
  readonly elapsedMs: number;
  /** What is added to the tablet's clock; 0 while it is believed. */
  readonly heldMs: number;
  readonly slip: ClockSlip | null;
}

/** A look at both clocks of a tablet. `elapsedMs`: grows evenly from any beginning; it may stand still while the tablet sleeps. */
export interface ClockLook {
  readonly wallMs: number;
  readonly elapsedMs: number;
}

/** Steps up to this are a clock being kept right: none is told, and the reading waits instead of going back. */
export const CLOCK_STEP_MS = 60_000;
/** A clock further ahead than a tablet usually sleeps; below that nobody can tell the two apart, and the clock is believed. */
export const CLOCK_AHEAD_MS = 2 * 3_600_000;

/** The first reading: there is only the clock to believe. */
export function firstReading({ wallMs, elapsedMs }: ClockLook): Reading {
  return { nowMs: wallMs, elapsedMs, heldMs: 0, slip: null };
}

/** The reading after `last`. Never earlier than that. */
export function nextReading(last: Reading, { wallMs, elapsedMs }: ClockLook): Reading {
  const expectedMs = last.nowMs + Math.max(0, elapsedMs - last.elapsedMs);
  const at = (nowMs: number, heldMs: number, slip: ClockSlip | null): Reading => {
    return { nowMs: Math.max(last.nowMs, nowMs), elapsedMs, heldMs, slip };
  };
  if (last.heldMs !== 0 && Math.abs(wallMs - expectedMs) <= CLOCK_STEP_MS) return at(wallMs, 0, null); // set right
  const jumpMs = wallMs + last.heldMs - expectedMs;
  if (jumpMs < -CLOCK_STEP_MS) {
    const heldMs = expectedMs - wallMs;
    const kind = heldMs > 0 ? 'back' : 'ahead-of-server';
    return at(expectedMs, heldMs, { kind, byMs: Math.abs(heldMs), atMs: expectedMs });
  }
  if (jumpMs > CLOCK_AHEAD_MS && last.heldMs === 0)
    return at(wallMs, 0, { kind: 'ahead', byMs: jumpMs, atMs: expectedMs });
  return at(wallMs + last.heldMs, last.heldMs, last.slip);
}

/** The reading once an entry of a later moment is known: what happened has happened. */
export function afterEntry(last: Reading, look: ClockLook, entryMs: number): Reading {
  const now = nextReading(last, look);
  if (entryMs <= now.nowMs) return now;
  const byMs = entryMs - look.wallMs;
  if (entryMs - now.nowMs <= CLOCK_STEP_MS) return { ...now, nowMs: entryMs };
  return { ...now, nowMs: entryMs, heldMs: byMs, slip: { kind: 'behind-log', byMs, atMs: entryMs } };
}

/** The reading once the server told its time, which is believed before all else; the only one that may lie before `last`. */
export function afterServer(last: Reading, look: ClockLook, serverMs: number): Reading {
  const { elapsedMs, wallMs } = look;
  const offMs = serverMs - wallMs;
  if (Math.abs(offMs) <= CLOCK_STEP_MS) return { nowMs: wallMs, elapsedMs, heldMs: 0, slip: null };
  const kind = offMs > 0 ? 'behind-server' : 'ahead-of-server';
  const isKnown = last.slip?.kind === kind;
  const slip = {
    kind,
    byMs: Math.abs(offMs),
    atMs: isKnown ? (last.slip?.atMs ?? serverMs) : serverMs,
  } as const;
  return { nowMs: serverMs, elapsedMs, heldMs: offMs, slip };
}

/** A clock that notices where it is set wrong. */
export interface SteadyClock extends Clock {
  /** What is wrong with the tablet's clock; null while nothing is. */
  readonly slip: ReadonlySignal<ClockSlip | null>;
  /** An entry of this moment is known. */
  readonly sawEntry: (entryMs: number) => void;
  /** The server told its time just now. */
  readonly sawServer: (serverMs: number) => void;
  /** A person says that the clock is right though it went ahead: the tablet slept. */
  readonly trust: () => void;
}

/** Makes the clock; `look` reads the tablet. */
export function createSteadyClock(
  look: () => ClockLook = () => ({ wallMs: Date.now(), elapsedMs: performance.now() }),
): SteadyClock {
  let last = firstReading(look());
  /** Once the server told its time, an entry that lies after it comes from a tablet whose clock is wrong. */
  let isServerKnown = false;
  const slip = signal<ClockSlip | null>(null);
  const take = (reading: Reading) => {
    last = reading;
    if (slip.peek() !== reading.slip) slip.value = reading.slip;
    return reading.nowMs;
  };
  return {
    slip,
    nowMs: () => take(nextReading(last, look())),
    wallMs: () => look().wallMs,
    isSure: () => isServerKnown,
    sawEntry: (entryMs) => {
      if (!isServerKnown) take(afterEntry(last, look(), entryMs));
    },
    sawServer: (serverMs) => {
      isServerKnown = true;
      take(afterServer(last, look(), serverMs));
    },
    trust: () => {
      if (last.slip?.kind === 'ahead') take({ ...last, slip: null });
    },
  };
}
/** A clock that only grows and cannot be set, ms since the page was opened; some tablets let it stand while they sleep. */
export const elapsedClock: Clock = { nowMs: () => performance.now() };
