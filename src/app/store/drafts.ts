// What goes into the log: draft entries checked against their kinds, a tablet's first entry, and entries of others whose name is free.

import type { Draft } from '../../../shared/floor/draft.ts';
import { checkPayload, type DraftEntry, type PayloadOf } from '../../../shared/floor/kinds.ts';
import { isSignedItself } from '../../../shared/floor/own-signature.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { entryToRow, type LogDatabase } from './database.ts';
import { type Identity, publicKey, type Remembered } from './identity.ts';
import type { CheckedDraftEntry, EntryDraft } from './writer.ts';

/** What a chain begins with: who writes it, and the chain that went before. */
export async function openingDraft(
  identity: Identity,
  of: { readonly appVersion: string; readonly tabletName: string; readonly lost: Remembered | null },
): Promise<DraftEntry> {
  const { appVersion, tabletName, lost } = of;
  const previous = lost ? { epoch: lost.epoch, seq: lost.seq } : null;
  const key = await publicKey(identity);
  return {
    kind: 'tablet.opened',
    payload: { name: tabletName, app: appVersion, key: key as PayloadOf<'tablet.opened'>['key'], previous }, // as exported
  };
}

/** A draft checked, now or once the entries before it are known. Throws where it does not fit its kind. */
export function checkDraft(draft: Draft): EntryDraft {
  return typeof draft === 'function'
    ? (before, own) => checkDraftEntry(draft(before, own))
    : checkDraftEntry(draft);
}

/** A draft entry checked. Throws where it does not fit its kind. */
export function checkDraftEntry({ kind, payload }: DraftEntry): CheckedDraftEntry {
  const checked = checkPayload(kind, payload as PayloadOf<typeof kind>); // the pair is kept together by `DraftEntry`
  return { kind, payload: checked, isSigned: isSignedItself(kind) };
}

/** Adds entries whose name is free; one whose name is taken by another hash is kept out and reported by its absence. */
export async function addMissing(log: LogDatabase, entries: readonly Entry[]): Promise<readonly Entry[]> {
  return log.transaction('rw', log.entries, async () => {
    const keys = entries.map((entry) => [entry.tablet, entry.epoch, entry.seq] as [string, string, number]);
    const there = await log.entries.bulkGet(keys);
    const fresh = entries.filter((_, index) => there[index] === undefined);
    await log.entries.bulkAdd(fresh.map(entryToRow));
    return fresh;
  });
}
