// What is done to a server's store from a terminal. A person who can do this has the data folder or the database anyway.

import { writeFileSync } from 'node:fs';
import { generate } from 'lean-qr';
import { formatGrowth } from '../../shared/log/head-growth.ts';
import { proofFromTexts } from '../../shared/log/tree-head.ts';
import { makeCode, terminal } from '../server/codes.ts';
import { openServerKey } from '../server/keys.ts';
import { createOwnChain, type OwnDraft } from '../server/own-chain.ts';
import { signedKeys } from '../server/plant-key.ts';
import { makeBackup } from '../server/stores/backup.ts';
import { type Migrated, StoreRefused } from '../server/stores/migrate.ts';
import { openPresentStore, openStore, type StoreChoice } from '../server/stores/open.ts';
import { plantOf } from '../server/stores/plant-name.ts';
import { restoreInto } from '../server/stores/restore.ts';
import { lockFolder } from '../server/stores/sqlite/lock.ts';
import type { Store } from '../server/stores/store.ts';
import { createHeadSigner, proveTree } from '../server/tree-heads.ts';
import { type CommandIo, NotUnderstood, printJson } from './command.ts';
import { readOtherPlant } from './plant-file.ts';
import { beginPlant } from './serve-begin.ts';
import { writeMonth } from './serve-month.ts';
import { bringMonthBack, letMonthLeave } from './serve-month-out.ts';
import { listPlants, rename } from './serve-plants.ts';
import { readPlace, readPlant, readPublicUrl, type ServeValues } from './serve-settings.ts';
import { ownVersion } from './version.ts';

/** For messages about the call. */
export const actNames =
  'check, plants FOLDER, begin FILE, rename NAME, enrol, tablets, revoke TABLET, keys, head [SIZE], aside [FILE], backup FILE, month FOLDER, month-out MONTH, month-in MONTH or restore FILE';

const nowMs = () => Date.now();

/** One line for whoever started the server or the act. */
export function migratedLine({ from, to, keptAt }: Migrated): string {
  const copy = keptAt === null ? '' : `; what was there before is kept in ${keptAt}`;
  return `The store was brought from schema ${from} to ${to}${copy}\n`;
}

/** Runs one act. */
export async function runAct(
  positionals: readonly string[],
  values: ServeValues,
  io: CommandIo,
): Promise<number> {
  const [act = '', object] = positionals;
  const onMigrated = (migrated: Migrated) => io.stderr(migratedLine(migrated));
  if (act === 'plants' && object !== undefined) return listPlants(object, values, io);
  const plant = readPlant(values.plant);
  const place = { ...readPlace(values), nowMs, onMigrated };
  if (act === 'restore' && object !== undefined)
    return restore(object, { ...place, plant, replace: values.replace ?? false }, io);
  if (act === 'begin' && object !== undefined) return begin(object, place, io);
  if (act === 'month' && object !== undefined)
    return writeMonth(object, { month: values.month, place, plant }, io);
  if ((act === 'month-out' || act === 'month-in') && object !== undefined) {
    // Said before anything is read; the change itself takes the store for itself again.
    await (await lockPlace(place))();
    return (act === 'month-out' ? letMonthLeave : bringMonthBack)(object, { place, plant }, io);
  }
  if (act === 'rename' && object !== undefined) return rename(object, place, io);
  const work = findAct(act, object, { values, months: place.months, io });
  if (!work) throw new NotUnderstood(`expected nothing or ${actNames}, found ${positionals.join(' ')}`);
  // A code may be wanted before the first start, for a link that starts beside the server: that act alone makes a store.
  const store = await (act === 'enrol' ? openStore : openPresentStore)(place);
  try {
    await plantOf(store, plant);
    return await work(store);
  } finally {
    await store.close();
  }
}

function findAct(
  act: string,
  object: string | undefined,
  {
    values,
    months,
    io,
  }: { readonly values: ServeValues; readonly months: string | null; readonly io: CommandIo },
): ((store: Store) => Promise<number>) | null {
  // Before a store is opened, or made.
  if (act === 'enrol' && values.screen === true && values.replaces !== undefined)
    throw new NotUnderstood('--screen: a wall screen takes no tablet’s place; leave --replaces out');
  if (act === 'enrol' && object === undefined)
    return (store) =>
      enrol(store, { url: addressOf(values), replaces: values.replaces, screen: values.screen }, io);
  if (act === 'tablets' && object === undefined) return (store) => tablets(store, io);
  if (act === 'keys' && object === undefined) return (store) => keys(store, readPlant(values.plant), io);
  if (act === 'head') return (store) => head(store, object ?? '0', io);
  if (act === 'aside') return (store) => listQuarantined(store, object, io);
  if (object === undefined) return null;
  if (act === 'revoke') return (store) => revoke(store, object, io);
  if (act === 'backup') return (store) => backup(store, object, { keep: readKeep(values.keep), months, io });
  return null;
}

