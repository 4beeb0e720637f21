// What somebody decided is written down: where a passkey stands for the PIN, it signs first. Nothing is written where it does not.
// And what the person signed in does: who has a passkey here is asked for it where the act is one that a passkey may sign.

import { signal } from '@preact/signals';
import type { Draft } from '../../../shared/floor/draft.ts';
import { passkeysOf } from '../../../shared/floor/passkeys-of.ts';
import { signedInKinds } from '../../../shared/floor/signed-kinds.ts';
import type { App } from '../app.ts';
import { pageHost, passkeysHere } from '../device/passkey.ts';
import type { SignableDraft } from '../person/sign-acts.ts';
import { peopleWords } from '../words/people.ts';
import { say } from '../words/words.ts';
import type { Sure } from './confirmed.ts';

/** Whose passkey was asked last and did not sign; null where none failed. */
export const notSigned = signal<Sure | null>(null);

/** The drafts as they are to be written, signed where that was chosen; null where no passkey signed (`notSigned`). */
export async function signed(
  app: App,
  sure: Sure,
  drafts: readonly SignableDraft[],
): Promise<Parameters<App['write']>[0] | null> {
  notSigned.value = null;
  if (!sure.byPasskey) return drafts;
  const given = await import('../person/sign-acts.ts')
    .then(({ signActs }) => signActs(app, sure.person.person, drafts))
    .catch(() => null); // out of reach
  if (given === null) notSigned.value = sure;
  return given;
}

/** Writes what nobody waits for, as `app.record`. */
export function recordSigned(
  app: App,
  sure: Sure,
  drafts: readonly SignableDraft[],
  after: Parameters<App['record']>[1],
): void {
  const write = (given: Parameters<App['write']>[0] | null) => {
    if (given !== null) app.record(given, after);
  };
  if (sure.byPasskey) void signed(app, sure, drafts).then(write);
  else write(drafts);
}

/** Writes what the person signed in does, as `app.record`; signed by a passkey where that person has one here and the act is one to sign. */
export function recordOwn(app: App, drafts: readonly Draft[], after: Parameters<App['record']>[1]): void {
  const person = app.person.peek()?.person;
  if (person === undefined || !asksPasskey(app, person, drafts)) {
    app.record(drafts, after);
    return;
  }
  const words = say(peopleWords);
  const write = (given: readonly Draft[] | null) => {
    if (given !== null) {
      app.record(given, after);
      return;
    }
    // A key that was left at home must not stop a line: it goes on without, and the entry shows that.
    const act = { label: words.withoutPasskey, run: () => app.record(drafts, after) };
    app.notice.value = { tone: 'care', text: words.ownNotSigned, act };
  };
  import('../person/sign-acts.ts')
    .then(({ signOwn }) => signOwn(app, person, drafts))
    .then(write, () => write(null));
}

function asksPasskey(app: App, person: string, drafts: readonly Draft[]): boolean {
  const isOne = (draft: Draft) =>
    typeof draft !== 'function' && (signedInKinds as readonly string[]).includes(draft.kind);
  if (app.practice !== null || passkeysHere() !== 'here' || !drafts.some(isOne)) return false;
  return passkeysOf(app.store.floor().passkeys, person, pageHost()).length > 0;
}
