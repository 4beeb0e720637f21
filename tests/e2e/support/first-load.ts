// What of the built app does a first visit ask for? Read off the built files, so that the answer holds on any machine.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { dist } from './demo.ts';

const assets = () => path.join(dist, 'app/assets');
const read = (name: string) => readFileSync(path.join(assets(), name), 'utf8');

/** Every script of the app. */
export function allScripts(): readonly string[] {
  return readdirSync(assets()).filter((name) => name.endsWith('.js'));
}

/** Size of scripts as they travel, each counted once, kB (gzip, level 9). */
export function sizeOf(names: Iterable<string>): number {
  let bytes = 0;
  for (const name of new Set(names)) bytes += gzipSync(read(name), { level: 9 }).length;
  return bytes / 1000;
}

/** Scripts with all that they import without being asked later. */
function withImports(names: readonly string[]): ReadonlySet<string> {
  const found = new Set<string>();
  const waiting = [...names];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (found.has(next)) continue;
    found.add(next);
    for (const [, name] of read(next).matchAll(/(?:from|import) ?"\.\/([^"]+\.js)"/g))
      if (name !== undefined) waiting.push(name);
  }
  return found;
}

/** What the page's own text asks for, and all that this imports. */
export function startGraph(): ReadonlySet<string> {
  const text = readFileSync(path.join(dist, 'app/index.html'), 'utf8');
  return withImports(
    [...text.matchAll(/(?:src|href)="\/assets\/([^"]+\.js)"/g)].map((found) => found[1] ?? ''),
  );
}

/** Scripts whose name begins so that the page's own files ask for later, with what they import. */
export function askedByStart(name: string | RegExp): readonly ReadonlySet<string>[] {
  const asked = new Set<string>();
  for (const script of startGraph()) {
    for (const [, found] of read(script).matchAll(/import\([`"']\.\/([^`"']+\.js)[`"']\)/g))
      if (found !== undefined && (typeof name === 'string' ? found.startsWith(`${name}-`) : name.test(found)))
        asked.add(found);
  }
  return [...asked].map((each) => withImports([each]));
}

/** The words of each language that come with the first screen, in one file. */
export function languagePacks(): readonly ReadonlySet<string>[] {
  return askedByStart(/^words-[a-z]{2}-first-/);
}
