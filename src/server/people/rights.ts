// What the log proves of the rights that its entries took, for exports: folded from the entries that take a lead or an engineer, and from
// what these hang on.

import { kindsWithRight, standOfKind } from '../../../shared/floor/acts.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import type { RightOf } from '../../../shared/log/export-rows.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import type { ExportRights } from '../../../shared/log/proof-record.ts';
import type { Store } from '../stores/store.ts';
import type { TicketDesk } from './tickets.ts';

/** What is known as of now: entry by entry, and all that is not proven. */
export interface LogRights {
  readonly rightOf: RightOf;
  readonly marks: ExportRights;
}

/** Reads it. Memory: the entries of these kinds, some ten thousand a year. */
export async function readRights(
  store: Pick<Store, 'ofKinds'>,
  desk: Pick<TicketDesk, 'trust'>,
): Promise<LogRights> {
  const trust = await desk.trust();
  const state = emptyState();
  if (trust) {
    const rows = await store.ofKinds([...kindsWithRight, 'ticket.taken', 'tablet.shut-out'], 0);
    const entries = rows.map(({ text }) => JSON.parse(text) as Entry).sort(compareEntries); // the store holds checked entries only
    await trust.look(entries);
    applyAll(state, entries, trust);
  }
  const marked = [...state.unproven.values()];
  const those = (as: 'confirmed' | 'rejected' | undefined) =>
    marked.filter(({ settled }) => settled?.as === as).map(({ entry }) => entry);
  return {
    rightOf: (entry) => standOfKind(state, entry, trust) ?? '',
    marks: { unproven: those(undefined), confirmed: those('confirmed'), rejected: those('rejected') },
  };
}
