// Would the compiler let a fault through? Each fault lies as a file of its own beside the one it was planted in, in a copy of the sources, so
// that one run of the compiler judges all. What a fault breaks in other files alone is not seen: it counts as one that tests must see.

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { projectRoot } from '../source-scan.ts';
import { edited, type Mutant } from './mutants.ts';

/** Within the project, so that packages are found. */
const copy = path.join(projectRoot, '.tmp', 'mutate');
const manifest = createRequire(import.meta.url).resolve('typescript/package.json');
const compiler = path.join(path.dirname(manifest), JSON.parse(readFileSync(manifest, 'utf8')).bin.tsc);
/** A fault that leaves a name without use is one all the same. */
const PLAIN = ['--pretty', 'false', '--noUnusedLocals', 'false', '--noUnusedParameters', 'false'];

/** Those of the faults that the compiler refuses. Throws where it cannot be run. */
export function refusedAmong(faults: readonly Mutant[]): ReadonlySet<Mutant> {
  if (faults.length === 0) return new Set();
  rmSync(copy, { recursive: true, force: true });
  mkdirSync(copy, { recursive: true });
  for (const part of ['shared', 'src', 'demo', 'tsconfig.base.json', 'package.json'])
    cpSync(path.join(projectRoot, part), path.join(copy, part), { recursive: true });
  for (const [at, { path: file, edits }] of faults.entries()) {
    const text = edited(readFileSync(path.join(projectRoot, file), 'utf8'), edits);
    writeFileSync(path.join(copy, file.replace(/\.ts$/, `.fault-${at}.ts`)), text);
  }
  const projects = new Set(
    faults.map(({ path: file }) => (file.startsWith('shared/') ? 'shared' : 'src/app')),
  );
  const told = [...projects].map((project) => {
    const { stdout, error } = spawnSync(
      process.execPath,
      [compiler, '-p', path.join(copy, project), ...PLAIN],
      { encoding: 'utf8', cwd: copy },
    );
    if (error) throw error;
    return stdout;
  });
  rmSync(copy, { recursive: true, force: true });
  const wrong = new Set([...told.join('\n').matchAll(/\.fault-(\d+)\.ts\(/g)].map(([, at]) => Number(at)));
  return new Set(faults.filter((_, at) => wrong.has(at)));
}
