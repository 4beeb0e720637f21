// What the parts of the tour have come to, kept beside their pictures: the parts are walked apart from each other, and only together
// do they come to all that the source has.

import { readdirSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { sheetsFolder } from './sheets.ts';

/** Where a tour was: the names of its stops, and every test id that was on a page at one. */
export interface Stops {
  readonly stops: readonly string[];
  readonly ids: ReadonlySet<string>;
}

const fileOf = (part: string) => path.join(sheetsFolder, part, 'stops.json');

/** Keeps what a part came to. */
export async function keepStops(part: string, { stops, ids }: Stops): Promise<void> {
  await writeFile(fileOf(part), JSON.stringify({ stops, ids: [...ids].sort() }));
}

/** The parts that there are: one file of tests each. */
export function tourParts(): readonly string[] {
  return readdirSync(path.resolve(import.meta.dirname, '../..')).flatMap(
    (name) => /^tour-(\w+)\.e2e\.ts$/.exec(name)?.[1] ?? [],
  );
}

/** What all parts came to when each was walked last; fails where one was not walked to its end. */
export async function readStops(): Promise<Stops> {
  const stops: string[] = [];
  const ids = new Set<string>();
  for (const part of tourParts()) {
    const kept = JSON.parse(await readFile(fileOf(part), 'utf8')) as { stops: string[]; ids: string[] }; // as kept above
    stops.push(...kept.stops);
    for (const id of kept.ids) ids.add(id);
  }
  return { stops, ids };
}
