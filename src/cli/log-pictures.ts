// Are these the pictures that the log has? Each picture's SHA-256 is reckoned from its bytes and looked for among the hashes that entries of the
// log hold; what it is called says nothing.

import { createHash } from 'node:crypto';
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Omitted } from '../../shared/log/chain.ts';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import { unpackPictures } from '../../shared/log/picture-archive.ts';
import { type CommandIo, NotUnderstood, readBytes } from './command.ts';

/** What `--pictures` does, for the help of `log verify`. */
export const picturesHelp = `--pictures ARCHIVE: the pictures of labels that were saved beside the log (the archive as it was saved, or a folder of it unpacked). "pictures":
how many the log has the hash of ("inLog"), how many of those are there and unchanged ("same"), which are not there ("missing": their days may
be over), and which files are none of them ("others"). Others are a fault where the file holds the whole log: they were changed, or
are of another log. Where it leaves entries out they may be of those.`;

/** What was found. */
export interface PicturesFound {
  readonly inLog: number;
  readonly same: number;
  /** Hash of the picture and the entry that holds it. */
  readonly missing: readonly { readonly sha256: string; readonly entry: string }[];
  /** Names of files. */
  readonly others: readonly string[];
}

interface PictureFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Compares an archive or a folder with the log; `fault`: what is wrong, null where nothing is. */
export async function picturesIn(
  source: string,
  log: { readonly entries: readonly Entry[]; readonly omitted: readonly Omitted[] },
  io: CommandIo,
): Promise<{ readonly found: PicturesFound; readonly fault: string | null }> {
  const wanted = new Map<string, { readonly entry: string; readonly bytes: unknown }>();
  for (const entry of log.entries)
    if (entry.kind === 'picture.kept')
      wanted.set(String(entry.payload['sha256']), { entry: entryId(entry), bytes: entry.payload['bytes'] });
  const same = new Set<string>();
  const others: string[] = [];
  for (const { name, bytes } of await filesOf(source, io)) {
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    if (wanted.get(sha256)?.bytes === bytes.length) same.add(sha256);
    else others.push(name);
  }
  const missing = [...wanted].flatMap(([sha256, { entry }]) => (same.has(sha256) ? [] : [{ sha256, entry }]));
  const found = { inLog: wanted.size, same: same.size, missing, others };
  const isFault = others.length > 0 && log.omitted.length === 0;
  const fault = isFault ? `${source}: expected pictures that the log has, found ${others.join(', ')}` : null;
  return { found, fault };
}

async function filesOf(source: string, io: CommandIo): Promise<readonly PictureFile[]> {
  if (source !== '-' && (await stat(source).catch(() => null))?.isDirectory()) {
    const names = (await readdir(source)).sort();
    return Promise.all(names.map(async (name) => ({ name, bytes: await readFile(path.join(source, name)) })));
  }
  const files = unpackPictures(await readBytes(source, io));
  if (files) return files;
  throw new NotUnderstood(`${source}: expected an archive (zip) of pictures or a folder, found neither`);
}
