// Plants faults in the core and says which ones no test sees: `node tests/mutate/run.mjs [ROOM or FILE...] [--sample=N] [--seed=N] [--files]`.
// Nothing has to be installed for it: the parser and the test runner are those of every other check. Not part of `npm test`.

import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const main = path.join(path.dirname(fileURLToPath(import.meta.url)), 'mutate.ts');
const { module } = await runnerImport(main, { configFile: false, logLevel: 'warn' });
process.exitCode = await module.mutate(process.argv.slice(2));
