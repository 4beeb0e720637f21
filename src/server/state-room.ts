// How large is the state that a new tablet starts from? Kept with the log, as the tablet that made the last one told it: also of one that
// was too large to be handed over, so that the server's administrator hears of it, and no tablet is asked again at each page.

import { type RoomWord, roomShare, roomWord, type StateSize } from '../../shared/wire/state-room.ts';
import type { Store } from './stores/store.ts';

/** Where it stands in the store. */
const META = 'state-size';

/** A state's size, and the place in the log up to which it was folded. */
export interface StateTold extends StateSize {
  readonly pos: number;
}

/** For the log: what it is, and what to do. */
export const roomWords: Readonly<Record<Exclude<RoomWord, 'fits'>, string>> = {
  nears:
    'the state that a new tablet starts from takes half of what may be handed over, or more: join spare tablets while it is quick',
  over: 'the state that a new tablet starts from is too large to be handed over: a new tablet reads the whole log first; join it before it is needed and leave it open',
};

/** Keeps what was told last: a smaller state ends what a larger one said. */
export function keepStateSize(store: Pick<Store, 'writeMeta'>, told: StateTold): Promise<void> {
  return store.writeMeta(META, JSON.stringify(told));
}

/** What was told last; null where no state was made yet. */
export async function readStateSize(store: Pick<Store, 'readMeta'>): Promise<StateTold | null> {
  const text = await store.readMeta(META);
  return text === null ? null : (JSON.parse(text) as StateTold); // written above only
}

/** For whoever asks how the server stands: no reason to call it unwell, as its log does not hang on it. Nothing where no state was made yet. */
export function stateTold(told: StateTold | null): object {
  if (told === null) return {};
  const share = roomShare(told);
  return { newTablets: { state: roomWord(share), share: Math.round(share * 1000) / 1000 } };
}
