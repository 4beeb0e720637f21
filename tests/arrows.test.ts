// Every import of the project against the tables of arrows.md, and proof that every row of them bites.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { faultsOf, importsOf, type Row } from './arrows.ts';
import { projectRoot, readSources } from './source-scan.ts';

interface Planted extends Row {
  readonly planted: readonly string[];
}

const namesIn = (cell = '') => [...cell.matchAll(/`([^`]+)`/g)].map(([, name = '']) => name);
/** `x/*` stands for each folder of x. */
const placesOf = (name: string) =>
  name.startsWith('src/') && name.endsWith('/*')
    ? readdirSync(path.join(projectRoot, name.slice(0, -2)))
        .filter((folder) => !folder.includes('.'))
        .map((folder) => name.replace('*', folder))
    : [name];

const [, rooms = [], walls = []] = readFileSync(path.join(projectRoot, 'tests/arrows.md'), 'utf8')
  .split(/^## /m)
  .map((part) =>
    [...part.matchAll(/^\| (`.*) \|$/gm)].map(([, row = '']): Planted => {
      const [names, where, planted, why = ''] = row.split(' | ');
      return {
        names: namesIn(names).flatMap(placesOf),
        where: namesIn(where),
        planted: namesIn(planted),
        why,
      };
    }),
  );

/** A file in a place, or the place itself where that is a file. */
const fileIn = (place: string) => (/\.tsx?$/.test(place) ? place : `${place}/planted.tsx`);

/** How a file names another. */
function wayTo(file: string, target: string): string {
  const way = path.posix.relative(path.posix.dirname(file), target);
  return way.startsWith('.') ? way : `./${way}`;
}

const faultsIn = (file: string, source: string) => faultsOf([{ path: file, source }], rooms, walls);

test('every import follows the tables, and no files load each other in a circle', () => {
  expect(faultsOf(readSources(['shared', 'src', 'demo', 'tests']), rooms, walls)).toEqual([]);
});

test('every row has a reason and a fault to plant, and no place has two', () => {
  const places = rooms.flatMap(({ names }) => names);
  expect(places.length).toBeGreaterThan(40);
  expect(new Set(places).size).toBe(places.length);
  for (const { why, planted } of [...rooms, ...walls]) {
    expect(why).toMatch(/^[A-Z].*\.$/);
    expect(planted, why).not.toEqual([]);
  }
});

describe('every planted fault is told:', () => {
  const betweenRooms = rooms.flatMap(({ names, planted, why }) =>
    names.flatMap((place) =>
      planted
        .filter((target) => !target.startsWith(`${place}/`))
        .map((target) => [fileIn(place), target, why] as const),
    ),
  );
  test.each(betweenRooms)('%s imports %s', (file, target, why) => {
    const told = [`${file} imports ${target}: ${why}`];
    const name = wayTo(file, target);
    expect(faultsIn(file, `import { x } from '${name}';`)).toEqual(told);
    expect(faultsIn(file, `import type { X } from '${name}';`)).toEqual(told);
    expect(faultsIn(file, `const x = () => import('${name}?worker');`)).toEqual(told);
  });

  const throughWalls = walls.flatMap(({ names, planted, why }) =>
    names.flatMap((name) => planted.map((file) => [file, name.replace('*', 'some'), why] as const)),
  );
  test.each(throughWalls)('%s imports %s', (file, name, why) => {
    const isOwn = name.startsWith('shared/');
    const target = name.endsWith('.ts') ? name : `${name}/${isOwn ? 'planted.ts' : 'part'}`;
    const source = `import '${isOwn ? wayTo(file, target) : target}';`;
    expect(faultsIn(file, source)).toEqual([`${file} imports ${target}: ${why}`]);
  });

  test.each([
    [
      'elsewhere/a.ts',
      "import { x } from '../shared/kit/result.ts';",
      'elsewhere/a.ts imports shared/kit/result.ts: no row',
    ],
    ['shared/floor/a.ts', "import fc from 'fast-check';", 'imports fast-check: a new package needs a row'],
    [
      'src/app/scan/a.ts',
      "const w = new Worker(new URL('../store/w.ts', import.meta.url));",
      'imports src/app/store/w.ts',
    ],
  ])('%s: %s', (file, source, told) => {
    expect(faultsIn(file, source).join()).toContain(told);
  });

  test('an arrow up, even where a row would allow it', () => {
    const row = (place: string, where: string) => ({ names: [place], where: [where], why: 'Planted.' });
    const files = [
      { path: 'low/a.ts', source: "import type { B } from '../high/b.ts';" },
      { path: 'high/b.ts', source: "import type { A } from '../low/a.ts';" },
    ];
    const told = faultsOf(files, [row('low', 'high'), row('high', 'low')], []);
    expect(told).toEqual(['low/a.ts imports high/b.ts: Planted.']);
  });

  test('files that load each other, and no others', () => {
    const load = (file: string, ...targets: readonly string[]) => ({
      path: `shared/kit/${file}.ts`,
      source: targets.map((target) => `export * from './${target}.ts';`).join('\n'),
    });
    const kind = { path: 'shared/kit/g.ts', source: "import type { A } from './a.ts';" };
    const files = [load('a', 'b'), load('b', 'c', 'd'), load('c', 'a'), load('d', 'g'), load('e', 'a'), kind];
    expect(faultsOf(files, rooms, walls).map((fault) => fault.slice(0, 20))).toEqual(
      ['a', 'b', 'c'].map((file) => `shared/kit/${file}.ts is o`.slice(0, 20)),
    );
  });
});

test.each([
  ['shared/kit/a.ts', "// import { x } from '../floor/a.ts';", 'a comment'],
  ['shared/kit/a.ts', `const a = \`import x from "dexie"\`;`, 'a text'],
  ['src/app/ui/a.tsx', "const a = <p>Don't import from 'dexie', it can't</p>;", 'the text of an element'],
  ['src/app/screens/load/a.tsx', "import { x } from './model.ts';", 'the screen’s own file'],
  ['src/app/frame/a.tsx', "import { x } from '../ui/Button.tsx';", 'allowed by the table'],
  ['shared/floor/remaining.ts', "import { x } from './remaining/law.ts';", 'the one file that may'],
  ['src/server/stores/postgres/a.ts', "import pg from 'pg'; import '../store.ts';", 'the driver’s home'],
])('what only looks like a fault passes: %s with %s, %s', (file, source) => {
  expect(faultsIn(file, source)).toEqual([]);
});

test('finds every form of import, and which of them run before the file does', () => {
  const source = [
    "import a from 'm1';",
    "import type { b } from 'm2';",
    "import * as c from 'm3';",
    "import 'm4';",
    "export { d } from 'm5';",
    "export * from 'm6';",
    "export type { e } from 'm7';",
    "const f = await import('m8');",
    "const g = require('m9');",
    "const h = new URL('./m10.ts', import.meta.url);",
    "import i, { j as k } from 'm11';",
    "type L = import('m12').L;",
    "export const from = 'no1';",
    "const u = new URL('no2', base);",
    "const folder = new URL('../', import.meta.url);",
    "export const n = 1; const from2 = Array.from('no3');",
  ].join('\n');
  const found = importsOf({ path: 'a.ts', source });
  expect(found.map(({ name }) => name)).toEqual(
    Array.from({ length: 12 }, (_, at) => (at === 9 ? './m10.ts' : `m${at + 1}`)),
  );
  const loaded = found.flatMap(({ name, isLoaded }) => (isLoaded ? [name] : []));
  expect(loaded).toEqual(['m1', 'm3', 'm4', 'm5', 'm6', 'm11']);
});
