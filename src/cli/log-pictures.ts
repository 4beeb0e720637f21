// Are these the pictures that the log has? Each picture's SHA-256 is reckoned from its bytes and looked for among the hashes that entries of the
// log hold. A name is only a claim: a picture that is named for a hash and has another one was changed.

import { createHash } from 'node:crypto';
import { open, readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Omitted } from '../../shared/log/chain.ts';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import { unpackPictures } from '../../shared/log/picture-archive.ts';
import { type CommandIo, NotUnderstood, readBytes } from './command.ts';

/** What `--pictures` does, for the help of `log verify`. */
export const picturesHelp = `--pictures ARCHIVE|FOLDER: the pictures of labels that were saved beside the log (the archive as it was saved, or a folder of it
unpacked). "pictures": how many the log has the hash of ("inLog"), how many of those are there and unchanged ("same"), which are not
("missing": their days may be over), and, by the names of their files, those that are none of them. "changed": named for a hash, and
the bytes have another one: always a fault. "notInLog": the bytes have the hash in the name, but this log does not: kept later, or of
another log; no fault. A picture that was changed and named anew looks the same; the one that it was is then "missing". "others":
pictures under any other name that the log does not have: a fault where the file holds the whole log; where it leaves entries out they
may be of those. Only JPEGs are looked at; folders inside a folder are passed over. Unpack an archive of more than 2 GiB.`;

/** What was found; pictures that are none of the log's by the names of their files. */
export interface PicturesFound {
  readonly inLog: number;
  readonly same: number;
  /** Hash of the picture and the entry that holds it. */
  readonly missing: readonly { readonly sha256: string; readonly entry: string }[];
  /** Named for a hash that is not that of their bytes. */
  readonly changed: readonly string[];
  /** Named for the hash of their bytes, which the log does not have. */
  readonly notInLog: readonly string[];
  readonly others: readonly string[];
}

interface PictureFile {
  /** Without the folders before it. */
  readonly name: string;
  /** In bytes. */
  readonly size: number;
  readonly sha256: string;
}

type LogPart = { readonly entries: readonly Entry[]; readonly omitted: readonly Omitted[] };

/**
 * Compares an archive or a folder with the log. `fault`: what is wrong, null where nothing is; `told`: what else is worth a line, null where
 * nothing is. Throws `NotUnderstood` where there is no archive and no folder, or a file cannot be read.
 */
export async function picturesIn(
  source: string,
  log: LogPart,
  io: CommandIo,
): Promise<{ readonly found: PicturesFound; readonly fault: string | null; readonly told: string | null }> {
  const wanted = new Map<string, { readonly entry: string; readonly bytes: unknown }>();
  for (const entry of log.entries)
    if (entry.kind === 'picture.kept')
      wanted.set(String(entry.payload['sha256']), { entry: entryId(entry), bytes: entry.payload['bytes'] });
  const same = new Set<string>();
  const changed: string[] = [];
  const notInLog: string[] = [];
  const others: string[] = [];
  for await (const { name, size, sha256 } of filesOf(source, io)) {
    const claim = hashNamed(name);
    if (claim !== null && claim !== sha256) changed.push(name);
    else if (wanted.get(sha256)?.bytes === size) same.add(sha256);
    else if (claim !== null && !wanted.has(sha256)) notInLog.push(name);
    else others.push(name);
  }
  const missing = [...wanted].flatMap(([sha256, { entry }]) => (same.has(sha256) ? [] : [{ sha256, entry }]));
  const found = { inLog: wanted.size, same: same.size, missing, changed, notInLog, others };
  const isWhole = log.omitted.length === 0;
  return { found, fault: sayFault(source, found, isWhole), told: sayNotInLog(source, found, isWhole) };
}

function sayFault(source: string, { changed, others }: PicturesFound, isWhole: boolean): string | null {
  const faults = [
    ...(changed.length > 0
      ? [`expected pictures with the hash that they are named for, found changed ${changed.join(', ')}`]
      : []),
    ...(others.length > 0 && isWhole
      ? [`expected pictures that the log has, found ${others.join(', ')}`]
      : []),
  ];
  return faults.length > 0 ? `${source}: ${faults.join('; ')}` : null;
}

/** One line whatever their number: the names are in the answer. */
function sayNotInLog(source: string, { notInLog }: PicturesFound, isWhole: boolean): string | null {
  const [first] = notInLog;
  if (first === undefined) return null;
  const names = notInLog.length === 1 ? first : `${first} and ${notInLog.length - 1} more`;
  return `${source}: not in this log: ${isWhole ? '' : 'left out of the file, '}kept later, or of another log: ${names}`;
}

/** The hash that a file is named for, null where it has a name of its own. */
function hashNamed(name: string): string | null {
  return /^([0-9a-f]{64})\.jpe?g$/i.exec(name)?.[1]?.toLowerCase() ?? null;
}

const HEAD_BYTES = 4;

/** Is it a picture, by its first bytes or its name? */
function isPicture(name: string, head: Uint8Array): boolean {
  if (head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff) return true;
  // RFC 1740: what a desktop sets beside a file to hold its attributes has that file's name after "._", and begins so.
  const isAttributes = name.startsWith('._') && Buffer.from(head).toString('hex').startsWith('00051607');
  return !isAttributes && /\.jpe?g$/i.test(name);
}

/** The pictures one after another: all of a tablet's need not fit into memory, unless they come as an archive. */
async function* filesOf(source: string, io: CommandIo): AsyncGenerator<PictureFile> {
  if (source !== '-' && (await stat(source).catch(() => null))?.isDirectory()) return yield* inFolder(source);
  const files = unpackPictures(await readBytes(source, io));
  if (!files)
    throw new NotUnderstood(`${source}: expected an archive (zip) of pictures or a folder, found neither`);
  for (const { name: inArchive, bytes } of files) {
    const name = inArchive.split(/[\\/]/).at(-1) ?? '';
    if (!isPicture(name, bytes.subarray(0, HEAD_BYTES))) continue;
    yield { name, size: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
  }
}

async function* inFolder(folder: string): AsyncGenerator<PictureFile> {
  const listed = await readdir(folder, { withFileTypes: true }).catch((error) => refuse(folder, error));
  const names = listed.filter((each) => each.isFile()).map(({ name }) => name);
  for (const name of names.sort()) {
    const file = path.join(folder, name);
    const picture = await readPicture(file, name).catch((error) => refuse(file, error));
    if (picture) yield picture;
  }
}

async function readPicture(file: string, name: string): Promise<PictureFile | null> {
  const handle = await open(file);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    if (!isPicture(name, buffer.subarray(0, bytesRead))) return null;
    const hash = createHash('sha256');
    let size = 0;
    for await (const piece of handle.createReadStream({ start: 0, autoClose: false })) {
      hash.update(piece);
      size += piece.length;
    }
    return { name, size, sha256: hash.digest('hex') };
  } finally {
    await handle.close();
  }
}

function refuse(file: string, error: NodeJS.ErrnoException): never {
  throw new NotUnderstood(`${file}: cannot be read (${error.code ?? error.message})`);
}
