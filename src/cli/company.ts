// The logs of several plants beside each other, each out of an export of its own and checked by that plant's own list of keys: nothing is joined
// in a database, so that a plant gives away what it exports and no more. What a plant does not prove is told with every answer.

import { existsSync } from 'node:fs';
import type { FloorEntry } from '../../shared/floor/kinds.ts';
import { readFloorEntry } from '../../shared/floor/kinds.ts';
import { lacksSecrets } from '../../shared/floor/secrets.ts';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import { verifyExport } from '../../shared/log/export-verify.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { type TraceIndex, traceLog } from '../../shared/trace/stretches.ts';
import { type CommandIo, NotUnderstood, readText } from './command.ts';
import { checkSignatures, readLogFile } from './log-file.ts';
import { broughtIn, countProven, holdsText, type Proven } from './log-proven.ts';
import { checkTree } from './log-tree.ts';
import { keysInExport, keysInFile, readFingerprint, sayPlant } from './plant-keys.ts';

/** How sure an answer is: see the help of `company`. */
export type Standing = 'proven' | 'entry-proven' | 'claimed';

/** One plant's export, read and checked. */
export interface PlantLog {
  readonly file: string;
  /** As the company's list calls it, else as its own list of keys says; the file's name where it has none or is none of the company's. */
  readonly name: string;
  /** Of the plant's key; null where no list of keys was found. */
  readonly fingerprint: string | null;
  /** When the list was signed. */
  readonly listAt: string | null;
  /** Whether the key is among those that were given; null where none were. */
  readonly isKnown: boolean | null;
  readonly entries: number;
  readonly proven: number;
  readonly claims: Proven['claims'];
  /** Entries of the plant's log that the file leaves out, by the signed head in it; null where it has none. */
  readonly leftOut: number | null;
  /**
   * When it was written, by the signed list in it, ISO 8601: of what came after it knows nothing. Null where the file does not tell. The head is
   * signed apart: that it is as new as the list, only a head or a witness kept elsewhere says.
   */
  readonly endsAt: string | null;
  /** The first and last moment in it, ISO 8601; null where it is empty. */
  readonly from: string | null;
  readonly to: string | null;
  /** What does not hold: nothing is answered out of such a file. */
  readonly faults: readonly string[];
  /** How sure is what hangs on the whole file. */
  readonly standing: Exclude<Standing, 'entry-proven'>;
  /** How sure is what an entry says; null for none in particular. */
  readonly standingOf: (id: string | null) => Standing;
  readonly index: TraceIndex;
  readonly floorEntries: readonly FloorEntry[];
}

/** The plants of a company by their keys: fingerprint to what the list calls it. */
export type KnownPlants = ReadonlyMap<string, string>;

/** Reads the list: a fingerprint a line, and what the plant is called after it. */
export async function readPlants(file: string, io: CommandIo): Promise<KnownPlants> {
  const known = new Map<string, string>();
  for (const [at, line] of (await readText(file, io)).split('\n').entries()) {
    const [, print, name = ''] = /^\s*([0-9a-fA-F:]{64,95})\s*(.*?)\s*$/.exec(line) ?? [];
    if (line.trim() === '' || line.trimStart().startsWith('#')) continue;
    if (print === undefined)
      throw new NotUnderstood(`${file}: line ${at + 1}: expected a fingerprint and a name, found ${line}`);
    known.set(readFingerprint(print), name);
  }
  return known;
}

/** Reads one after the other, so that no more than one log is in memory; two files of one plant are refused. */
export async function* readCompany(
  files: readonly string[],
  known: KnownPlants | null,
  io: CommandIo,
): AsyncGenerator<PlantLog> {
  const seen = new Map<string, string>();
  for (const file of files) {
    const log = await readPlantLog(file, known, io);
    const before = seen.get(log.fingerprint ?? '');
    if (before !== undefined)
      throw new NotUnderstood(`${file}: of the same plant as ${before}: give one export of each plant`);
    if (log.fingerprint !== null) seen.set(log.fingerprint, file);
    yield log;
  }
}

