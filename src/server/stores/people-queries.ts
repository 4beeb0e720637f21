// People as the store knows them: who was checked on which tablet, and how often somebody tried a PIN.

import type { Kysely } from 'kysely';
import type { Store } from './store.ts';
import type { Tables } from './tables.ts';

/** The queries. */
export function peopleQueries(
  db: Kysely<Tables>,
): Pick<Store, 'addSession' | 'findSession' | 'countTry' | 'clearTries'> {
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
    countTry: async (person, nowMs, { tries, lockMs }) => {
      // One statement, so that tries at the same moment are each counted. The lock's end starts the count anew.
      const row = await db
        .insertInto('tries')
        .values({ person: JSON.stringify(person), wrong: 1, locked_until_ms: 0 })
        .onConflict((conflict) =>
          conflict.column('person').doUpdateSet((eb) => ({
            wrong: eb
              .case()
              .when('tries.locked_until_ms', '>', nowMs)
              .then(eb.ref('tries.wrong'))
              .when('tries.locked_until_ms', '>', 0)
              .then(1)
              .else(eb('tries.wrong', '+', 1))
              .end(),
            locked_until_ms: eb
              .case()
              .when('tries.locked_until_ms', '>', nowMs)
              .then(eb.ref('tries.locked_until_ms'))
              .when(eb.and([eb('tries.locked_until_ms', '=', 0), eb('tries.wrong', '>=', tries)]))
              .then(nowMs + lockMs)
              .else(0)
              .end(),
          })),
        )
        .returning(['wrong', 'locked_until_ms'])
        .executeTakeFirstOrThrow();
      return { wrong: row.wrong, lockedUntilMs: row.locked_until_ms };
    },
    clearTries: async (person) => {
      await db.deleteFrom('tries').where('person', '=', JSON.stringify(person)).execute();
    },
  };
}
