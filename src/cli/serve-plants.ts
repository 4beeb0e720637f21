// `reelward serve plants FOLDER` and `serve rename`: several plants on one computer, each with a file of settings, a store and a process of its
// own. What two of them must not share is looked at over all files; the rest is what `serve check` says of each.

import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { askHealth, checkServer, type Finding } from '../server/checks.ts';
import { isLocal, listenAddress } from '../server/listen.ts';
import type { ServerSettings } from '../server/settings.ts';
import { openPresentStore, type StoreChoice } from '../server/stores/open.ts';
import { storedPlant } from '../server/stores/plant-name.ts';
import { splitAddress } from '../server/stores/postgres/address.ts';
import { plantRowName } from '../server/stores/tables.ts';
import { type CommandIo, NotUnderstood } from './command.ts';
import { marks } from './serve-check.ts';
import { gatherValues } from './serve-config.ts';
import { storeFault } from './serve-faults.ts';
import { readPlant, readSettings, type ServeValues } from './serve-settings.ts';

/** A plant by its file; `settings` null where that is not understood. */
interface PlantFile {
  readonly name: string;
  readonly settings: ServerSettings | null;
  /** The data folder that the file names, which is not the one that is served; null where it names none. */
  readonly otherData: string | null;
  readonly fault: string | null;
}

type Said = Pick<Finding, 'is' | 'words'> & { readonly what: Finding['what'] | 'configuration' | 'server' };

/**
 * Looks at every plant whose settings lie as NAME.json in the folder, its data in NAME below `values.data`, its passwords in NAME.pgpass beside
 * them; changes nothing. Prints one line for each thing, and returns 1 where something is wrong, else 0.
 */
export async function listPlants(folder: string, values: ServeValues, io: CommandIo): Promise<number> {
  const files = readFiles(folder, values.data ?? 'data');
  let code = 0;
  for (const file of files) {
    for (const { what, is, words } of await lookAtPlant(file, files)) {
      io.stdout(`${file.name}  ${marks[is]} ${what}: ${words}\n`);
      if (is === 'wrong') code = 1;
    }
  }
  return code;
}

function readFiles(folder: string, data: string): readonly PlantFile[] {
  let names: string[];
  try {
    names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  } catch {
    throw new NotUnderstood(
      `plants: expected a folder with a file of settings for each plant, found ${folder}`,
    );
  }
  if (names.length === 0)
    throw new NotUnderstood(`plants: no NAME.json lies in ${folder}: each plant has its settings in one`);
  return names.sort().map((name) => readPlantFile(folder, name.slice(0, -'.json'.length), data));
}

function readPlantFile(folder: string, name: string, data: string): PlantFile {
  const passwords = join(folder, `${name}.pgpass`);
  try {
    const read = gatherValues({ config: join(folder, `${name}.json`) }, {});
    const env = existsSync(passwords) ? { PGPASSFILE: passwords } : {};
    // As reelward-plant serves it: by the plant's short name, whatever its file says.
    const own = join(data, name);
    const otherData = read.data !== undefined && resolve(read.data) !== resolve(own) ? read.data : null;
    return { name, settings: readSettings({ ...read, data: own }, env), otherData, fault: null };
  } catch (error) {
    if (!(error instanceof NotUnderstood)) throw error;
    return { name, settings: null, otherData: null, fault: error.message };
  }
}

async function lookAtPlant(file: PlantFile, all: readonly PlantFile[]): Promise<readonly Said[]> {
  const { settings, otherData, fault } = file;
  const tell = (is: Finding['is'], words: string): Said => ({ what: 'configuration', is, words });
  if (!settings) return [tell('wrong', fault ?? '')];
  const shared = all.flatMap((other) => (other === file ? [] : sharedWith(settings, other)));
  const unnamed = settings.plant === null ? ['no "plant" in it: its store could be taken for another’s'] : [];
  const unused =
    otherData === null
      ? []
      : [`"data" in it is not used by reelward-plant, which serves ${settings.folder}: take it out`];
  const wrong = [...unnamed, ...unused, ...shared].map((words) => tell('wrong', words));
  const { database } = settings;
  const storeWords = (error: unknown) => storeFault(error, database)?.message ?? null;
  const found = await checkServer({ settings, storeWords });
  return [...(wrong.length > 0 ? wrong : [tell('good', 'understood')]), ...found, await askServer(settings)];
}

async function askServer(settings: ServerSettings): Promise<Said> {
  const tell = (is: Finding['is'], words: string): Said => ({ what: 'server', is, words });
  const told = await askHealth(settings, settings.port);
  if (!told) return tell('warning', 'does not run');
  const isOther = settings.plant !== null && told.plant !== undefined && told.plant !== settings.plant;
  if (isOther)
    return tell('warning', `“${told.plant}” runs there; if that is its name of before, start it again`);
  if (told.ok === true) return tell('good', `runs, ${told.entries} entries`);
  return tell(
    'wrong',
    `runs, but: ${(told.degraded ?? []).join(', ') || 'its store does not answer'}; see its log`,
  );
}

/** What two plants must not have in common. */
function sharedWith(mine: ServerSettings, { name, settings: other }: PlantFile): readonly string[] {
  if (!other) return [];
  const shared: string[] = [];
  if (mine.plant !== null && mine.plant === other.plant)
    shared.push(`“${mine.plant}” is what ${name} is called too`);
  if (mine.database !== null && other.database !== null && isSameDatabase(mine.database, other.database))
    shared.push(`the database is ${name}’s too: each plant has one of its own`);
  if (mine.publicUrl !== undefined && mine.publicUrl === other.publicUrl)
    shared.push(`${mine.publicUrl} leads to ${name} too: each plant has a host name or a port of its own`);
  const ports = portsOf(other);
  for (const one of portsOf(mine))
    if (ports.some((each) => each.port === one.port && meet(each.address, one.address)))
      shared.push(`port ${one.port} is ${name}’s too`);
  return shared;
}

function isSameDatabase(mine: string, other: string): boolean {
  const [left, right] = [splitAddress(mine), splitAddress(other)];
  return left.place === right.place && left.hosts.some((host) => right.hosts.includes(host));
}

interface Listened {
  readonly port: number;
  /** Null for every address. */
  readonly address: string | null;
}

function portsOf(settings: ServerSettings): readonly Listened[] {
  const { port, https, metricsPort } = settings;
  const address = listenAddress(settings);
  return [
    { port, address },
    ...(https && !https.ownFiles ? [{ port: https.trustPort, address }] : []),
    ...(metricsPort === undefined ? [] : [{ port: metricsPort, address: '127.0.0.1' }]),
  ];
}

/** `localhost` may stand for either inner address: the server listens on every address of that name. */
function meet(left: string | null, right: string | null): boolean {
  if (left === null || right === null || left === right) return true;
  return (left === 'localhost' || right === 'localhost') && isLocal(left) && isLocal(right);
}

/** Gives the plant of a store another name; its servers take it up at their next start. */
export async function rename(name: string, place: StoreChoice, io: CommandIo): Promise<number> {
  const wanted = readPlant(name) ?? '';
  const store = await openPresentStore(place);
  try {
    const before = await storedPlant(store);
    await store.writeMeta(plantRowName, wanted);
    io.stderr(
      `${before === null ? 'This plant' : `“${before}”`} is called “${wanted}” now: say so in its settings too, and start its servers again\n`,
    );
    return 0;
  } finally {
    await store.close();
  }
}
