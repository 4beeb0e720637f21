// The steps of a sync, each safe to repeat: names of entries decide what is new, at both ends.

import type { Live } from '../../../shared/wire/messages.ts';
import {
  askPlant,
  isScreen,
  offerHeads,
  openSyncContext,
  type SyncContext,
  type SyncParts,
  takeNote,
  tellBacklog,
} from './context.ts';
import { checkHeads } from './heads.ts';
import type { CallFailure } from './http.ts';
import { askPlantKeys } from './plant-keys.ts';
import { askRecords } from './records.ts';
import { sendPictures } from './steps-pictures.ts';
import { pullAll, pullHistory, takeLive } from './steps-pull.ts';
import { pushAll } from './steps-push.ts';
import { type BroughtHead, checkAndSign, checkBrought } from './witness.ts';

export interface SyncSteps {
  /** Asks how far the server holds what is here; after a restore on its side, that is less than before. */
  readonly start: () => Promise<CallFailure | null>;
  /** Pushes what the server lacks: own entries, and others' where the server lost them. */
  readonly push: () => Promise<CallFailure | null>;
  /** Pulls up to the end of the server's log. */
  readonly pull: () => Promise<CallFailure | null>;
  /** Takes in a live event; false where it does not go on from here, and a pull is due. */
  readonly takeLive: (live: Live) => Promise<boolean>;
  /** Pulls one page of the history that a snapshot stood in for; `done` where there is none left. */
  readonly history: () => Promise<CallFailure | 'done' | null>;
  /** Sends some pictures of labels; `done` where the server has all. */
  readonly pictures: () => Promise<CallFailure | 'done' | null>;
  /** A person took note of what is wrong with the server's log. */
  readonly tookNote: () => Promise<void>;
  /** Asks how the plant stands: which tablets' clocks are off, how large its state is. */
  readonly ask: () => Promise<CallFailure | null>;
  /** Counts own entries that the server does not hold yet; asks nobody. */
  readonly tellBacklog: () => Promise<void>;
  /** Checks the heads of the server's log that came with receipts, and the newest, signs one as a witness, and asks for proofs to print; `onlyWaiting`: where receipts wait to be checked. */
  readonly heads: (onlyWaiting?: boolean) => Promise<CallFailure | null>;
  /** Checks a head that another tablet was shown. */
  readonly bring: (note: string) => Promise<BroughtHead>;
  /** Keeps the plant's newest list of keys. */
  readonly plantKeys: () => Promise<CallFailure | null>;
}

/** Makes the steps around one memory. */
export function createSyncSteps(parts: SyncParts): SyncSteps {
  const context = openSyncContext(parts);
  const steps = stepsOf(context);
  return isScreen(context) ? { ...steps, ...readsOnly(context) } : steps;
}

/** What a wall screen does in place of what sends: it checks the server's heads like any tablet, signs none, and has nothing that waits. */
function readsOnly(context: SyncContext): Pick<SyncSteps, 'push' | 'heads' | 'pictures'> {
  return {
    push: async () => null,
    heads: (onlyWaiting) => checkHeads(context, onlyWaiting),
    pictures: async () => 'done',
  };
}

function stepsOf(context: SyncContext): SyncSteps {
  return {
    start: () => offerHeads(context),
    push: () => pushAll(context),
    pull: () => pullAll(context),
    ask: () => askPlant(context),
    tookNote: () => takeNote(context),
    tellBacklog: () => tellBacklog(context),
    takeLive: (live) => takeLive(context, live),
    history: () => pullHistory(context),
    heads: async (onlyWaiting) => (await checkAndSign(context, onlyWaiting)) ?? askRecords(context),
    bring: (note) => checkBrought(context, note),
    pictures: () => sendPictures(context),
    plantKeys: () => askPlantKeys(context),
  };
}