/** The address that tablets use, as far as it was told. */
function addressOf({ url, 'public-url': publicUrl }: ServeValues): string {
  return url ?? (publicUrl === undefined ? 'http://localhost:8080' : readPublicUrl(publicUrl));
}

/** Dark modules on a light ground, whatever the terminal's colours: some readers do not take the inverse. */
const darkOnLight = { on: '\u001b[40m  ', off: '\u001b[107m  ', lf: '\u001b[0m\n', pad: 3 };

async function enrol(
  store: Store,
  {
    url,
    replaces,
    screen,
  }: {
    readonly url: string;
    readonly replaces: string | undefined;
    readonly screen: boolean | undefined;
  },
  io: CommandIo,
): Promise<number> {
  const known = replaces === undefined || (await store.findTablet(replaces));
  if (!known) throw new StoreRefused(`--replaces: no tablet is called ${replaces}; see serve tablets`);
  const code = await makeCode(store, nowMs(), { replaces, screen });
  const link = `${url.replace(/\/$/, '')}${code.path}`;
  if (process.stderr.isTTY) io.stderr(`${generate(link).toString(darkOnLight)}\u001b[0m\n`);
  const what = screen === true ? 'wall screen, which only shows,' : 'tablet';
  io.stderr(`Code ${code.code}, for one ${what} within ten minutes. Or open on it: ${link}\n`);
  return 0;
}

async function tablets(store: Store, io: CommandIo): Promise<number> {
  const list = await store.listTablets();
  const moment = (ms: number | null) => (ms === null ? null : new Date(ms).toISOString());
  printJson(
    list.map(({ tablet, name, enrolledMs, seenMs, revokedMs, clockOffMs, screen }) => ({
      tablet,
      name,
      screen,
      enrolled: moment(enrolledMs),
      seen: moment(seenMs),
      revoked: moment(revokedMs),
      clockOffSeconds: clockOffMs === null ? null : clockOffMs / 1000,
    })),
    io,
  );
  return 0;
}

/** The signed list of the tablets' keys, for whoever checks an export. */
async function keys(store: Store, given: string | null, io: CommandIo): Promise<number> {
  const [key, plant] = [await openServerKey(store), await plantOf(store, given)];
  io.stdout(await signedKeys(store, key.plant, { plant, nowMs: nowMs() }));
  io.stderr(`The plant's key: ${key.plant.fingerprint}\n`);
  return 0;
}

/** The signed head of the log's tree, with the proof that it begins with that of an earlier size: for witnesses. */
async function head(store: Store, earlier: string, io: CommandIo): Promise<number> {
  const tree = await store.tree();
  if (!/^(0|[1-9]\d{0,14})$/.test(earlier))
    throw new NotUnderstood(`head: expected the size of an earlier head, found ${earlier}`);
  const old = Number(earlier);
  if (!tree || old > tree.size)
    throw new StoreRefused(`head: the log has ${tree?.size ?? 0} entries, not ${old}`);
  const { plant } = await openServerKey(store);
  const { consistency } = await proveTree(store, tree, { sizes: [old], places: [] });
  const note = createHeadSigner(plant).sign(tree);
  io.stdout(formatGrowth({ old, proof: proofFromTexts(consistency[0] ?? []) ?? [], note }));
  return 0;
}

async function revoke(store: Store, tablet: string, io: CommandIo): Promise<number> {
  const known = await store.findTablet(tablet);
  // First, as what fails here is asked for again: shut out already, it would be told nowhere.
  if (known?.revokedMs === null)
    await tellLog(store, { kind: 'tablet.shut-out', payload: { tablet, ...terminal() } });
  const revoked = await store.revokeTablet(tablet, nowMs());
  // Another process that serves PostgreSQL hears this at once; one that serves the folder at the tablet's next request.
  await store.tell({ kind: 'revoked', tablet });
  io.stderr(revoked ? `${tablet} is shut out\n` : `${tablet}: no such tablet, or shut out already\n`);
  return revoked ? 0 : 1;
}

/** Writes into the plant's log what was done here. */
async function tellLog(store: Store, draft: OwnDraft): Promise<void> {
  const key = await openServerKey(store);
  await createOwnChain({ store, key, app: ownVersion(), nowMs }).tell(draft);
}

