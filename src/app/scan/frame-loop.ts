// The beat of the camera: grab, decode, tell, wait; one frame in flight, and an end by itself.
// Method: the next grab starts when the last answer is in and the beat has passed. Refused: a fixed interval, which piles
// frames up on a slow tablet.

import type { DecodeAnswer } from './decoder.ts';

export interface FrameLoopParts {
  /** Takes the current picture and reads it; null when the camera has none yet. */
  readonly look: () => Promise<DecodeAnswer | null>;
  /** Gets each answer; `true` says that something new was read, which keeps the camera on. */
  readonly tell: (answer: DecodeAnswer) => boolean;
  readonly onIdle: () => void;
  readonly onTrouble: (reason: unknown) => void;
  readonly nowMs: () => number;
  /** Calls back after a time; answers how to call it off. */
  readonly after: (ms: number, then: () => void) => () => void;
  /** Time from one grab to the next at least: 140 ms is about 7 frames a second. */
  readonly beatMs?: number;
  /** Stop after this long without anything new. */
  readonly idleMs?: number;
}

/** So many failed frames in a row are trouble, fewer are a hiccup. */
const MOST_FAILURES = 5;

/** Starts the loop at once. Answers how to stop it. */
export function runFrameLoop(parts: FrameLoopParts): () => void {
  const { beatMs = 140, idleMs = 30_000 } = parts;
  let isStopped = false;
  let callOff = () => {};
  let lastNewMs = parts.nowMs();
  let failures = 0;

  async function beat(): Promise<void> {
    const startMs = parts.nowMs();
    try {
      const answer = await parts.look();
      if (isStopped) return;
      if (answer !== null && parts.tell(answer)) lastNewMs = parts.nowMs();
      failures = 0;
    } catch (reason) {
      failures += 1;
      if (isStopped) return;
      if (failures >= MOST_FAILURES) {
        isStopped = true;
        parts.onTrouble(reason);
        return;
      }
    }
    if (isStopped) return;
    if (parts.nowMs() - lastNewMs >= idleMs) {
      isStopped = true;
      parts.onIdle();
      return;
    }
    callOff = parts.after(Math.max(0, beatMs - (parts.nowMs() - startMs)), () => void beat());
  }

  void beat();
  return () => {
    isStopped = true;
    callOff();
  };
}
