// What a backup may not take back: the store that it is put in place of knows it better.

import type { Kysely } from 'kysely';
import { plantRowName, serverKeyName, type Tables, ticketStartName } from './tables.ts';

/** What counts of the store that a backup is put in place of: who is let in and who is not is newer there. */
export interface Present {
  readonly tablets: readonly Tables['tablets'][];
  readonly keys: readonly Tables['tablet_keys'][];
  readonly serverKey: string | null;
  /** From where on the plant gives tickets: drawn anew it would leave out what tablets send again. */
  readonly ticketStart: string | null;
  /** What the plant is called; null where nobody named it. */
  readonly plant: string | null;
}

/** What the plant is called by its store or backup; null where nobody named it. */
export async function readPlantName(db: Kysely<Tables>): Promise<string | null> {
  const row = await db.selectFrom('meta').select('value').where('key', '=', plantRowName).executeTakeFirst();
  return row?.value ?? null;
}

/** Reads it. */
export async function readPresent(db: Kysely<Tables>): Promise<Present> {
  const read = async (name: string) => {
    const row = await db.selectFrom('meta').select('value').where('key', '=', name).executeTakeFirst();
    return row?.value ?? null;
  };
  return {
    tablets: await db.selectFrom('tablets').selectAll().execute(),
    keys: await db.selectFrom('tablet_keys').selectAll().execute(),
    serverKey: await read(serverKeyName),
    plant: await readPlantName(db),
    ticketStart: await read(ticketStartName),
  };
}