/** What was quarantined: who brought it, when and why it is no part of the log; with a file, the entries themselves too. */
async function listQuarantined(store: Store, file: string | undefined, io: CommandIo): Promise<number> {
  const list = await store.quarantined();
  const facts = list.map(({ id, hash, fault, receivedMs, via }) => ({
    id,
    hash,
    fault,
    received: new Date(receivedMs).toISOString(),
    via,
  }));
  if (file === undefined) {
    printJson(facts, io);
    return 0;
  }
  const lines = list.map(({ text }, at) => `${JSON.stringify({ ...facts[at], entry: JSON.parse(text) })}\n`);
  try {
    // Never over what is there: it may be the only copy of an earlier look.
    writeFileSync(file, lines.join(''), { flag: 'wx' });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    const why = code === 'EEXIST' ? `${file} exists already: name a file that does not` : message;
    throw new StoreRefused(`aside: ${why}`);
  }
  const told = list.length === 1 ? '1 entry kept aside was' : `${list.length} entries kept aside were`;
  io.stderr(`${told} written to ${file}; the server keeps them too\n`);
  return 0;
}

async function backup(
  store: Store,
  place: string,
  {
    keep,
    months,
    io,
  }: { readonly keep: number | null; readonly months: string | null; readonly io: CommandIo },
): Promise<number> {
  const { file, entries, removed, away } = await makeBackup(store, place, { keep, months, nowMs: nowMs() });
  const done = away.length > 0 ? '' : ' and read them back';
  io.stderr(`Backed up ${entries} entries to ${file}${done}\n`);
  const left = (await store.monthsLeft()).map((month) => month.file);
  if (left.length > 0)
    io.stderr(
      `Texts that left the store are not in it; keep copies of their files too: ${left.join(', ')}\n`,
    );
  for (const line of away) io.stderr(`NOT READ: ${line}\n`);
  if (away.length > 0) {
    io.stderr(
      'It counts as no backup while a month cannot be read, and none was taken away: see to that file, and back up again\n',
    );
    return 1;
  }
  if (removed.length > 0) io.stderr(`Taken away, as ${keep} are kept: ${removed.join(', ')}\n`);
  return 0;
}

function readKeep(text: string | undefined): number | null {
  if (text === undefined) return null;
  if (/^[1-9]\d{0,3}$/.test(text)) return Number(text);
  throw new NotUnderstood(`--keep: expected a whole number from 1 to 9999, found ${text}`);
}

async function restore(
  file: string,
  place: {
    readonly folder: string;
    readonly database: string | null;
    readonly months: string | null;
    readonly replace: boolean;
    readonly plant: string | null;
    readonly nowMs: () => number;
  },
  io: CommandIo,
): Promise<number> {
  const entries = await putBack(file, place, io);
  // Its own lock would keep this out of the log.
  const store = await openStore(place);
  try {
    await tellLog(store, { kind: 'log.restored', payload: { entries, ...terminal() } });
    for (const { message } of await store.monthFaults()) io.stderr(`NOT READABLE: ${message}\n`);
  } finally {
    await store.close();
  }
  return 0;
}

/** Returns how many entries were restored. */
async function putBack(
  file: string,
  place: StoreChoice & { readonly replace: boolean; readonly plant: string | null },
  io: CommandIo,
): Promise<number> {
  const unlock = await lockPlace(place);
  try {
    const { entries, keptAt, letIn } = await restoreInto({ file, ...place });
    if (keptAt !== null) io.stderr(`What was there is kept in ${keptAt}\n`);
    io.stderr(`Restored ${entries} entries from ${file}; tablets offer again what they hold\n`);
    if (letIn.length > 0) {
      const names = letIn.map(({ tablet, name }) => `  ${tablet}  ${name}\n`).join('');
      io.stderr(`Let in as the backup says; shut out with serve revoke who should not be:\n${names}`);
    }
    return entries;
  } finally {
    await unlock();
  }
}

/** The first thing in a plant's log: what another plant's file tells. The file is read before anything is made. */
async function begin(file: string, place: StoreChoice, io: CommandIo): Promise<number> {
  const read = await readOtherPlant(file, io);
  const unlock = await lockPlace(place);
  try {
    const store = await openStore({ ...place, isAlone: true });
    try {
      io.stderr(`${await beginPlant(store, read, nowMs())}\n`);
    } finally {
      await store.close();
    }
    io.stderr(
      'It has no people yet and no name of its own: start the server, join a tablet, and go on with the first steps there\n',
    );
    return 0;
  } finally {
    await unlock();
  }
}

/** Makes sure that no server runs on a store, and none is started while something is put in. */
async function lockPlace({
  folder,
  database,
}: {
  readonly folder: string;
  readonly database: string | null;
}): Promise<() => Promise<void> | void> {
  if (database === null) {
    const unlock = lockFolder(folder);
    if (unlock) return unlock;
    throw new StoreRefused(`${folder}: a server runs on this data folder; stop it first`);
  }
  // Loaded when wanted only, with the driver.
  const { lockDatabase } = await import('../server/stores/postgres/serving.ts');
  const unlock = await lockDatabase(database);
  if (unlock) return unlock;
  throw new StoreRefused('--database: a server runs on this database; stop every one that does first');
}
