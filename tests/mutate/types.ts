// Would the compiler let a fault through? A copy of the sources beside the build's other scratch, and one run of the compiler a fault.

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { projectRoot } from '../source-scan.ts';
import { edited, type Mutant } from './mutants.ts';

const copy = path.join(projectRoot, '.tmp', 'mutate');
const manifest = createRequire(import.meta.url).resolve('typescript/package.json');
const compiler = path.join(path.dirname(manifest), JSON.parse(readFileSync(manifest, 'utf8')).bin.tsc);

/** A fault that leaves a name without use is one all the same. */
const UNUSED_IS_FINE = ['--noUnusedLocals', 'false', '--noUnusedParameters', 'false'];

/** Copies what is compiled; within the project, so that packages are found. */
export function prepareTypes(): void {
  rmSync(copy, { recursive: true, force: true });
  mkdirSync(copy, { recursive: true });
  for (const part of ['shared', 'src', 'demo', 'tsconfig.base.json', 'package.json'])
    cpSync(path.join(projectRoot, part), path.join(copy, part), { recursive: true });
}

/** True where the compiler refuses the fault. */
export function isRefused({ path: file, edits }: Mutant): boolean {
  const source = readFileSync(path.join(projectRoot, file), 'utf8');
  const project = file.startsWith('shared/') ? 'shared' : 'src/app';
  writeFileSync(path.join(copy, file), edited(source, edits));
  const { status } = spawnSync(
    process.execPath,
    [compiler, '-p', path.join(copy, project), ...UNUSED_IS_FINE],
    { stdio: 'ignore' },
  );
  writeFileSync(path.join(copy, file), source);
  return status !== 0;
}

/** Removes the copy. */
export function removeTypes(): void {
  rmSync(copy, { recursive: true, force: true });
}
