// Every import of the project against the table of arrows, and proof that every rule of the table bites.
// What is not listed is forbidden; imports of types count like any other.

import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Arrow, arrows, bannedInCore, doors, walls } from './arrows-table.ts';
import {
  childrenOf,
  findImports,
  lineAt,
  type Node,
  parseSource,
  readSources,
  type SourceFile,
} from './source-scan.ts';

function isWithin(file: string, place: string): boolean {
  return file === place || file.startsWith(`${place}/`);
}

function arrowOf(file: string): Arrow | null {
  const fitting = arrows.filter((arrow) => isWithin(file, arrow.room));
  return fitting.sort((a, b) => b.room.length - a.room.length)[0] ?? null;
}

/** A room under src/app/screens is one screen: the folder below. */
function roomOf(file: string, arrow: Arrow): string {
  if (arrow.room !== 'src/app/screens') return arrow.room;
  return file.split('/').slice(0, 4).join('/');
}

function mayImport(file: string, target: string): boolean {
  const arrow = arrowOf(file);
  if (!arrow) return false;
  // A folder's own files know each other; a composition room such as src/app is judged by its list alone.
  if (isWithin(target, roomOf(file, arrow)) && arrowOf(target)?.room === arrow.room) return true;
  const refused = arrow.may.some((place) => place[0] === '!' && isWithin(target, place.slice(1)));
  return !refused && arrow.may.some((place) => isWithin(target, place));
}

function isPackage(name: string, pattern: string): boolean {
  if (pattern.endsWith('*')) return name.startsWith(pattern.slice(0, -1));
  return name === pattern || name.startsWith(`${pattern}/`);
}

function packageFault(file: string, name: string): string | null {
  if (isWithin(file, 'tests')) return null;
  const wall = walls.find((candidate) => candidate.packages.some((pattern) => isPackage(name, pattern)));
  if (!wall) return `${file} imports ${name}: a new package needs a row in the table of walls`;
  if (wall.rooms.some((room) => isWithin(file, room))) return null;
  return `${file} imports ${name}: allowed in ${wall.rooms.join(', ')} only. ${wall.why}`;
}

/** Every rule that the files break, one line each. */
function findFaults(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap((file) => {
    const faults: string[] = [];
    for (const name of findImports(file)) {
      if (!name.startsWith('.')) {
        const fault = packageFault(file.path, name);
        if (fault !== null) faults.push(fault);
        continue;
      }
      const target =
        path.posix.normalize(path.posix.join(path.posix.dirname(file.path), name)).split('?')[0] ?? '';
      const door = doors.find(({ folder }) => isWithin(target, folder));
      if (
        door &&
        !isWithin(file.path, door.folder) &&
        file.path !== door.door &&
        !isWithin(file.path, 'tests')
      )
        faults.push(`${file.path} imports ${target}: ask ${door.door}. ${door.why}`);
      if (mayImport(file.path, target)) continue;
      const arrow = arrowOf(file.path);
      faults.push(
        `${file.path} imports ${target}: ${arrow?.why ?? 'this folder has no row in the table of arrows.'}`,
      );
    }
    if (isWithin(file.path, 'shared')) faults.push(...bannedNames(file));
    return faults;
  });
}

/** Uses of what the core may not name. Keys of objects and what stands behind a dot name nothing. */
function bannedNames(file: SourceFile): readonly string[] {
  const faults: string[] = [];
  const see = (node: Node) => {
    const text = file.source.slice(node.start, node.end);
    const rule = bannedInCore.find(({ name }) => {
      if (/^\w+$/.test(name)) return node.type === 'Identifier' && node['name'] === name;
      return /Expression$/.test(node.type) && text.replace(/^(new \w+)$/, '$1()') === name;
    });
    if (rule) faults.push(`${file.path}:${lineAt(file.source, node.start)} names ${rule.name}: ${rule.why}`);
    const isNamed = node.type === 'MemberExpression' || node.type === 'Property';
    const label = node.type === 'Property' ? node['key'] : node['property'];
    for (const child of childrenOf(node)) if (!isNamed || node['computed'] || child !== label) see(child);
  };
  see(parseSource(file).program);
  return faults;
}

