// Who stands at the tablet? The server is asked when it answers; else a person seen on this tablet before is checked against
// what the log says, for a limited time, with five tries. Whatever was checked without the server says so.

import { fail, ok, type Result } from '../../../shared/kit/result.ts';
import type { Role } from '../../../shared/kit/roles.ts';
import { pinLockMs, pinTries } from '../../../shared/wire/limits.ts';
import { checkedSchema, type PersonChecked } from '../../../shared/wire/messages.ts';
import { derivePin } from '../device/pin.ts';
import type { Caller } from './http.ts';

/** A person as this tablet's log says. */
export interface LocalPerson {
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  readonly pin: PinRecord | null;
  /** A PIN whose check lies outside the log, by its name. */
  readonly pinSet?: { readonly pin: string } | null;
}

/** What this tablet has of PINs whose check lies outside the log. */
export interface KeptPins {
  readonly read: (pin: string) => Promise<PinRecord | null>;
  /** Keeps what checks a PIN that was right; resolves when durable. */
  readonly keep: (pin: string, told: string) => Promise<void>;
}

/** A PIN as the log keeps it: PBKDF2 with SHA-256, 32 bytes, hex. */
export interface PinRecord {
  readonly salt: string;
  readonly hash: string;
  readonly rounds: number;
}

/** What this tablet remembers of the people it has seen. May be lost at any time: then the server must answer. */
export interface SeenPeople {
  readonly read: (person: string) => Promise<SeenPerson | null>;
  readonly write: (person: string, seen: SeenPerson) => Promise<void>;
}

export interface SeenPerson {
  /** When the server last confirmed this person on this tablet. */
  readonly confirmedMs: number;
  readonly wrong: number;
  readonly lockedUntilMs: number;
}

/** How long a person once confirmed by the server may sign in without it, ms. Common practice: one to three days. */
export const offlineLifeMs = 72 * 3_600_000;

/** Who it is, and how that is known. */
export interface CheckedPerson {
  readonly person: string;
  readonly name: string;
  readonly role: Role;
  readonly pinChecked: boolean;
  readonly checkedOffline: boolean;
  /** Proves the person to the server; null where it was not asked. */
  readonly session: { readonly token: string; readonly untilMs: number } | null;
  /** Proves to everybody what the person does on this tablet; null where the server gave none. */
  readonly ticket: string | null;
}

export const personFaults = [
  'badge-unknown',
  'badge-or-pin-wanted',
  'pin-wrong',
  'pin-not-set',
  'locked',
  'not-seen-here',
  'pin-not-here',
  'seen-too-long-ago',
] as const;
export interface PersonFault {
  readonly code: (typeof personFaults)[number];
  readonly triesLeft: number | null;
  readonly untilMs: number | null;
}

export interface PersonClaim {
  readonly badge: string | null;
  readonly person: string | null;
  readonly pin: string | null;
  /** True for somebody who signs in, and stays. */
  readonly stays?: boolean;
}

export interface PersonParts {
  /** Null where the tablet is not enrolled: then this tablet's log is all there is to ask. */
  readonly caller: Caller | null;
  readonly people: readonly LocalPerson[];
  /** Whose badge says this, by this tablet's log: a person's id; null where nobody's does. */
  readonly byBadge: (text: string) => string | null;
  readonly seen: SeenPeople;
  readonly pins: KeptPins;
  /** Hands the server PINs that were set here and did not come to it yet; absent without a server. */
  readonly handPins?: () => Promise<void>;
  readonly nowMs: () => number;
  readonly derive?: typeof derivePin;
}

/** The server is given this long before the tablet checks by itself, ms. */
const ASK_MS = 3_000;
/** Where the server alone can tell it is given longer: a busy one is better waited for than taken for one that is gone, ms. */
const ASK_ALONE_MS = 10_000;

/** Checks a badge or a name, with a PIN where one is given. */
export async function checkWho(
  claim: PersonClaim,
  parts: PersonParts,
): Promise<Result<CheckedPerson, PersonFault>> {
  const { caller } = parts;
  if (!caller) return checkLocally(claim, parts, null);
  const timeoutMs = (await isKnownHere(claim, parts)) ? ASK_MS : ASK_ALONE_MS;
  const ask = () => caller.call('/api/people/check', checkedSchema, { json: claim, timeoutMs });
  let asked = await ask();
  if (!asked.ok && asked.error.code === 'person-unproven' && (await isSetHere(claim, parts))) {
    // Somebody signs in at once with a PIN that was just set.
    await parts.handPins?.();
    asked = await ask();
  }
  if (asked.ok) {
    await parts.seen.write(asked.value.person, { confirmedMs: parts.nowMs(), wrong: 0, lockedUntilMs: 0 });
    await keepRightPin(claim, asked.value, parts);
    return ok(fromServer(asked.value));
  }
  const { code, facts } = asked.error;
  if (code === 'pin-wrong') return refuse('pin-wrong', { triesLeft: toNumber(facts['triesLeft']) });
  if (code === 'person-locked') return refuse('locked', { untilMs: toNumber(facts['untilMs']) });
  if (code === 'person-unproven' && !isNewHere(claim, parts)) return refuse('badge-unknown');
  // Known here and not there: not heard of yet, or added by an entry that nothing proves. The floor goes on by what the log says, and
  // what needs a lead stays unproven.
  if (code === 'person-unproven') return checkLocally(claim, parts, null);
  // No answer, or one that says nothing about the person: the tablet checks by itself.
  return checkLocally(claim, parts, offlineLifeMs);
}

