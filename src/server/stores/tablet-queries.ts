// The store's questions about tablets, their keys and the codes that let one in.

import { type Kysely, sql } from 'kysely';
import { compareText } from '../../../shared/log/order.ts';
import { readPresent } from './present.ts';
import type { Store, Tablet } from './store.ts';
import type { Tables } from './tables.ts';

function toTablet(row: Tables['tablets']): Tablet {
  return {
    tablet: row.tablet,
    name: row.name,
    publicKey: row.public_key,
    enrolledMs: row.enrolled_ms,
    seenMs: row.seen_ms,
    revokedMs: row.revoked_ms,
    clockOffMs: row.clock_off_ms,
    screen: row.screen === 1,
  };
}

/** Tablets: who they are, and since when. */
export function tabletQueries(
  db: Kysely<Tables>,
): Pick<Store, 'enrolTablet' | 'findTablet' | 'listTablets' | 'present' | 'touchTablets'> {
  return {
    enrolTablet: (enrolment, nowMs) =>
      db.transaction().execute(async (tx) => {
        const { tablet, name, publicKey, screen = false } = enrolment;
        const row = {
          name,
          public_key: publicKey,
          enrolled_ms: nowMs,
          revoked_ms: null,
          screen: screen ? 1 : 0,
        };
        const before = await tx
          .selectFrom('tablets')
          .select(['public_key', 'screen'])
          .where('tablet', '=', tablet)
          .executeTakeFirst();
        // Another device, or one that hangs where anybody looks: who asked for messages did so on the one before.
        if (before && (before.public_key !== row.public_key || (before.screen ?? 0) !== row.screen))
          await tx.deleteFrom('push_subscriptions').where('tablet', '=', tablet).execute();
        await tx
          .insertInto('tablets')
          .values({ tablet, ...row, seen_ms: null, clock_off_ms: null })
          .onConflict((conflict) => conflict.column('tablet').doUpdateSet(row))
          .execute();
        await tx
          .insertInto('tablet_keys')
          .values({ tablet, public_key: publicKey, since_ms: nowMs })
          .onConflict((conflict) =>
            conflict.columns(['tablet', 'public_key']).doUpdateSet({ since_ms: nowMs }),
          )
          .execute();
      }),
    findTablet: async (tablet) => {
      const row = await db.selectFrom('tablets').selectAll().where('tablet', '=', tablet).executeTakeFirst();
      return row ? toTablet(row) : null;
    },
    listTablets: async () =>
      (await db.selectFrom('tablets').selectAll().orderBy('enrolled_ms').orderBy('tablet').execute()).map(
        toTablet,
      ),
    present: () => readPresent(db),
    touchTablets: (seen) =>
      db.transaction().execute(async (tx) => {
        // In one order, so that two processes that write the same tablets do not wait for each other in a circle.
        const ordered = [...seen].sort((one, other) => compareText(one.tablet, other.tablet));
        for (const { tablet, seenMs, clockOffMs } of ordered) {
          await tx
            .updateTable('tablets')
            .set({ seen_ms: seenMs, ...(clockOffMs === null ? {} : { clock_off_ms: clockOffMs }) })
            .where('tablet', '=', tablet)
            .execute();
        }
      }),
  };
}

/** True for a key of a tablet, and for one of a chain that no tablet writes. */
const isNoScreen = sql<boolean>`coalesce(screen, 0) = 0`;