describe('arrows', () => {
  test('every import follows the table and every package stays behind its wall', () => {
    expect(findFaults(readSources(['shared', 'src', 'demo', 'tests']))).toEqual([]);
  });

  test('every row has a reason and names a room once', () => {
    expect(new Set(arrows.map(({ room }) => room)).size).toBe(arrows.length);
    for (const { why } of [...arrows, ...doors, ...walls, ...bannedInCore])
      expect(why).toMatch(/^[A-Z].*\.$/);
  });

  test('every planted violation is found', () => {
    const planted: readonly (readonly [file: string, source: string, told: string])[] = [
      [
        'shared/kit/a.ts',
        "import { parseSlot } from '../floor/address.ts';",
        'imports shared/floor/address.ts',
      ],
      ['shared/labels/a.ts', "import type { Entry } from '../log/entry.ts';", 'imports shared/log/entry.ts'],
      ['shared/log/a.ts', "export * from '../floor/kinds.ts';", 'imports shared/floor/kinds.ts'],
      ['shared/floor/a.ts', "import '../verdict/verify.ts';", 'imports shared/verdict/verify.ts'],
      ['shared/verdict/a.ts', "import { x } from '../forecast/beta.ts';", 'imports shared/forecast/beta.ts'],
      [
        'shared/floor/c.ts',
        "import { x } from './remaining/ledger.ts';",
        'imports shared/floor/remaining/ledger.ts: ask shared/floor/remaining.ts',
      ],
      [
        'src/app/frame/c.tsx',
        "import { x } from '../../../shared/floor/remaining/law.ts';",
        'ask shared/floor',
      ],
      [
        'shared/forecast/a.ts',
        "import {\n  x,\n  y,\n} from '../moisture/bake.ts';",
        'imports shared/moisture/bake.ts',
      ],
      [
        'shared/changeover/a.ts',
        "export { x } from '../forecast/beta.ts';",
        'imports shared/forecast/beta.ts',
      ],
      ['shared/sheet/a.ts', "import { x } from '../verdict/verify.ts';", 'imports shared/verdict/verify.ts'],
      ['shared/order/a.ts', "import { x } from '../floor/state.ts';", 'imports shared/floor/state.ts'],
      ['shared/assign/a.ts', "import { x } from '../order/jobs.ts';", 'imports shared/order/jobs.ts'],
      [
        'shared/checklist/a.ts',
        "import { x } from '../forecast/beta.ts';",
        'imports shared/forecast/beta.ts',
      ],
      ['src/link/a.ts', "import { x } from '../server/main.ts';", 'imports src/server/main.ts'],
      ['shared/outlook/a.ts', "import { x } from '../desk/model.ts';", 'imports shared/desk/model.ts'],
      [
        'shared/desk/a.ts',
        "import { x } from '../../src/app/store/store.ts';",
        'imports src/app/store/store.ts',
      ],
      ['shared/moisture/a.ts', "import { x } from '../trace/lots.ts';", 'imports shared/trace/lots.ts'],
      ['shared/trace/a.ts', "import { x } from '../verdict/verify.ts';", 'imports shared/verdict/verify.ts'],
      ['shared/wire/a.ts', "import { x } from '../floor/kinds.ts';", 'imports shared/floor/kinds.ts'],
      ['shared/wire/b.ts', "import { x } from '../../src/server/main.ts';", 'imports src/server/main.ts'],
      ['src/app/device/a.ts', "import { x } from '../store/store.ts';", 'imports src/app/store/store.ts'],
      ['src/app/words/a.ts', "import { x } from '../store/store.ts';", 'imports src/app/store/store.ts'],
      [
        'src/app/ui/a.tsx',
        "import { x } from '../../../shared/verdict/verify.ts';",
        'imports shared/verdict',
      ],
      ['src/app/store/a.ts', "import { x } from '../sync/loop.ts';", 'imports src/app/sync/loop.ts'],
      ['src/app/demo/a.ts', "import { x } from '../sync/loop.ts';", 'imports src/app/sync/loop.ts'],
      ['src/app/sync/a.ts', "import { x } from '../screens/load/Load.tsx';", 'imports src/app/screens/load'],
      ['src/app/scan/a.ts', "import { x } from '../store/store.ts';", 'imports src/app/store/store.ts'],
      ['src/app/desk/a.ts', "import { x } from '../frame/Shell.tsx';", 'imports src/app/frame/Shell.tsx'],
      [
        'src/app/frame/a.tsx',
        "const x = () => import('../../server/main.ts');",
        'imports src/server/main.ts',
      ],
      [
        'src/app/screens/load/a.tsx',
        "import { x } from '../run/Run.tsx';",
        'imports src/app/screens/run/Run.tsx',
      ],
      ['src/app/main.tsx', "import { x } from '../server/main.ts';", 'imports src/server/main.ts'],
      ['src/worker/a.ts', "import { x } from '../app/app.ts';", 'imports src/app/app.ts'],
      ['src/sw/a.ts', "import { x } from '../app/app.ts';", 'imports src/app/app.ts'],
      ['src/server/stores/a.ts', "import { x } from '../http/app.ts';", 'imports src/server/http/app.ts'],
      ['src/server/trace/a.ts', "import { x } from '../http/app.ts';", 'imports src/server/http/app.ts'],
      ['src/server/people/a.ts', "import { x } from '../http/app.ts';", 'imports src/server/http/app.ts'],
      [
        'src/server/http/a.ts',
        "import { x } from '../../../shared/forecast/beta.ts';",
        'imports shared/forecast',
      ],
      [
        'src/server/http/b.ts',
        "import { x } from '../../../shared/floor/fold.ts';",
        'imports shared/floor/fold.ts',
      ],
      ['src/cli/a.ts', "import { x } from '../app/app.ts';", 'imports src/app/app.ts'],
      ['demo/a.ts', "import { x } from '../tests/cli/call.ts';", 'imports tests/cli/call.ts'],
      ['tests/a.test.ts', "import { x } from '../dist/cli/reelward.js';", 'imports dist/cli/reelward.js'],
      ['elsewhere/a.ts', "import { x } from '../shared/kit/result.ts';", 'has no row'],
      [
        'src/app/scan/b.ts',
        "const w = new Worker(new URL('../store/w.ts', import.meta.url));",
        'src/app/store/w.ts',
      ],
      ['src/app/screens/load/b.tsx', "import Dexie from 'dexie';", 'imports dexie'],
      ['src/app/store/b.ts', "import { x } from 'zxing-wasm/reader';", 'imports zxing-wasm/reader'],
      ['src/app/store/c.ts', "import { x } from '@zxing/library';", 'imports @zxing/library'],
      ['src/server/stores/queries.ts', "import Database from 'better-sqlite3';", 'imports better-sqlite3'],
      ['src/server/stores/sqlite/a.ts', "import pg from 'pg';", 'imports pg'],
      ['src/server/http/c.ts', "import { sql } from 'kysely';", 'imports kysely'],
      ['src/app/frame/b.tsx', "import bwip from 'bwip-js/browser';", 'imports bwip-js'],
      ['shared/forecast/b.ts', "import { readFileSync } from 'node:fs';", 'imports node:fs'],
      ['shared/floor/b.ts', "import fc from 'fast-check';", 'needs a row'],
      ['shared/forecast/c.ts', "import { h } from 'preact';", 'imports preact'],
      ...bannedInCore.map(
        ({ name }) => ['shared/kit/b.ts', `const x = 1;\nx(${name});`, 'shared/kit/b.ts:2 names'] as const,
      ),
    ];
    for (const [file, source, told] of planted) {
      expect(findFaults([{ path: file, source }]).join('\n'), `${file}: ${source}`).toContain(told);
    }
    const caught = new Set(planted.map(([file]) => arrowOf(file)?.room));
    expect(arrows.map(({ room }) => room).filter((room) => !caught.has(room))).toEqual([]);
  });

  test('what only looks like a violation passes', () => {
    const innocent: readonly (readonly [file: string, source: string, why: string])[] = [
      ['shared/kit/a.ts', "// import { x } from '../floor/a.ts'; Date.now()", 'a comment'],
      ['shared/kit/a.ts', "/* Math.random() */ const a = 'Date.now() import from';", 'comment and text'],
      ['shared/kit/a.ts', `const a = \`import x from "dexie" \${"process"} Date.now()\`;`, 'a template'],
      ['shared/kit/a.ts', 'const a = /[/\'"]/.test(b) ? c / d : /console/;', 'regular expressions'],
      ['shared/kit/a.ts', 'const a = new Date(0); a.process = b.fetch; Date.parse(c);', 'other uses'],
      ['src/app/ui/a.tsx', "const a = <p>Don't import from 'dexie', it can't</p>;", 'the text of an element'],
      ['src/app/screens/load/a.tsx', "import { x } from './model.ts';", 'the screen’s own file'],
      ['src/app/frame/a.tsx', "import { x } from '../ui/Button.tsx';", 'allowed by the table'],
      [
        'src/server/stores/postgres/a.ts',
        "import pg from 'pg'; import { x } from '../store.ts';",
        'the driver’s home',
      ],
    ];
    for (const [file, source, why] of innocent) expect(findFaults([{ path: file, source }]), why).toEqual([]);
  });
});

test('finds every form of import', () => {
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
    "export const n = 1; const from2 = Array.from('no3');",
  ].join('\n');
  expect(findImports({ path: 'a.ts', source })).toEqual(
    Array.from({ length: 12 }, (_, at) => (at === 9 ? './m10.ts' : `m${at + 1}`)),
  );
});
