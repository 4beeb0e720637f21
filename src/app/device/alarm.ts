// Sound and vibration beside a loud machine: extras. The screen carries the warning; these only draw the eye to it.
// A browser plays nothing before the first tap, and may stop playing after a lock: the state is told, not hidden.

import { type ReadonlySignal, signal } from '@preact/signals';

/** Makes itself heard. */
export interface Alarm {
  /** True while sound can be heard (as far as the browser says). */
  readonly unlocked: ReadonlySignal<boolean>;
  /** One call; the louder the level the longer. */
  readonly call: (level: 'soon' | 'due' | 'late') => void;
}

const tones: Readonly<Record<'soon' | 'due' | 'late', readonly number[]>> = {
  soon: [660],
  due: [660, 880],
  late: [880, 660, 880, 660],
};
const TONE_S = 0.18;

/** Makes the alarm; the first tap unlocks it. `isOn` is asked at each call. */
export function createAlarm(isOn: () => boolean): Alarm {
  const unlocked = signal(false);
  let context: AudioContext | null = null;
  const unlock = () => {
    context ??= new AudioContext();
    void context.resume().then(() => {
      unlocked.value = context?.state === 'running';
    });
    context.onstatechange = () => {
      unlocked.value = context?.state === 'running';
    };
  };
  addEventListener('pointerdown', unlock, { passive: true });
  return {
    unlocked,
    call: (level) => {
      if (!isOn()) return;
      if (unlocked.value) navigator.vibrate?.(tones[level].map(() => TONE_S * 1000));
      if (context?.state !== 'running') return;
      tones[level].forEach((hertz, index) => {
        if (!context) return;
        const tone = context.createOscillator();
        const volume = context.createGain();
        const from = context.currentTime + index * (TONE_S + 0.06);
        tone.frequency.value = hertz;
        tone.type = 'triangle';
        volume.gain.setValueAtTime(0.0001, from);
        volume.gain.exponentialRampToValueAtTime(0.6, from + 0.02);
        volume.gain.exponentialRampToValueAtTime(0.0001, from + TONE_S);
        tone.connect(volume).connect(context.destination);
        tone.start(from);
        tone.stop(from + TONE_S);
      });
    },
  };
}
