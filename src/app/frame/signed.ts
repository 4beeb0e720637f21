// What somebody decided is written down: where a passkey stands for the PIN, it signs first. Nothing is written where it does not.

import { signal } from '@preact/signals';
import type { App } from '../app.ts';
import type { SignableDraft } from '../person/sign-acts.ts';
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
