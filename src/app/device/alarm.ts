// Sound and vibration beside a loud machine: extras, each without the other where only one is to be had. The screen carries the warning; these
// only draw the eye to it. A browser plays nothing before the first tap, and may stop playing after a lock: the state is told, not hidden.

import { type ReadonlySignal, signal } from '@preact/signals';

/** What is heard: a warning by its level; at the line's exit whether a panel was counted, or nothing is. */
type Tone = 'soon' | 'due' | 'late' | 'counted' | 'not-counted';

/** Makes itself heard. */
export interface Alarm {
  /** True while sound can be heard (as far as the browser says). */
  readonly unlocked: ReadonlySignal<boolean>;
  /** One call; the louder the level of a warning the longer. */
  readonly call: (tone: Tone) => void;
  /** One tone of a call, to know it by: now where sound can be heard, else once as soon as a touch or a key unlocked it. */
  readonly callOnceHeard: () => void;
  /** A tone that a person asked for by a touch, which is what a browser wants before it plays any; sounds in quiet hours too. */
  readonly test: () => void;
}

/** When it may be heard or felt; asked at each call. */
export interface AlarmSettings {
  /** False where nothing is to call at all, as in quiet hours. */
  readonly mayCall: () => boolean;
  /** False where calls are felt and not heard. */
  readonly hasSound: () => boolean;
}

/** Hz, one after the other. What is heard with each panel lies apart from warnings in pitch, so that neither is taken for the other. */
const tones: Readonly<Record<Tone, readonly number[]>> = {
  soon: [660],
  due: [660, 880],
  late: [880, 660, 880, 660],
  counted: [1760],
  'not-counted': [330, 220],
};
const TONE_S = 0.18;
const PAUSE_S = 0.06;
/** Vibration and pause in turn, ms: a pulse a tone of a warning; of what is scanned at the exit a touch, or one long pulse. */
const pulses: Readonly<Record<Tone, readonly number[]>> = {
  soon: [180],
  due: [180, 60, 180],
  late: [180, 60, 180, 60, 180, 60, 180],
  counted: [40],
  'not-counted': [500],
};
/** A press is over by then, and what a scan came to is shown, ms. Within the second for which browsers that want a touch at hand count it through a timer (from memory). */
const SETTLED_MS = 600;

/** Makes the alarm; the first tap or key unlocks it, and a scanner that types is a keyboard. */
export function createAlarm({ mayCall, hasSound }: AlarmSettings): Alarm {
  const unlocked = signal(false);
  let context: AudioContext | null = null;
  let isAwaited = false;
  const soundAwaited = () => {
    if (!isAwaited || context?.state !== 'running') return;
    isAwaited = false;
    if (mayCall() && hasSound()) sound('soon');
  };
  // Not under the finger: what is drawn with it would move between press and release, and the press would be lost.
  const tell = () => {
    setTimeout(() => {
      unlocked.value = context?.state === 'running';
    }, SETTLED_MS);
  };
  const unlock = async (): Promise<void> => {
    if (context === null) {
      context = new AudioContext();
      context.onstatechange = () => {
        soundAwaited();
        tell();
      };
    }
    if (context.state !== 'running') await context.resume();
    soundAwaited();
    tell();
  };
  let isComing = false;
  // To make the first player of a page takes a cheap tablet a tenth of a second: not while what was touched or scanned is waited for.
  const unlockSoon = () => {
    if (isComing) return;
    isComing = true;
    setTimeout(() => {
      isComing = false;
      // A finger that still lies there has touched nothing yet: the next one will.
      if (navigator.userActivation?.hasBeenActive !== false) unlock().catch(() => undefined); // still locked, and said to be
    }, SETTLED_MS);
  };
  const tryUnlock = () => {
    // A scanner types dozens of keys a scan: once unlocked, none of them does anything.
    if (unlocked.peek() && context?.state === 'running') return;
    if (context === null) unlockSoon();
    else unlock().catch(() => undefined); // still locked, and said to be
  };
  const sound = (tone: Tone) => {
    vibrate(tone);
    if (context?.state === 'running') play(context, tones[tone]);
  };
  addEventListener('pointerdown', tryUnlock, { passive: true });
  // On their way down: a scanner's keys are kept from the page.
  addEventListener('keydown', tryUnlock, { passive: true, capture: true });
  return {
    unlocked,
    call: (tone) => {
      if (!mayCall()) return;
      if (hasSound()) sound(tone);
      else vibrate(tone);
    },
    callOnceHeard: () => {
      isAwaited = true;
      soundAwaited();
    },
    test: () => {
      isAwaited = false; // it is heard now, by another tone
      unlock().then(
        () => sound('due'),
        () => undefined, // still locked, and said to be
      );
    },
  };
}

/** Where the browser has it. It wants a touch or key first, and complains where there was none. */
function vibrate(tone: Tone): void {
  if (navigator.userActivation?.hasBeenActive !== false) navigator.vibrate?.([...pulses[tone]]);
}

function play(context: AudioContext, tones: readonly number[]): void {
  for (const [index, hertz] of tones.entries()) {
    const tone = context.createOscillator();
    const volume = context.createGain();
    const from = context.currentTime + index * (TONE_S + PAUSE_S);
    tone.frequency.value = hertz;
    tone.type = 'triangle';
    volume.gain.setValueAtTime(0.0001, from);
    volume.gain.exponentialRampToValueAtTime(0.6, from + 0.02);
    volume.gain.exponentialRampToValueAtTime(0.0001, from + TONE_S);
    tone.connect(volume).connect(context.destination);
    tone.start(from);
    tone.stop(from + TONE_S);
  }
}
