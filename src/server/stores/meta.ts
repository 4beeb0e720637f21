// What the store keeps by a name of its own: one line each.

import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** Keeps the value under the name, over one that was kept before. */
export async function putMeta(
  db: Pick<Kysely<Tables>, 'insertInto'>,
  key: string,
  value: string,
): Promise<void> {
  await db
    .insertInto('meta')
    .values({ key, value })
    .onConflict((conflict) => conflict.column('key').doUpdateSet({ value }))
    .execute();
}
