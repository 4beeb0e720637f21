// Where a newcomer looks first must be true: a README in each room with its question and its door, and the table of everyday changes.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

const root = new URL('../', import.meta.url).pathname;
const MOST_LINES = 30;
const MOST_FILES = 4;
const MOST_ROOMS = 2;
/** Small enough that their one file says it. */
const WITHOUT = ['src/sw'];

const foldersIn = (folder: string) =>
  readdirSync(path.join(root, folder), { withFileTypes: true })
    .filter((each) => each.isDirectory())
    .map(({ name }) => `${folder}/${name}`);
const rooms = [...foldersIn('shared'), ...foldersIn('src'), ...foldersIn('src/app')].filter(
  (room) => room !== 'src/app' && !WITHOUT.includes(room),
);
const namesIn = (text: string) => [...text.matchAll(/`([^`]+)`/g)].map(([, name]) => name ?? '');
/** A name that says a file, `*` for any part of it. */
const isFile = (name: string) => /^[\w*/.-]+\.(tsx?|md|css)$/.test(name);

const all = ['shared', 'src', 'tests', 'demo'].flatMap((folder) =>
  readdirSync(path.join(root, folder), { recursive: true }).map((file) => `${folder}/${file}`),
);

/** Whether a file or folder of this name is there: `*` stands for any part of one name, AREA for any area of words. */
function isThere(name: string): boolean {
  const plain = path.normalize(name).replace(/\/$/, '');
  if (!/\*|AREA/.test(plain)) return existsSync(path.join(root, plain));
  const parts = plain.split(/\*|AREA/).map((part) => part.replaceAll('.', '\\.'));
  const pattern = new RegExp(`^${parts.join('[^/]*')}$`);
  return all.some((file) => pattern.test(file));
}

/** What is wrong with a room's README, in words; empty where nothing is. */
function faultsOf(room: string): readonly string[] {
  const file = path.join(root, room, 'README.md');
  if (!existsSync(file)) return [`${room}: no README`];
  const text = readFileSync(file, 'utf8');
  const lines = text.trimEnd().split('\n').length;
  const gone = namesIn(text)
    .filter(isFile)
    .filter((name) => ![room, 'shared', 'src', 'src/app', '.'].some((base) => isThere(`${base}/${name}`)));
  return [
    ...(lines > MOST_LINES ? [`${room}: ${lines} lines`] : []),
    ...(/\*\*Question:?\*\*/.test(text) ? [] : [`${room}: no question`]),
    ...(/\*\*Doors?:?\*\*/.test(text) ? [] : [`${room}: no door`]),
    ...(/\*\*Must never know:\*\*/.test(text) ? [] : [`${room}: not what it must never know`]),
    ...gone.map((name) => `${room}: ${name} is not there`),
  ];
}

/** What is wrong with the table's rows. */
function tableFaults(guide: string): readonly string[] {
  const table = guide.split('### Where do I change …?')[1]?.split('\n\n')[1] ?? '';
  const rows = table.split('\n').slice(2);
  if (rows.length < 20) return [`${rows.length} rows`];
  return rows.flatMap((row) => {
    const [, what = '', files = '', told = ''] = row.split('|').map((cell) => cell.trim());
    let folder = '';
    const named = namesIn(files).map((name) => {
      const whole = name.includes('/') ? name : `${folder}/${name}`;
      folder = path.dirname(whole);
      return whole;
    });
    const gone = named.filter(
      (name) => !['shared', 'src/app', 'src'].some((base) => isThere(`${base}/${name}`)),
    );
    const used = [...new Set(named.map((name) => name.split('/')[0]))].sort();
    const listed = told.split(', ').sort();
    return [
      ...gone.map((name) => `${what}: ${name} is not there`),
      ...(named.length === 0 || named.length > MOST_FILES ? [`${what}: ${named.length} files`] : []),
      ...(used.length > MOST_ROOMS ? [`${what}: ${used.length} rooms`] : []),
      ...(used.join() === listed.join() ? [] : [`${what}: says ${listed.join()}, names ${used.join()}`]),
    ];
  });
}

const guide = readFileSync(path.join(root, 'DEVELOPERS.md'), 'utf8');

describe('the rooms', () => {
  test('each has a README that says its question, its door and what it must never know, of files that are there', () => {
    expect(rooms.flatMap(faultsOf)).toEqual([]);
  });

  test('the table of everyday changes names files that are there, few and in few rooms', () => {
    expect(tableFaults(guide)).toEqual([]);
  });

  test('ten choices at least stand as decisions, each with what was refused and what would change it', () => {
    const decisions = rooms.flatMap((room) => {
      const file = path.join(root, room, 'README.md');
      const text = existsSync(file) ? readFileSync(file, 'utf8') : '';
      return text
        .trimEnd()
        .split('\n\n')
        .filter((part) => /^\*\*[^*]+\?\*\*/.test(part));
    });
    expect(decisions.length).toBeGreaterThanOrEqual(10);
    for (const each of decisions)
      expect(each).toMatch(
        /^\*\*[^*]+\?\*\* Chosen: [\s\S]+\sRefused: [\s\S]+\sWould change it:\s[\s\S]+\.$/,
      );
  });
});

describe('the check of the table', () => {
  const rowsOf = (row: string) =>
    `### Where do I change …?\n\n| what | files | rooms |\n| --- | --- | --- |\n${Array(20).fill(row).join('\n')}\n\n`;

  test('finds a file that is gone, too many of them, and a room that is not named', () => {
    const found = (row: string) => tableFaults(rowsOf(row))[0];
    expect(found('| a | `floor/address.ts` | floor |')).toBeUndefined();
    expect(found('| a | `floor/gone.ts` | floor |')).toBe('a: floor/gone.ts is not there');
    expect(found('| a | `moisture/derating.ts` or `bake.ts` | moisture |')).toBeUndefined();
    expect(found(`| a | ${Array(5).fill('`floor/fits.ts`').join(', ')} | floor |`)).toBe('a: 5 files');
    expect(found('| a | `floor/fits.ts`, `words/en/log.ts` | floor |')).toBe(
      'a: says floor, names floor,words',
    );
  });
});
