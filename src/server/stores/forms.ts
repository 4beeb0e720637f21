// Signatures that are none by their form: earlier versions kept any text of 128 characters, and such a text spoilt whatever was
// written around it. Found once, at the first start after it: the entry as it was is quarantined, and stays in its place without the
// signature, since the seals of all later entries stand on its hash.

import type { Kysely } from 'kysely';
import { signatureForm } from '../../../shared/log/entry.ts';
import { putMeta } from './meta.ts';
import type { MonthTexts } from './month-texts.ts';
import { wholeBody } from './packed.ts';
import type { Tables } from './tables.ts';

const ROWS_AT_ONCE = 5_000;
/** Name of the kept place: the position up to which every signature's form was looked at. */
const PLACE = 'signature_forms_to';

/** Quarantines them; ids of their entries. Throws where the text of one lies in a file that cannot be read; those before it are done. What comes in later is checked as it comes, so each place is looked at once. */
export async function quarantineSignatures(
  db: Kysely<Tables>,
  texts: Pick<MonthTexts, 'fill'>,
  nowMs: number,
): Promise<readonly string[]> {
  const place = await db.selectFrom('meta').select('value').where('key', '=', PLACE).executeTakeFirst();
  let pos = Number(place?.value ?? 0);
  const ids: string[] = [];
  for (;;) {
    const rows = await db
      .selectFrom('entries')
      .select(['pos', 'tablet', 'epoch', 'seq', 'sig'])
      .where('pos', '>', pos)
      .orderBy('pos')
      .limit(ROWS_AT_ONCE)
      .execute();
    const last = rows.at(-1);
    if (!last) return ids;
    for (const row of rows) {
      if (row.sig === null || signatureForm.test(row.sig)) continue;
      await quarantine(db, texts, { pos: row.pos, nowMs });
      ids.push(`${row.tablet}/${row.epoch}/${row.seq}`);
    }
    pos = last.pos;
    await putMeta(db, PLACE, String(pos));
  }
}

async function quarantine(
  db: Kysely<Tables>,
  texts: Pick<MonthTexts, 'fill'>,
  { pos, nowMs }: { readonly pos: number; readonly nowMs: number },
): Promise<void> {
  // Before the transaction: an embedded store has one connection, and where a text lies is asked over it. No row changes meanwhile.
  const rows = await texts.fill(await db.selectFrom('entries').selectAll().where('pos', '=', pos).execute());
  const [row] = rows;
  if (!row) return;
  await db.transaction().execute(async (tx) => {
    const { tablet, epoch, seq, hash, sig, via } = row;
    await tx
      .insertInto('aside')
      .values({
        id: `${tablet}/${epoch}/${seq}`,
        fault: 'signature-differs',
        received_ms: nowMs,
        via: via ?? tablet,
        hash,
        sig,
        body: wholeBody(row),
      })
      .onConflict((conflict) => conflict.columns(['id', 'hash']).doNothing())
      .execute();
    await tx.updateTable('entries').set({ sig: null }).where('pos', '=', pos).execute();
  });
}
