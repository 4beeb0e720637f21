// Runs benches by name: `node tests/bench/run.mjs NAME...`. Bundles tests/bench/NAME.bench.ts for Node and runs it in a process
// of its own, so that one bench's heap does not weigh on the next. Without a name lists what there is.

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const folder = path.dirname(fileURLToPath(import.meta.url));
const root = path.resolve(folder, '..', '..');
const known = readdirSync(folder)
  .filter((file) => file.endsWith('.bench.ts'))
  .map((file) => file.slice(0, -'.bench.ts'.length))
  .sort();
const names = process.argv.slice(2);
const unknown = names.filter((name) => !known.includes(name));

if (unknown.length > 0) {
  console.error(`No bench named ${unknown.join(', ')}; there are: ${known.join(', ')}`);
  process.exitCode = 2;
} else if (names.length === 0) {
  console.log(known.join('\n'));
}

/** Installs what benches are compared with, beside them, where one of them asks for it: nobody else has to have it. */
function installBaselines(bench) {
  const { dependencies } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const source = readFileSync(path.join(folder, `${bench}.bench.ts`), 'utf8');
  const asked = Object.keys(dependencies).filter((each) => source.includes(`'${each}'`));
  if (asked.every((each) => existsSync(path.join(folder, 'node_modules', each)))) return;
  const quiet = ['--no-audit', '--no-fund', '--no-package-lock', '--ignore-scripts'];
  spawnSync('npm', ['install', ...quiet], { cwd: folder, stdio: ['ignore', 'inherit', 'inherit'] });
}

for (const name of unknown.length > 0 ? [] : names) {
  installBaselines(name);
  // Within the project, so that packages are found from the bundle too.
  const outDir = path.join(root, 'dist', 'bench', name);
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: {
      ssr: true,
      target: 'node20',
      outDir,
      emptyOutDir: true,
      rolldownOptions: {
        input: { [name]: path.join(folder, `${name}.bench.ts`) },
        output: { entryFileNames: '[name].mjs', chunkFileNames: 'chunks/[name]-[hash].mjs' },
      },
    },
  });
  const { status } = spawnSync(process.execPath, [path.join(outDir, `${name}.mjs`)], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (status !== 0) process.exitCode = status ?? 1;
}
