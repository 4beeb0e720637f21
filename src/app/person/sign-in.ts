// Signing in and out, apart from the dialogs: a scanned badge must not wait until they are fetched, as what is scanned next would be written
// down as done by the person before.

import type { Person } from '../../../shared/floor/state.ts';
import type { App } from '../app.ts';
import { deviceClock } from '../device/clock.ts';
import { withWords } from '../words/fetch.ts';

/** How a person was made sure of. */
export interface MadeSure {
  readonly how: 'badge' | 'pin' | 'badge-and-pin' | 'name';
  /** Who checked it: the tablet alone where the server did not answer. */
  readonly checked: 'server' | 'tablet';
}

/** Signs a person in on this tablet and writes it down. */
export function signIn(app: App, person: Person, { how, checked }: MadeSure): void {
  app.preferences.value = {
    ...app.preferences.value,
    person: person.person,
    signedInMs: deviceClock.nowMs(),
  };
  const isUnproven = how === 'badge' && app.store.trust() !== null && !app.practice;
  // Once it is written: a notice goes with the next entry of this tablet, and must not go with this one.
  const next = () => {
    withWords(import('./badge-alone.ts')).then(
      ({ tellBadgeAlone }) => tellBadgeAlone(app, person),
      () => undefined, // out of reach: the log tells it
    );
  };
  app.record(
    [{ kind: 'person.signed-in', payload: { person: person.person, how, checked } }],
    isUnproven ? { next } : undefined,
  );
}

/** Keeps the language that a person wants to be spoken to, here and wherever they sign in. */
export function chooseLanguage(app: App, { person }: Person, language: string): void {
  app.record([{ kind: 'person.language-chosen', payload: { person, language } }]);
}

/** Signs a person out on this tablet and writes it down. `why`: the tablet did it, and for what; absent where the person did or a lead shut the tablet out. */
export function signOut(app: App, person: Person, why?: 'idle' | 'shift'): void {
  app.preferences.value = { ...app.preferences.value, person: null, signedInMs: null };
  const payload = { person: person.person, ...(why !== undefined && { why }) };
  app.record([{ kind: 'person.signed-out', payload }]);
}
