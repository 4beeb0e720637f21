// Which tablets of the plant saw the log, by their signatures under heads of it? Only those of the plant's signed list count, and only where
// the head is the plant's and goes with the one that is checked.

import { fromBase64 } from '../../shared/kit/base64.ts';
import type { Entry } from '../../shared/log/entry.ts';
import type { ExportReading } from '../../shared/log/export-read.ts';
import { parseNote } from '../../shared/log/note.ts';
import { compareEntries } from '../../shared/log/order.ts';
import type { ListedKey } from '../../shared/log/plant-list.ts';
import { type ExportWitnessed, readProofRecord } from '../../shared/log/proof-record.ts';
import { tabletsSaid, wasShutOut } from '../../shared/log/tablet-cosignature.ts';
import { consistencyHolds, type TreeHead } from '../../shared/log/tree.ts';
import { parseTreeHead, proofFromTexts } from '../../shared/log/tree-head.ts';
import { signatureHolds } from '../server/keys.ts';
import { noteHolds } from '../server/plant-key.ts';
import type { TreeProven } from './log-tree.ts';
import type { KnownKeys, PlantNamed } from './plant-keys.ts';

/** A tablet that saw the log grow up to a head. */
export interface SeenBy {
  readonly tablet: string;
  /** As the log names it; null where what is at hand does not say. */
  readonly name: string | null;
  /** When it signed, by its idea of the server's clock, ISO 8601. */
  readonly at: string;
  /** Entries of the log that it saw. */
  readonly size: number;
}

/** The answer, and what does not hold. */
export interface SeenVerdict {
  readonly by: readonly SeenBy[];
  readonly fault: string | null;
}

/** Who counts. */
export interface SeenEvidence {
  readonly plant: PlantNamed | null;
  readonly listed: readonly ListedKey[];
  readonly names: ReadonlyMap<string, string>;
}

/** Names of tablets as the log of a file tells them, the newest last. */
export function tabletNames(entries: readonly Entry[]): ReadonlyMap<string, string> {
  const told = entries.filter(({ kind }) => kind === 'tablet.opened' || kind === 'tablet.named');
  return new Map(
    told.sort(compareEntries).flatMap(({ tablet, payload }) => {
      const { name } = payload;
      return typeof name === 'string' ? [[tablet, name] as const] : [];
    }),
  );
}

/** Who saw the log of an export, by what its plant's line brings; `tree`: as it was checked. */
export function seenIn(reading: ExportReading, tree: TreeProven | null, known: KnownKeys): SeenVerdict {
  const [record] = reading.proofs ?? [];
  const witnessed = (record && readProofRecord(record)?.witnessed) ?? [];
  const root = tree && fromBase64(tree.root);
  if (!tree || !root) return { by: [], fault: null };
  const names = tabletNames(reading.entries);
  return seenBefore(witnessed, { size: tree.size, root }, { plant: known.plant, listed: known.keys, names });
}

/** One line for people; null where nobody saw it. */
export function saySeen(by: readonly SeenBy[]): string | null {
  if (by.length === 0) return null;
  const names = by.map(({ tablet, name }) => name ?? tablet).join(', ');
  return `seen by ${by.length} ${by.length === 1 ? 'tablet' : 'tablets'}: ${names}`;
}

/** Tablets whose signatures stand under a head that was checked already. */
export function seenUnder(text: string, { listed, names }: Omit<SeenEvidence, 'plant'>): SeenVerdict {
  const note = parseNote(text);
  const size = note ? (parseTreeHead(note.text)?.size ?? 0) : 0;
  const by: SeenBy[] = [];
  for (const said of note ? tabletsSaid(note, listed) : []) {
    const { tablet, key } = said.listed;
    if (!signatureHolds(key, said.text, said.sig))
      return { by: [], fault: `the signature of the tablet ${tablet} under a head does not hold` };
    const at = new Date(said.seconds * 1000).toISOString();
    if (!wasShutOut(said)) by.push({ tablet, name: names.get(tablet) ?? null, at, size });
  }
  return { by, fault: null };
}

/** Tablets that signed heads with which the log of `head` begins; each by the largest that it signed. */
export function seenBefore(
  witnessed: readonly ExportWitnessed[],
  head: TreeHead,
  evidence: SeenEvidence,
): SeenVerdict {
  const { plant } = evidence;
  const newest = new Map<string, SeenBy>();
  for (const one of plant ? witnessed : []) {
    const note = parseNote(one.head);
    const early = note && parseTreeHead(note.text);
    if (!note || !early || !plant || early.origin !== plant.key.name || !noteHolds(note, plant.key))
      return { by: [], fault: "a head that tablets signed is not signed by the plant's key" };
    const proof = proofFromTexts(one.proof === '' ? [] : one.proof.split(' '));
    if (!proof || early.size > head.size || !consistencyHolds(early, head, proof))
      return {
        by: [],
        fault: `tablets signed a log of ${early.size} entries that this one does not begin with: there are two logs, or the log was changed`,
      };
    const { by, fault } = seenUnder(one.head, evidence);
    if (fault !== null) return { by: [], fault };
    for (const seen of by)
      if ((newest.get(seen.tablet)?.size ?? -1) < seen.size) newest.set(seen.tablet, seen);
  }
  return { by: [...newest.values()].sort((a, b) => b.size - a.size), fault: null };
}
