// Says each verdict aloud, and the next slot, for hands that are full. Off until somebody turns it on; the screen carries the verdict.

import { effect, untracked } from '@preact/signals';
import type { App } from '../app.ts';
import type { DeskRun, ShownVerdict } from '../desk/desk.ts';
import { ownSpeaker } from '../device/speech.ts';
import { wishedLanguage } from '../spoken.ts';
import { nextSaid } from './next-said.ts';
import { verdictTitle } from './verdict-title.ts';

/** A code as a voice can read it: its parts one by one. */
export function spokenCode(code: string): string {
  return code.replace(/[-_./:\s]+/g, ' ').trim();
}

/** What is said of a verdict: how it came out, on which slot, and after a load which slot is next. */
export function spokenVerdict(shown: ShownVerdict): string {
  const parts = [verdictTitle(shown), spokenCode(shown.slot ?? '')];
  if (shown.verdict === 'accepted' && shown.act === 'load') parts.push(nextSaid(shown, spokenCode));
  return parts.filter((part) => part !== '').join('. ');
}

/** Starts speaking. */
export function speakVerdicts(app: App, desk: Pick<DeskRun, 'shown'>, speaker = ownSpeaker()): void {
  effect(() => {
    const shown = desk.shown.value;
    if (shown === null || !app.preferences.peek().spoken) return;
    // Once a verdict: who signs in, or chooses a language, while it stands does not hear it again.
    untracked(() => speaker.speak(spokenVerdict(shown), wishedLanguage(app)));
  });
}
