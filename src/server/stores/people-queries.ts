// People as the store knows them: who was checked on which tablet, and how often somebody tried a PIN.

import type { Kysely } from 'kysely';
import type { Store, Tries, TryLimits } from './store.ts';
import type { Tables } from './tables.ts';

/** The queries. */
export function peopleQueries(
  db: Kysely<Tables>,
): Pick<
  Store,
  'addSession' | 'findSession' | 'countTry' | 'clearTries' | 'takeBackTry' | 'keepPin' | 'findPin'
> {
  return {
    addSession: async ({ hash, tablet, person, role, pinChecked, untilMs }) => {
      await db
        .insertInto('sessions')
        // As JSON: a person's id is payload text and may hold U+0000, which PostgreSQL cannot store as such.
        .values({
          hash,
          tablet,
          person: JSON.stringify(person),
          role,
          pin_checked: pinChecked ? 1 : 0,
          until_ms: untilMs,
        })
        .execute();
    },
    findSession: async (hash, nowMs) => {
      const row = await db
        .selectFrom('sessions')
        .selectAll()
        .where('hash', '=', hash)
        .where('until_ms', '>', nowMs)
        .executeTakeFirst();
      if (!row) return null;
      const { tablet, role } = row;
      const person = JSON.parse(row.person) as string; // written by addSession
      return { hash, tablet, person, role, pinChecked: row.pin_checked === 1, untilMs: row.until_ms };
    },
    keepPin: async ({ pin, salt, rounds, verifier, setMs }) => {
      const row = { salt, rounds, verifier, set_ms: setMs };
      await db
        .insertInto('pins')
        .values({ pin, ...row })
        .onConflict((conflict) => conflict.column('pin').doUpdateSet(row))
        .execute();
    },
    findPin: async (pin) => {
      const row = await db.selectFrom('pins').selectAll().where('pin', '=', pin).executeTakeFirst();
      if (!row) return null;
      const { salt, rounds, verifier, set_ms: setMs } = row;
      return { pin, salt, rounds, verifier, setMs };
    },
    countTry: (where, nowMs, limits) => countTry(db, where, { nowMs, ...limits }),
    clearTries: async ({ tablet, person }) => {
      await db
        .deleteFrom('pin_tries')
        .where('tablet', '=', tablet)
        .where('person', '=', JSON.stringify(person))
        .execute();
    },
    takeBackTry: async ({ tablet, person }) => {
      await db
        .updateTable('pin_tries')
        .set((eb) => ({ wrong: eb('wrong', '-', 1) }))
        .where('tablet', '=', tablet)
        .where('person', '=', JSON.stringify(person))
        .where('wrong', '>', 0)
        .execute();
    },
  };
}

/** After so many locks each next one is as long as the last. */
const LONGER_LOCKS = 12;

/** One statement, so that tries at the same moment are each counted. A lock's end starts the count anew, and the next lock is twice as long. */
async function countTry(
  db: Kysely<Tables>,
  { tablet, person }: { readonly tablet: string; readonly person: string },
  { nowMs, tries, lockMs, lockMostMs, forgetMs }: TryLimits & { readonly nowMs: number },
): Promise<Tries> {
  const row = await db
    .insertInto('pin_tries')
    .values({
      tablet,
      // As JSON: a person's id is payload text and may hold U+0000, which PostgreSQL cannot store as such.
      person: JSON.stringify(person),
      wrong: 1,
      locks: 0,
      locked_until_ms: 0,
      last_ms: nowMs,
    })
    .onConflict((conflict) =>
      conflict.columns(['tablet', 'person']).doUpdateSet((eb) => {
        const wrong = eb.ref('pin_tries.wrong');
        const locks = eb.ref('pin_tries.locks');
        const until = eb.ref('pin_tries.locked_until_ms');
        const isLocked = eb(until, '>', nowMs);
        const isForgotten = eb('pin_tries.last_ms', '<', nowMs - forgetMs);
        const locksNow = eb.and([eb(until, '=', 0), eb(wrong, '>=', tries)]);
        let lock = eb
          .case()
          .when(locks, '=', 0)
          .then(nowMs + lockMs);
        for (let times = 1; times < LONGER_LOCKS; times += 1)
          lock = lock.when(locks, '=', times).then(nowMs + Math.min(lockMs * 2 ** times, lockMostMs));
        return {
          wrong: eb
            .case()
            .when(isLocked)
            .then(wrong)
            .when(eb.or([isForgotten, eb(until, '>', 0)]))
            .then(1)
            .else(eb(wrong, '+', 1))
            .end(),
          locks: eb
            .case()
            .when(isLocked)
            .then(locks)
            .when(isForgotten)
            .then(0)
            .when(locksNow)
            .then(eb(locks, '+', 1))
            .else(locks)
            .end(),
          locked_until_ms: eb
            .case()
            .when(isLocked)
            .then(until)
            .when(isForgotten)
            .then(0)
            .when(locksNow)
            .then(lock.else(nowMs + lockMostMs).end())
            .else(0)
            .end(),
          last_ms: eb.case().when(isLocked).then(eb.ref('pin_tries.last_ms')).else(nowMs).end(),
        };
      }),
    )
    .returning(['wrong', 'locked_until_ms'])
    .executeTakeFirstOrThrow();
  return { wrong: row.wrong, lockedUntilMs: row.locked_until_ms };
}
