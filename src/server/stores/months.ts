// Which entries came in during a month? By when the server took them, not by the tablets' clocks: what a tablet brings later comes in later, so that
// a month that is over stays as it is. A month begins at the first entry that came in at or after its first moment, UTC, wherever a clock
// that was set back puts others: months never overlap and leave nothing between them.

import { join } from 'node:path';
import type { Kysely } from 'kysely';
import type { StoreChoice } from './open.ts';
import { logFile, lookInside } from './sqlite/open.ts';
import type { Tables } from './tables.ts';

/** A month's places in the log: after the first, up to the last. */
export interface MonthPlaces {
  readonly afterPos: number;
  readonly untilPos: number;
}

/** The first moment of a month as `2026-03`, and of the next one, ms since 1970; null where it is none. */
export function monthSpan(month: string): { readonly fromMs: number; readonly toMs: number } | null {
  const [, year, number] = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(month) ?? [];
  if (year === undefined || number === undefined) return null;
  return { fromMs: Date.UTC(Number(year), Number(number) - 1), toMs: Date.UTC(Number(year), Number(number)) };
}

/** Where a month lies; null while nothing has come in after it: then it may still grow. */
export async function findMonth(
  { folder, database }: Pick<StoreChoice, 'folder' | 'database'>,
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
): Promise<MonthPlaces | null> {
  const ask = async (db: Kysely<Tables>): Promise<MonthPlaces | null> => {
    const [first, next] = [await firstSince(db, fromMs), await firstSince(db, toMs)];
    return first === null || next === null ? null : { afterPos: first - 1, untilPos: next - 1 };
  };
  if (database === null) return lookInside(join(folder, logFile), ask);
  // Loaded when wanted only, with the driver.
  const { askDatabase } = await import('./postgres/open.ts');
  return askDatabase(database, ask);
}

async function firstSince(db: Kysely<Tables>, ms: number): Promise<number | null> {
  const row = await db
    .selectFrom('entries')
    .select('pos')
    .where('received_ms', '>=', ms)
    .orderBy('pos')
    .limit(1)
    .executeTakeFirst();
  return row === undefined ? null : Number(row.pos);
}
