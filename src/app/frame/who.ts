// Who stands here? The badge or name and PIN go to the server where it answers; else this tablet checks by itself for a while.
// What it remembers of people it has seen lies in the cache: lost with it, and then the server must answer.

import { personByBadge } from '../../../shared/floor/badge.ts';
import type { Result } from '../../../shared/kit/result.ts';
import type { App } from '../app.ts';
import { deviceClock } from '../device/clock.ts';
import { makePin } from '../device/pin.ts';
import { keep, readKept, seenName } from '../store/preferences.ts';
import { keepPin, readPin } from '../store/secrets.ts';
import {
  type CheckedPerson,
  checkWho,
  type KeptPins,
  type PersonClaim,
  type PersonFault,
  type SeenPeople,
  type SeenPerson,
} from '../sync/person.ts';

/** Checks a person for this tablet. */
export async function checkPerson(app: App, claim: PersonClaim): Promise<Result<CheckedPerson, PersonFault>> {
  const connection = app.connection.value;
  const found = await checkWho(claim, {
    caller: (await connection?.caller()) ?? null,
    handPins: async () => connection?.handPins(),
    people: [...app.store.floor().people.values()],
    byBadge: (text) => personByBadge(app.store.floor().people, text)?.person ?? null,
    seen: seenPeople(app),
    pins: keptPins(app),
    nowMs: deviceClock.nowMs,
  });
  if (found.ok && !app.practice) await keepTicket(app, found.value);
  return found;
}

/** A ticket proves what stands after it in the log, so it is written before anything is done with it. */
async function keepTicket(app: App, { person, ticket }: CheckedPerson): Promise<void> {
  if (ticket === null) return;
  // A log that fails is shown by the fault screen, and what could be written after it would be unproven.
  await app.store
    .append([{ kind: 'ticket.taken', payload: { person, ticket } }], null)
    .catch(() => undefined);
}

/** In practice too it is the real tablet that knows PINs, and learns them. */
function keptPins(app: App): KeptPins {
  const { log } = (app.practice?.real ?? app).store;
  return {
    read: async (pin) => (await readPin(app.store.log, pin)) ?? (app.practice ? readPin(log, pin) : null),
    keep: async (pin, told) => keepPin(log, { pin, check: await makePin(told), isOwn: false }),
  };
}

function seenPeople(app: App): SeenPeople {
  // A PIN tried in practice is tried: else practice would be the place to guess it.
  const { cache } = (app.practice?.real ?? app).store;
  return {
    read: (person) => readKept<SeenPerson>(cache, seenName(person)),
    write: (person, seen) => keep(cache, seenName(person), seen),
  };
}
