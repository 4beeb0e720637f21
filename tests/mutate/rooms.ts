// Which files are tried as one, by whose tests, and how many of their faults those must see.

import { readdirSync } from 'node:fs';
import path from 'node:path';
import { projectRoot } from '../source-scan.ts';

/** One room: its files, the folders of its own tests, and the least share of planted faults that they kill. */
export interface Room {
  readonly name: string;
  readonly files: readonly string[];
  readonly tests: readonly string[];
  /** 0 to 1. */
  readonly wanted: number;
  /** Faults tried in each file, where nothing else is asked for. */
  readonly sample: number;
}

/** What a wrong answer would cost most stands first: the verdict, the state, the log and what leaves the tablet. */
const STRICT = { wanted: 0.95, sample: 12 };
const CORE = { wanted: 0.85, sample: 6 };
const PAGE = { wanted: 0.7, sample: 6 };

/** Whether a reel serves a slot: the parts of that one answer. */
const FITS = ['age-limit', 'blocks', 'fit-makers', 'fits', 'makers'].map((name) => `shared/floor/${name}.ts`);

function filesIn(folder: string): readonly string[] {
  return readdirSync(path.join(projectRoot, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && !entry.name.endsWith('.d.ts'))
    .map((entry) => path.relative(projectRoot, path.join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

function core(name: string, measure: { readonly wanted: number; readonly sample: number }): Room {
  return { name, files: filesIn(`shared/${name}`), tests: [`tests/shared/${name}`], ...measure };
}

function part(
  name: string,
  measure: { readonly wanted: number; readonly sample: number },
  isPart: (file: string) => boolean,
): Room {
  const files = filesIn('shared/floor').filter(isPart);
  return { name, files, tests: ['tests/shared/floor'], ...measure };
}

/** A number that only counts up says nothing that could be wrong. */
const COUNTER = 'shared/floor/fold-version.ts';
const isFold = (file: string) => /^shared\/floor\/fold[-.]/.test(file) && file !== COUNTER;

/** Every room that is tried, in the order in which they are. */
export function everyRoom(): readonly Room[] {
  const strict = ['verdict', 'trace', 'moisture', 'log', 'wire'];
  const others = readdirSync(path.join(projectRoot, 'shared'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== 'floor' && !strict.includes(entry.name))
    .map(({ name }) => name)
    .sort();
  return [
    core('verdict', STRICT),
    part('fits', STRICT, (file) => FITS.includes(file)),
    part('folds', STRICT, isFold),
    ...strict.slice(1).map((name) => core(name, STRICT)),
    part('floor', CORE, (file) => !isFold(file) && !FITS.includes(file) && file !== COUNTER),
    ...others.map((name) => core(name, CORE)),
    {
      name: 'page',
      files: filesIn('src/app').filter((file) => /[/-]model\.ts$/.test(file)),
      tests: ['tests/src/app/frame', 'tests/src/app/screens'],
      ...PAGE,
    },
  ];
}
