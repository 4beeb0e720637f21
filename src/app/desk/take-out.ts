// Takes a reel off its slot: one entry, told at the foot of the screen, with a way back.

import { unloadedFacts } from '../../../shared/desk/unloaded.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import type { CountBasis, Source } from '../../../shared/floor/vocabulary.ts';
import type { App } from '../app.ts';
import { loadWords } from '../words/load.ts';
import { say } from '../words/words.ts';
import { offerBack } from './offer-back.ts';

/** What somebody counted on the reel that comes off; null where nobody did. */
export interface CountedLeft {
  readonly quantity: number;
  readonly basis: CountBasis;
}

/** Writes the unload of a slot of this line, whichever is in hand by then. Resolves when durable; a failed write is shown by the fault screen. */
export async function takeOut(
  app: App,
  { line, slot }: { readonly line: string; readonly slot: string },
  via: Source,
  counted: CountedLeft | null = null,
): Promise<void> {
  const floor = app.store.floor();
  const loaded = floor.slots.get(slotKey(line, slot));
  if (!loaded) return;
  const words = say(loadWords);
  const entries = await app
    .write([
      {
        kind: 'reel.unloaded',
        payload: {
          ...unloadedFacts(floor, loaded),
          via,
          quantity: counted?.quantity ?? null,
          basis: counted?.basis ?? null,
        },
      },
    ])
    .catch(() => []); // the fault screen has told
  if (entries.length === 0) return;
  offerBack(
    app,
    { tone: 'plain', text: words.unloaded(slot) },
    { label: words.undo, reason: 'taken back after unloading', slots: [{ line, slot }], entries },
  );
}
