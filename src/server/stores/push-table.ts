// Where a tablet takes messages while its app is closed: one subscription each. Gone with the tablet that is shut out, and with a restore.

import type { Kysely } from 'kysely';
import { columnTypes, type Dialect } from './column-types.ts';
import type { PushStore, PushSubscriptionKept } from './push-store.ts';
import type { Tables } from './tables.ts';

/** Keys are base64url. */
export interface PushTable {
  tablet: string;
  endpoint: string;
  public_key: string;
  auth: string;
  person: string;
  zone: string;
  quiet_from: string | null;
  quiet_to: string | null;
}

/** What was told, until when it is no news; what is being told, until when that may take. */
export interface ToldTable {
  key: string;
  until_ms: number;
}

/** Both tables. */
export async function pushTable<T>({ schema }: Kysely<T>, dialect: Dialect): Promise<void> {
  const { text, whole } = columnTypes(dialect);
  await schema
    .createTable('push_subscriptions')
    .addColumn('tablet', text, (c) => c.primaryKey())
    .addColumn('endpoint', text, (c) => c.notNull())
    .addColumn('public_key', text, (c) => c.notNull())
    .addColumn('auth', text, (c) => c.notNull())
    .addColumn('person', text, (c) => c.notNull())
    .addColumn('zone', text, (c) => c.notNull())
    .addColumn('quiet_from', text)
    .addColumn('quiet_to', text)
    .execute();
  await schema
    .createTable('push_told')
    .addColumn('key', text, (c) => c.primaryKey())
    .addColumn('until_ms', whole, (c) => c.notNull())
    .execute();
}

const toKept = (row: PushTable): PushSubscriptionKept => ({
  tablet: row.tablet,
  endpoint: row.endpoint,
  publicKey: row.public_key,
  auth: row.auth,
  person: row.person,
  zone: row.zone,
  quiet: row.quiet_from === null || row.quiet_to === null ? null : { from: row.quiet_from, to: row.quiet_to },
});

/** Subscriptions of tablets that are let in. */
export function pushQueries(
  db: Kysely<Tables>,
): Pick<PushStore, 'keepPush' | 'forgetPush' | 'allPush' | 'quietPush' | 'claimTold' | 'endTold'> {
  return {
    keepPush: async ({ tablet, publicKey, quiet, ...rest }) => {
      const row = {
        ...rest,
        public_key: publicKey,
        quiet_from: quiet?.from ?? null,
        quiet_to: quiet?.to ?? null,
      };
      await db
        .insertInto('push_subscriptions')
        .values({ tablet, ...row })
        .onConflict((conflict) => conflict.column('tablet').doUpdateSet(row))
        .execute();
    },
    quietPush: async (tablet, zone, quiet) => {
      await db
        .updateTable('push_subscriptions')
        .set({ zone, quiet_from: quiet?.from ?? null, quiet_to: quiet?.to ?? null })
        .where('tablet', '=', tablet)
        .execute();
    },
    forgetPush: async (tablet, endpoint) => {
      const gone = db.deleteFrom('push_subscriptions').where('tablet', '=', tablet);
      await (endpoint === undefined ? gone : gone.where('endpoint', '=', endpoint)).execute();
    },
    claimTold: async (key, nowMs, untilMs) => {
      await db.deleteFrom('push_told').where('until_ms', '<=', nowMs).execute();
      const told = await db
        .insertInto('push_told')
        .values({ key, until_ms: untilMs })
        .onConflict((conflict) => conflict.column('key').doNothing())
        .executeTakeFirst();
      if (Number(told.numInsertedOrUpdatedRows ?? 0) > 0) return null;
      const row = await db
        .selectFrom('push_told')
        .select('until_ms')
        .where('key', '=', key)
        .executeTakeFirst();
      return row?.until_ms ?? nowMs; // given back in between
    },
    endTold: async (key, untilMs) => {
      if (untilMs === null) await db.deleteFrom('push_told').where('key', '=', key).execute();
      else await db.updateTable('push_told').set({ until_ms: untilMs }).where('key', '=', key).execute();
    },
    allPush: async () => {
      const rows = await db
        .selectFrom('push_subscriptions')
        .innerJoin('tablets', 'tablets.tablet', 'push_subscriptions.tablet')
        .selectAll('push_subscriptions')
        .where('revoked_ms', 'is', null)
        .orderBy('push_subscriptions.tablet')
        .execute();
      return rows.map(toKept);
    },
  };
}