/** Keys of tablets, of now and of before. */
export function keyQueries(db: Kysely<Tables>): Pick<Store, 'keepKey' | 'tabletKeys' | 'allKeys'> {
  return {
    keepKey: async (tablet, publicKey, nowMs) => {
      await db
        .insertInto('tablet_keys')
        .values({ tablet, public_key: publicKey, since_ms: nowMs })
        .onConflict((conflict) => conflict.columns(['tablet', 'public_key']).doNothing())
        .execute();
    },
    tabletKeys: async (tablet) => {
      const rows = await db
        .selectFrom('tablet_keys')
        .leftJoin('tablets', 'tablets.tablet', 'tablet_keys.tablet')
        .select('tablet_keys.public_key')
        .where('tablet_keys.tablet', '=', tablet)
        .where(isNoScreen)
        .orderBy('since_ms', 'desc')
        .execute();
      return rows.map((row) => row.public_key);
    },
    allKeys: async () => {
      const rows = await db
        .selectFrom('tablet_keys')
        .leftJoin('tablets', 'tablets.tablet', 'tablet_keys.tablet')
        .select(['tablet_keys.tablet', 'tablet_keys.public_key', 'since_ms', 'revoked_ms'])
        .where(isNoScreen)
        .orderBy('tablet_keys.tablet')
        .orderBy('since_ms')
        .execute();
      return rows.map(({ tablet, public_key, since_ms, revoked_ms }) => ({
        tablet,
        publicKey: public_key,
        sinceMs: since_ms,
        revokedMs: revoked_ms,
      }));
    },
  };
}

/** Tablets that are shut out. */
export function revokedQueries(db: Kysely<Tables>): Pick<Store, 'revokedTablets' | 'revokeTablet'> {
  return {
    revokedTablets: async () => {
      const rows = await db
        .selectFrom('tablets')
        .select('tablet')
        .where('revoked_ms', 'is not', null)
        .execute();
      return new Set(rows.map((row) => row.tablet));
    },
    revokeTablet: async (tablet, nowMs) => {
      const changed = await db
        .updateTable('tablets')
        .set({ revoked_ms: nowMs })
        .where('tablet', '=', tablet)
        .where('revoked_ms', 'is', null)
        .executeTakeFirst();
      await db.deleteFrom('sessions').where('tablet', '=', tablet).execute();
      await db.deleteFrom('push_subscriptions').where('tablet', '=', tablet).execute();
      return Number(changed.numUpdatedRows) > 0;
    },
  };
}

/** Who brought the chains of tablets that were never let in. */
export function broughtQueries(db: Kysely<Tables>): Pick<Store, 'keepBrought' | 'allBrought'> {
  return {
    keepBrought: async (ends) => {
      const rows = ends.map(({ atMs, ...end }) => ({ ...end, at_ms: atMs }));
      if (rows.length === 0) return;
      await db
        .insertInto('brought')
        .values(rows)
        .onConflict((conflict) => conflict.columns(['tablet', 'epoch', 'seq', 'hash']).doNothing())
        .execute();
    },
    allBrought: async () => {
      const rows = await db
        .selectFrom('brought')
        .selectAll()
        .orderBy('tablet')
        .orderBy('epoch')
        .orderBy('seq')
        .orderBy('hash')
        .execute();
      return rows.map(({ at_ms: atMs, ...end }) => ({ ...end, atMs }));
    },
  };
}

/** Codes that are good once. */
export function oneTimeQueries(
  db: Kysely<Tables>,
): Pick<Store, 'addOneTime' | 'holdsOneTime' | 'takeOneTime'> {
  return {
    addOneTime: async ({ hash, purpose, detail, untilMs }) => {
      await db
        .insertInto('one_time')
        .values({ hash, purpose, detail, until_ms: untilMs, used_ms: null })
        .execute();
    },
    holdsOneTime: async (hash, purpose, nowMs) => {
      const row = await db
        .selectFrom('one_time')
        .select('hash')
        .where('hash', '=', hash)
        .where('purpose', '=', purpose)
        .where('used_ms', 'is', null)
        .where('until_ms', '>', nowMs)
        .executeTakeFirst();
      return row !== undefined;
    },
    takeOneTime: async (hash, purpose, nowMs) => {
      const row = await db
        .updateTable('one_time')
        .set({ used_ms: nowMs })
        .where('hash', '=', hash)
        .where('purpose', '=', purpose)
        .where('used_ms', 'is', null)
        .where('until_ms', '>', nowMs)
        .returning(['detail', 'until_ms'])
        .executeTakeFirst();
      return row ? { hash, purpose, detail: row.detail, untilMs: row.until_ms } : null;
    },
  };
}
