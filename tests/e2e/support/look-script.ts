// What a look needs inside the page, made once for all browser tests: the checks as one script, and axe-core.

import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    readonly lookScript: string;
    readonly axeScript: string;
  }
}

const axe = path.resolve(import.meta.dirname, '../../../node_modules/axe-core/axe.min.js');

/** Runs once, before the first file of browser tests. */
export default async function setup(project: TestProject): Promise<void> {
  project.provide('lookScript', await pageScript());
  project.provide('axeScript', await readFile(axe, 'utf8'));
}

/** The checks as one script for the page. */
async function pageScript(): Promise<string> {
  const built = await build({
    configFile: false,
    root: import.meta.dirname,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      lib: { entry: path.join(import.meta.dirname, 'look/page.ts'), formats: ['iife'], name: 'lookPage' },
    },
  });
  const [output] = [built].flat();
  if (!output || !('output' in output)) throw new TypeError('Cannot look as the checks were not built');
  return output.output[0].code;
}
