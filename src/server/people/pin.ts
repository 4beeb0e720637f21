// Is this that person? Badge or name, and the PIN where one is set. A try is counted before it is looked at, and that by person and tablet:
// five wrong in a row lock that person on that tablet, each time for twice as long, and nowhere else, so that no tablet can lock the leads
// out. A tablet that tries one person after the other is locked as a whole; a person who is tried on many tablets, on all for a short while.

import { pbkdf2, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';
import { thoseWithBadge } from '../../../shared/floor/badge.ts';
import { pinLockMs, pinTries } from '../../../shared/wire/limits.ts';
import type { PersonCheck, PinsHanded } from '../../../shared/wire/messages.ts';
import { Refused } from '../http/refuse.ts';
import type { Store, TriedAt, Tries, TryLimits } from '../stores/store.ts';
import type { PeopleBook } from './book.ts';
import type { KnownPerson } from './known.ts';
import type { PinSeal } from './pin-seal.ts';

const derive = promisify(pbkdf2);

/** More rounds than this in an entry would only serve to keep the server busy. */
const ROUNDS_MOST = 5_000_000;

const HOUR_MS = 3_600_000;
/** Of a person on a tablet. */
const onTablet: TryLimits = {
  tries: pinTries,
  lockMs: pinLockMs,
  lockMostMs: 24 * HOUR_MS,
  forgetMs: 7 * 24 * HOUR_MS,
};
/** On a tablet, whoever was tried: a shift that forgets its PINs stays below. */
const ofTablet: TryLimits = { tries: 20, lockMs: pinLockMs, lockMostMs: HOUR_MS, forgetMs: HOUR_MS };
/** Of a person on all tablets: one tablet alone is locked long before it comes to so many. */
const ofPerson: TryLimits = { tries: 60, lockMs: pinLockMs, lockMostMs: pinLockMs, forgetMs: 24 * HOUR_MS };

/** Where and when somebody is checked. */
export interface CheckContext {
  readonly store: Pick<Store, 'countTry' | 'clearTries' | 'takeBackTry' | 'findPin'>;
  readonly pinSeal: PinSeal;
  readonly tablet: string;
  readonly nowMs: number;
}

/** Counts a try at each place, the narrowest first; refuses where one is locked, and counts at none of the wider ones then. */
async function countTries(
  { store, nowMs }: CheckContext,
  places: readonly (readonly [TriedAt, TryLimits])[],
): Promise<Tries> {
  const counted: Tries[] = [];
  for (const [where, limits] of places) {
    const tries = await store.countTry(where, nowMs, limits);
    if (tries.lockedUntilMs > nowMs)
      throw new Refused('person-locked', 'too many wrong PINs', { untilMs: tries.lockedUntilMs });
    counted.push(tries);
  }
  return counted[0] ?? { wrong: 0, lockedUntilMs: 0 };
}

/** Finds and checks a person, or refuses. `pinChecked` is false where no PIN was given or none is set. */
export async function checkPerson(
  claim: PersonCheck,
  people: ReadonlyMap<string, KnownPerson>,
  context: CheckContext,
): Promise<{ readonly person: KnownPerson; readonly pinChecked: boolean }> {
  const person = findPerson(claim, people);
  if (!person) throw new Refused('person-unproven', 'no such badge');
  if (claim.pin === null) {
    // A name alone proves nothing: whoever has a PIN needs it, and whoever has none needs the badge.
    if (claim.badge === null) throw new Refused('person-unproven', 'badge or PIN is wanted');
    return { person, pinChecked: false };
  }
  const kept = await readCheck(person, context);
  const here = { tablet: context.tablet, person: person.person };
  const everywhere = { tablet: '', person: person.person };
  const anybody = { tablet: context.tablet, person: '' };
  const { wrong } = await countTries(context, [
    [here, onTablet],
    [anybody, ofTablet],
    [everywhere, ofPerson],
  ]);
  if (!(await kept(claim.pin))) {
    throw new Refused('pin-wrong', 'the PIN is wrong', { triesLeft: Math.max(0, pinTries - wrong) });
  }
  await context.store.clearTries(here);
  await context.store.clearTries(everywhere);
  await context.store.takeBackTry(anybody);
  return { person, pinChecked: true };
}

/** How this person's PIN is checked; refuses where none is set, or where what checks it has not come here. */
async function readCheck(
  { pin, pinSet }: KnownPerson,
  { store, pinSeal }: CheckContext,
): Promise<(pin: string) => Promise<boolean>> {
  if (pinSet) {
    const kept = await store.findPin(pinName(pinSet));
    // As a person that is not known yet: the tablet that set it knows it, and brings it here.
    if (!kept || !pinSeal.isOwn(kept.verifier))
      throw new Refused('person-unproven', 'what checks this PIN has not come here yet');
    return async (told) => pinSeal.fits(await derivePin(told, kept), kept.verifier);
  }
  if (pin) return (told) => pinFits(told, pin);
  throw new Refused('pin-wrong', 'no PIN is set for this person');
}

/** Under which name the store keeps what checks a PIN: no tablet can bring one for another's. */
export function pinName({ tablet, pin }: NonNullable<KnownPerson['pinSet']>): string {
  return JSON.stringify([tablet, pin]);
}

/** What taking PINs needs. */
export interface PinDesk {
  readonly store: Pick<Store, 'findPin' | 'keepPin'>;
  readonly people: Pick<PeopleBook, 'setsPin'>;
  readonly pinSeal: PinSeal;
  readonly nowMs: () => number;
}

/** Keeps what checks PINs that this tablet's entries set; answers which are kept now. Those of other tablets' entries are left. */
export async function takePins(
  pins: PinsHanded['pins'],
  tablet: string,
  { store, people, pinSeal, nowMs }: PinDesk,
): Promise<readonly string[]> {
  const kept: string[] = [];
  for (const { pin, salt, hash, rounds } of pins) {
    if (!(await people.setsPin(tablet, pin))) continue;
    const name = pinName({ tablet, pin });
    const there = await store.findPin(name);
    // The first counts for good; only what nothing fits any more gives way.
    if (!there || !pinSeal.isOwn(there.verifier))
      await store.keepPin({ pin: name, salt, rounds, verifier: await pinSeal.seal(hash), setMs: nowMs() });
    kept.push(pin);
  }
  return kept;
}

function findPerson(claim: PersonCheck, people: ReadonlyMap<string, KnownPerson>): KnownPerson | null {
  if (claim.badge !== null) return thoseWithBadge(people.values(), claim.badge)[0] ?? null;
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
  return timingSafeEqual(Buffer.from(await derivePin(pin, kept), 'hex'), wanted);
}

async function derivePin(
  pin: string,
  { salt, rounds }: { readonly salt: string; readonly rounds: number },
): Promise<string> {
  return (await derive(pin, salt, rounds, 32, 'sha256')).toString('hex');
}