/** True where this tablet can check the claim by itself. */
async function isKnownHere(claim: PersonClaim, parts: PersonParts): Promise<boolean> {
  const person = findLocally(claim, parts);
  if (person === null || claim.pin === null) return person !== null;
  const kept = person.pinSet ? await parts.pins.read(person.pinSet.pin) : person.pin;
  return kept !== null && (await parts.seen.read(person.person)) !== null;
}

async function isSetHere(claim: PersonClaim, parts: PersonParts): Promise<boolean> {
  const set = claim.pin === null ? null : findLocally(claim, parts)?.pinSet;
  return set ? (await parts.pins.read(set.pin)) !== null : false;
}

/** The first right PIN at the server is what this tablet can check by itself from then on. */
async function keepRightPin(claim: PersonClaim, checked: PersonChecked, parts: PersonParts): Promise<void> {
  const set = parts.people.find(({ person }) => person === checked.person)?.pinSet;
  if (!set || claim.pin === null || !checked.pinChecked) return;
  if ((await parts.pins.read(set.pin)) === null) await parts.pins.keep(set.pin, claim.pin);
}

/** True where this tablet knows the person and the server may not have heard yet. */
function isNewHere(claim: PersonClaim, parts: PersonParts): boolean {
  return findLocally(claim, parts) !== null;
}

function fromServer(checked: PersonChecked): CheckedPerson {
  const { person, name, role, pinChecked, token, untilMs, ticket = null } = checked;
  return { person, name, role, pinChecked, checkedOffline: false, session: { token, untilMs }, ticket };
}

function findLocally(claim: PersonClaim, parts: PersonParts): LocalPerson | null {
  const wanted = claim.badge === null ? claim.person : parts.byBadge(claim.badge);
  return parts.people.find(({ person }) => person === wanted) ?? null;
}

async function checkLocally(
  claim: PersonClaim,
  parts: PersonParts,
  lifeMs: number | null,
): Promise<Result<CheckedPerson, PersonFault>> {
  const person = findLocally(claim, parts);
  if (!person) return refuse('badge-unknown');
  const nowMs = parts.nowMs();
  const seen = await parts.seen.read(person.person);
  if (seen && seen.lockedUntilMs > nowMs) return refuse('locked', { untilMs: seen.lockedUntilMs });
  const found = {
    name: person.name,
    role: person.role,
    person: person.person,
    checkedOffline: true,
    session: null,
    ticket: null,
  };
  if (claim.pin === null) {
    return claim.badge === null ? refuse('badge-or-pin-wanted') : ok({ ...found, pinChecked: false });
  }
  if (!person.pin && !person.pinSet) return refuse('pin-not-set');
  const kept = person.pinSet ? await parts.pins.read(person.pinSet.pin) : person.pin;
  if (!kept) return refuse('pin-not-here');
  if (lifeMs !== null) {
    if (!seen) return refuse('not-seen-here');
    // A clock set back makes the last confirmation look like the future: no reason to trust it for longer.
    if (Math.abs(nowMs - seen.confirmedMs) > lifeMs) return refuse('seen-too-long-ago');
  }
  return checkPinLocally(claim.pin, kept, { parts, seen, found });
}

async function checkPinLocally(
  pin: string,
  kept: PinRecord,
  at: {
    readonly parts: PersonParts;
    readonly seen: SeenPerson | null;
    readonly found: Omit<CheckedPerson, 'pinChecked'>;
  },
): Promise<Result<CheckedPerson, PersonFault>> {
  const { parts, found } = at;
  const nowMs = parts.nowMs();
  const seen = at.seen ?? { confirmedMs: 0, wrong: 0, lockedUntilMs: 0 };
  const before = seen.lockedUntilMs > 0 ? 0 : seen.wrong;
  // Counted before it is looked at: pulling the plug after a wrong PIN does not give the try back.
  const wrong = before + 1;
  const lockedUntilMs = wrong >= pinTries ? nowMs + pinLockMs : 0;
  await parts.seen.write(found.person, { ...seen, wrong, lockedUntilMs });
  const derived = await (parts.derive ?? derivePin)(pin, kept.salt, kept.rounds);
  if (derived !== kept.hash) {
    return wrong >= pinTries
      ? refuse('locked', { untilMs: lockedUntilMs })
      : refuse('pin-wrong', { triesLeft: pinTries - wrong });
  }
  await parts.seen.write(found.person, { ...seen, wrong: 0, lockedUntilMs: 0 });
  return ok({ ...found, pinChecked: true });
}

function refuse(code: PersonFault['code'], facts: Partial<PersonFault> = {}): Result<never, PersonFault> {
  return fail({ code, triesLeft: null, untilMs: null, ...facts });
}

function toNumber(value: unknown): number | null {
  return typeof value === 'number' ? value : null;
}