/** The list of keys beside an export that has none in it: `brae.keys` for `brae.csv`. */
const listBeside = (file: string) => file.replace(/(\.[^./\\]*)?$/, '.keys');

async function readPlantLog(file: string, known: KnownPlants | null, io: CommandIo): Promise<PlantLog> {
  const reading = await readLogFile(file, io);
  const unread = reading.faults.find((fault) => fault.entry === null);
  if (unread)
    throw new NotUnderstood(
      `${file}: line ${unread.row}: expected ${unread.wanted}, found ${unread.found || 'nothing'}`,
    );
  const inside = keysInExport(reading.proofs ?? []);
  const beside = inside.from === null && inside.fault === null && existsSync(listBeside(file));
  const { plant, keys, fault } = beside ? await keysInFile(listBeside(file), io) : inside;
  const fingerprint = plant && sayPlant(plant).fingerprint;
  const isKnown = known && fingerprint !== null && known.has(fingerprint);
  // A list that is nobody's in the company proves nothing.
  const listed = plant !== null && isKnown !== false ? keys : [];
  const { entries } = reading;
  const signatures = checkSignatures(entries, listed, reading.omitted);
  const report = verifyExport(reading, {
    signatureHolds: signatures.holds,
    mustBeSigned: signatures.lacksHead,
    lacksFields: lacksSecrets,
  });
  const { tree, fault: treeFault } = checkTree(reading, plant?.key ?? null, null);
  const counted = countProven(entries, signatures, {
    isWhole: report.ok,
    listed,
    brought: broughtIn(reading),
  });
  const broken = report.firstBroken && `entry ${report.firstBroken.id}: ${report.firstBroken.fault}`;
  const sorted = [...entries].sort(compareEntries);
  const isWhole = counted.claimed === 0 && tree?.leftOut === 0 && tree.beyond === 0;
  const proven = provenIds(entries, signatures.keyOf, report.ok);
  const standing = isWhole ? 'proven' : 'claimed';
  return {
    file,
    name: nameOf(file, { known, isKnown, fingerprint, own: plant?.name ?? null }),
    fingerprint,
    listAt: plant?.listAt ?? null,
    isKnown,
    entries: entries.length,
    proven: counted.proven,
    claims: counted.claims,
    leftOut: tree?.leftOut ?? null,
    endsAt: beside ? null : (plant?.listAt ?? null),
    from: sorted[0]?.at ?? null,
    to: sorted.at(-1)?.at ?? null,
    faults: [broken, fault, treeFault].filter((one) => one !== null),
    standing,
    standingOf: (id) => (isWhole || id === null ? standing : proven.has(id) ? 'entry-proven' : 'claimed'),
    index: traceLog(sorted),
    floorEntries: sorted.flatMap((entry) => readFloorEntry(entry) ?? []),
  };
}

function provenIds(
  entries: readonly Entry[],
  keyOf: ReturnType<typeof checkSignatures>['keyOf'],
  isWhole: boolean,
): ReadonlySet<string> {
  const ids = new Set<string>();
  for (const entry of entries) {
    const key = keyOf(entry);
    if (key !== null && typeof key === 'object' && holdsText(entry, isWhole)) ids.add(entryId(entry));
  }
  return ids;
}

/** A stranger's list may call itself what it likes, also like one of the company's. */
function nameOf(
  file: string,
  {
    known,
    isKnown,
    fingerprint,
    own,
  }: {
    readonly known: KnownPlants | null;
    readonly isKnown: boolean | null;
    readonly fingerprint: string | null;
    readonly own: string | null;
  },
): string {
  if (isKnown === false) return file;
  return (fingerprint !== null && known?.get(fingerprint)) || (own ?? file);
}
