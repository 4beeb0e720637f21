// Is this that person? Badge or name, and the PIN where one is set, counted before it is looked at: five wrong in a row
// lock the person for a while, on whichever tablet they were tried.

import { pbkdf2, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';
import { pinLockMs, pinTries } from '../../../shared/wire/limits.ts';
import type { PersonCheck } from '../../../shared/wire/messages.ts';
import { Refused } from '../http/refuse.ts';
import type { Store } from '../stores/store.ts';
import type { KnownPerson } from './known.ts';

const derive = promisify(pbkdf2);

/** More rounds than this in an entry would only serve to keep the server busy. */
const ROUNDS_MOST = 5_000_000;

/** Finds and checks a person, or refuses. `pinChecked` is false where no PIN was given or none is set. */
export async function checkPerson(
  claim: PersonCheck,
  people: ReadonlyMap<string, KnownPerson>,
  context: { readonly store: Store; readonly nowMs: number },
): Promise<{ readonly person: KnownPerson; readonly pinChecked: boolean }> {
  const person = findPerson(claim, people);
  if (!person) throw new Refused('person-unproven', 'no such badge');
  if (claim.pin === null) {
    // A name alone proves nothing: whoever has a PIN needs it, and whoever has none needs the badge.
    if (claim.badge === null) throw new Refused('person-unproven', 'badge or PIN is wanted');
    return { person, pinChecked: false };
  }
  if (!person.pin) throw new Refused('pin-wrong', 'no PIN is set for this person');
  const tries = await context.store.countTry(person.person, context.nowMs, {
    tries: pinTries,
    lockMs: pinLockMs,
  });
  if (tries.lockedUntilMs > context.nowMs) {
    throw new Refused('person-locked', 'too many wrong PINs', { untilMs: tries.lockedUntilMs });
  }
  if (!(await pinFits(claim.pin, person.pin))) {
    throw new Refused('pin-wrong', 'the PIN is wrong', { triesLeft: Math.max(0, pinTries - tries.wrong) });
  }
  await context.store.clearTries(person.person);
  return { person, pinChecked: true };
}

function findPerson(claim: PersonCheck, people: ReadonlyMap<string, KnownPerson>): KnownPerson | null {
  if (claim.badge !== null) {
    for (const person of people.values()) if (person.badge === claim.badge) return person;
    return null;
  }
  return claim.person === null ? null : (people.get(claim.person) ?? null);
}

/** PBKDF2 with SHA-256: the salt's UTF-8 bytes, 32 bytes out, hex. The log fixes the method, so that tablets can check too. */
export async function pinFits(
  pin: string,
  kept: { readonly salt: string; readonly hash: string; readonly rounds: number },
): Promise<boolean> {
  if (!Number.isInteger(kept.rounds) || kept.rounds < 1 || kept.rounds > ROUNDS_MOST) return false;
  const wanted = Buffer.from(kept.hash, 'hex');
  if (wanted.length !== 32) return false;
  return timingSafeEqual(await derive(pin, kept.salt, kept.rounds, 32, 'sha256'), wanted);
}
