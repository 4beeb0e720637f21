// What was just written of slots is told at the foot of the screen, with a way to take all of it back.

import { type Entry, entryId } from '../../../shared/log/entry.ts';
import type { App, Notice } from '../app.ts';

/** What can be taken back. */
interface Back {
  /** What the button says. */
  readonly label: string;
  /** What the log says of it. */
  readonly reason: string;
  /** The slot of each entry, in the order of the entries; entries without one stay. */
  readonly slots: readonly { readonly line: string; readonly slot: string }[];
  readonly entries: readonly Entry[];
}

/** Tells it, and offers to take it back: one correction for each slot, in one append. */
export function offerBack(
  app: Pick<App, 'notice' | 'record'>,
  told: Pick<Notice, 'tone' | 'text'>,
  { label, reason, slots, entries }: Back,
): void {
  const run = () => {
    app.record(
      slots.flatMap(({ line, slot }, at) => {
        const entry = entries[at];
        if (!entry) return [];
        return [{ kind: 'entry.corrected' as const, payload: { of: entryId(entry), line, slot, reason } }];
      }),
    );
  };
  app.notice.value = { ...told, act: { label, run } };
}
