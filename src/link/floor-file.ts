// What a link that answers keeps of the floor for its next start, in its folder: an older state, the entries folded since, how far the log was read.
// Method: a line for each thing, written and read piece by piece, so that neither needs the whole as a text beside it. The state is the oldest
// copy that the fold holds, so that a late entry finds as much before it as before the start. Only a shortcut: what is damaged, or of another
// fold, is left alone and the log is read from its start.

import { closeSync, fsyncSync, openSync, readSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { StringDecoder } from 'node:string_decoder';
import { createReplica, foldIn, type Replica } from '../../shared/floor/replica.ts';
import { emptyState, type FoldPosition } from '../../shared/floor/state.ts';
import { packValue, unpackValue } from '../../shared/kit/pack.ts';
import type { Entry } from '../../shared/log/entry.ts';
import type { TabletTrust } from '../app/store/trust.ts';
import { thinReplica } from './floor-thin.ts';

/** Copies of the state for late entries: every byte counts here, and a later one is read in from the start. */
export const COPIES = 4;
const PIECE = 1 << 18;
const FILE = 'floor.ndjson';

/** How far the log was read. */
export interface ReadSoFar {
  readonly cursor: string;
  /** Chain -> its first entry, which names its key. */
  readonly firsts: ReadonlyMap<string, Entry>;
  /** Reels that the log names and the state does not hold any more. */
  readonly reels: ReadonlySet<string>;
}

type Line =
  | readonly [
      'head',
      fold: string,
      cursor: string,
      firsts: readonly (readonly [string, Entry])[],
      position: FoldPosition | null,
      count: number,
    ]
  | readonly ['map', part: string, key: string, value: unknown]
  | readonly ['set', part: string, key: string]
  | readonly ['entry', entry: Entry]
  | readonly ['reel', reel: string]
  | readonly ['end'];

/** Keeps a replica. `fold`: names the fold that made it. Throws where the disk does not take it. */
export function keepFloor(folder: string, fold: string, replica: Replica, read: ReadSoFar): void {
  const beside = join(folder, `${FILE}.new`);
  const fd = openSync(beside, 'w', 0o600);
  try {
    let piece = '';
    for (const line of linesOf(fold, replica, read)) {
      piece += `${JSON.stringify(line)}\n`;
      if (piece.length < PIECE) continue;
      writeSync(fd, piece);
      piece = '';
    }
    writeSync(fd, piece);
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
  renameSync(beside, join(folder, FILE));
}

function* linesOf(fold: string, { marks, tail }: Replica, read: ReadSoFar): Generator<Line> {
  const [oldest] = marks;
  if (!oldest) return;
  yield ['head', fold, read.cursor, [...read.firsts], oldest.position, oldest.count];
  for (const [part, of] of Object.entries(oldest.state) as [string, ReadonlyMap<string, unknown>][]) {
    if (of instanceof Set) for (const key of of) yield ['set', part, key as string];
    else for (const [key, value] of of) yield ['map', part, key, packValue(value)];
  }
  for (const entry of tail) yield ['entry', entry];
  for (const reel of read.reels) yield ['reel', reel];
  yield ['end'];
}

/** What is kept, folded on; null where there is none, or none that may be gone on from. */
export async function readFloor(
  folder: string,
  fold: string,
  trust: TabletTrust | null,
): Promise<{
  readonly replica: Replica;
  readonly cursor: string;
  readonly firsts: Map<string, Entry>;
  readonly reels: Set<string>;
} | null> {
  try {
    const state = emptyState();
    const parts = state as unknown as Record<string, Map<string, unknown> | Set<string>>; // as written above
    const tail: Entry[] = [];
    const reels = new Set<string>();
    let head: Extract<Line, readonly ['head', ...unknown[]]> | null = null;
    let isWhole = false;
    for (const text of linesIn(join(folder, FILE))) {
      const line = JSON.parse(text) as Line; // written above
      if (line[0] === 'head') {
        if (line[1] !== fold) return null;
        head = line;
      } else if (line[0] === 'map')
        (parts[line[1]] as Map<string, unknown>).set(line[2], unpackValue(line[3]));
      else if (line[0] === 'set') (parts[line[1]] as Set<string>).add(line[2]);
      else if (line[0] === 'entry') tail.push(line[1]);
      else if (line[0] === 'reel') reels.add(line[1]);
      else isWhole = true;
    }
    if (!head || !isWhole) return null;
    const [, , cursor, firsts, position, count] = head;
    const replica = createReplica(position ? { state, position, count } : undefined, trust, COPIES);
    await trust?.look(tail);
    if (!foldIn(replica, tail)) return null;
    thinReplica(replica, reels);
    return { replica, cursor, firsts: new Map(firsts), reels };
  } catch {
    // None is there, or it is damaged: the log has it all.
    return null;
  }
}

/** Takes it away. */
export function dropFloor(folder: string): void {
  rmSync(join(folder, FILE), { force: true });
}

function* linesIn(file: string): Generator<string> {
  const fd = openSync(file, 'r');
  try {
    const bytes = Buffer.alloc(PIECE);
    const decoder = new StringDecoder('utf8');
    let rest = '';
    for (;;) {
      const read = readSync(fd, bytes);
      if (read === 0) return;
      const lines = (rest + decoder.write(bytes.subarray(0, read))).split('\n');
      rest = lines.pop() ?? '';
      yield* lines;
    }
  } finally {
    closeSync(fd);
  }
}
