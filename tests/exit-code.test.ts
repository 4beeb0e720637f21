// A run of tests that fails must end as one: what is loaded before all tests may not take the end of the process into its own hands, as a
// package for databases once did, with which every run of tests ended well.

import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from './source-scan.ts';

const config = readFileSync(path.join(projectRoot, 'vitest.config.ts'), 'utf8');
const setups = [...config.matchAll(/globalSetup: \['([^']+)'\]/g)].map(([, file = '']) => file);

test.each(setups)('%s leaves the exit code as it is', (file) => {
  const script = `import { runnerImport } from 'vite';
    await runnerImport(${JSON.stringify(path.join(projectRoot, file))}, { configFile: false, logLevel: 'silent' });
    process.exitCode = 3;`;
  const { status } = spawnSync(process.execPath, ['--input-type=module', '-e', script], { cwd: projectRoot });
  expect(status).toBe(3);
});

test('there are such files', () => {
  expect(setups.length).toBeGreaterThan(1);
});
