// Checks the types of every project that tsconfig.json names, one after the other, and says which one failed.

import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const manifest = createRequire(import.meta.url).resolve('typescript/package.json');
const tsc = path.join(path.dirname(manifest), JSON.parse(readFileSync(manifest, 'utf8')).bin.tsc);
const { references } = JSON.parse(readFileSync(path.join(root, 'tsconfig.json'), 'utf8'));

const wrong = references.filter(({ path: project }) => {
  const { status } = spawnSync(process.execPath, [tsc, '-p', project], { cwd: root, stdio: 'inherit' });
  return status !== 0;
});
for (const { path: project } of wrong) console.error(`types: ${project} has errors`);
process.exitCode = wrong.length > 0 ? 1 : 0;
