// Keeps the screen on while somebody works with the tablet: a warning on a dark screen is seen by nobody. A browser may refuse, or let go
// by itself when the page is hidden; how it stands is told, not assumed.

import { effect, type Signal } from '@preact/signals';

/** How it stands: held; not wanted now; wanted and refused (a low battery, a setting); or not known to this browser. */
export type Awake = 'held' | 'free' | 'refused' | 'unsupported';

/** Keeps the screen on while `isWanted` says so, which reads signals; tells `state`, free until then. */
export function keepAwake(state: Signal<Awake>, isWanted: () => boolean): void {
  if (!('wakeLock' in navigator)) {
    state.value = 'unsupported';
    return;
  }
  let lock: WakeLockSentinel | null = null;
  let wanted = false;
  let isAsking = false;
  async function follow(): Promise<void> {
    if (isAsking) return;
    isAsking = true;
    try {
      if (!wanted) {
        await lock?.release();
        state.value = 'free';
      } else if (lock === null && document.visibilityState === 'visible') {
        const held = await navigator.wakeLock.request('screen');
        lock = held;
        held.addEventListener('release', () => {
          if (lock === held) lock = null;
          if (state.peek() === 'held') state.value = 'free';
        });
        state.value = 'held';
      }
    } catch {
      state.value = 'refused';
    } finally {
      isAsking = false;
    }
    if (wanted !== (lock !== null) && state.peek() !== 'refused' && document.visibilityState === 'visible')
      void follow();
  }
  effect(() => {
    wanted = isWanted();
    void follow();
  });
  document.addEventListener('visibilitychange', () => void follow());
}
