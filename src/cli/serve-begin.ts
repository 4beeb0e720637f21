// `reelward serve begin FILE`: what another plant's file tells goes into the log of a plant that has neither a line nor a person yet.
// Method: a chain of its own, appended as one, so that it is there whole or not at all. It is signed by nobody: a file is the word of whoever
// takes it in, and an export calls it claimed. Refused: a plant with people, whose engineer does it on a tablet and stands for it.

import { randomBytes } from 'node:crypto';
import { countPlantFile, type PlantFile } from '../../shared/floor/plant-file.ts';
import { formatMoment } from '../../shared/kit/moment.ts';
import { tickClock } from '../../shared/log/clock.ts';
import { type ClockReading, type Entry, firstPrev } from '../../shared/log/entry.ts';
import { sealEntry } from '../../shared/log/seal.ts';
import { checkImported } from '../server/checked.ts';
import { Refused } from '../server/http/refuse.ts';
import { StoreRefused } from '../server/stores/migrate.ts';
import type { Store } from '../server/stores/store.ts';
import { NotUnderstood } from './command.ts';
import { ownVersion } from './version.ts';

/** What the chain is called among the plant's tablets. */
const NAME = 'Plant file';

const newId = (bytes: number) => randomBytes(bytes).toString('base64url');

/** The file as a chain of entries, written at `nowMs`. */
function chainOf({ drafts }: PlantFile, nowMs: number): readonly Entry[] {
  const [tablet, epoch] = [`file-${newId(9)}`, newId(12)];
  const opened = { name: NAME, app: ownVersion(), key: null, previous: null };
  let hlc: ClockReading | null = null;
  let prev: string = firstPrev;
  return [{ kind: 'tablet.opened', payload: opened }, ...drafts].map(({ kind, payload }, index) => {
    hlc = tickClock(hlc, nowMs);
    const at = formatMoment(nowMs);
    const [seq, told] = [index + 1, payload as unknown as Entry['payload']]; // JSON: read out of a file
    try {
      const sealed = sealEntry({ v: 1, tablet, epoch, seq, at, hlc, who: null, kind, payload: told, prev });
      prev = sealed.hash;
      return sealed;
    } catch (error) {
      throw new NotUnderstood(
        `begin: an entry ${kind} of the file cannot be sealed: ${(error as Error).message}`,
      );
    }
  });
}

/** Throws `StoreRefused` where the plant has begun already. */
async function refuseBegun(store: Pick<Store, 'ofKinds'>): Promise<void> {
  const [begun] = await store.ofKinds(['line.defined', 'person.added'], 0);
  if (begun === undefined) return;
  const { kind } = JSON.parse(begun.text) as Pick<Entry, 'kind'>; // the store holds checked entries only
  throw new StoreRefused(
    kind === 'line.defined'
      ? 'begin: this plant has lines already, and a file is not laid over them; name an empty store with --data or --database'
      : 'begin: this plant has people already; an engineer of it begins on a tablet, under Plant, This plant, Begin from a file',
  );
}

/** Begins the plant of a store from a file, and tells what it brought in one line; the caller makes sure that no server runs on it. */
export async function beginPlant(store: Store, file: PlantFile, nowMs: number): Promise<string> {
  await refuseBegun(store);
  const signatures = { proved: () => undefined }; // none is among them
  const entries = await checkImported(chainOf(file, nowMs), { store, signatures }, nowMs).catch((error) => {
    throw error instanceof Refused ? new NotUnderstood(`begin: ${error.message}`) : error;
  });
  const [appended] = await store.append([{ sender: 'file', entries }], nowMs);
  const fault = appended?.faults[0];
  if (fault) throw new StoreRefused(`begin: ${fault.id} was not taken into the log (${fault.fault})`);
  const { lines, slots, parts, checklists, labelRules } = countPlantFile(file);
  const of = file.name === null ? '' : ` of ${file.name}`;
  return `Begun from a file${of}: lines ${lines}, slots ${slots}, parts ${parts}, checklists ${checklists}, label rules ${labelRules}`;
}
