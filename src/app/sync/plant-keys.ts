// Keeps the plant's signed list of its tablets' keys, for exports of this tablet, and from where on it gives tickets; only where the key that it knows since it joined signed it.

import { parsePlantList } from '../../../shared/log/plant-list.ts';
import { parseTicketStart } from '../../../shared/log/ticket-start.ts';
import { plantKeysSchema } from '../../../shared/wire/messages.ts';
import { remember, type SyncContext } from './context.ts';
import { noteSignedBy } from './heads.ts';
import type { CallFailure } from './http.ts';

/** Asks for the newest list. A list by another key is not kept: the heads tell of that. */
export async function askPlantKeys(context: SyncContext): Promise<CallFailure | null> {
  const { log, caller } = context;
  if (!log.keepPlantKeys) return null;
  const told = await caller.call('/api/keys', plantKeysSchema);
  if (!told.ok) return told.error.code === 'not-found' ? null : told.error;
  const { enrolled } = context.memory;
  const serverKey = enrolled?.serverKey ?? '';
  const note = await noteSignedBy(told.value.keys, serverKey, (text) => {
    const list = parsePlantList(text);
    return list && { origin: list.plantKey.name, plant: list.plant };
  });
  if (typeof note !== 'string') {
    await log.keepPlantKeys(told.value.keys);
    // It may be called otherwise by now: with another key after a restore it is known by the name alone.
    if (enrolled && enrolled.plant !== note.plant)
      await remember(context, { enrolled: { ...enrolled, plant: note.plant } });
  }
  const { tickets } = told.value;
  if (tickets === undefined || !log.keepTicketStart) return null;
  const start = await noteSignedBy(tickets, serverKey, parseTicketStart);
  if (typeof start !== 'string') await log.keepTicketStart({ note: tickets, serverKey });
  return null;
}
